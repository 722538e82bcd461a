// Colour and hatch of each cause, for screen and paper alike: a published colour-blind-safe palette, each colour doubled by a hatch.
import type { Cause } from './cause.ts';

/** Okabe and Ito, "Color Universal Design" (2008): the eight colours, as printed in their table. */
export const okabeIto = {
  black: '#000000',
  orange: '#e69f00',
  skyBlue: '#56b4e9',
  bluishGreen: '#009e73',
  yellow: '#f0e442',
  blue: '#0072b2',
  vermillion: '#d55e00',
  reddishPurple: '#cc79a7',
} as const;

export type Hatch = 'plain' | 'rising' | 'falling' | 'crossed' | 'level' | 'upright' | 'dotted' | 'grid' | 'open';
export type CauseLook = { readonly colour: string; readonly hatch: Hatch };

/** No two causes share both colour and hatch, and no two share a hatch among those that meet often. */
export const causeLooks: Readonly<Record<Cause, CauseLook>> = {
  transit: { colour: okabeIto.skyBlue, hatch: 'dotted' },
  inspect: { colour: okabeIto.yellow, hatch: 'level' },
  decide: { colour: okabeIto.yellow, hatch: 'upright' },
  part: { colour: okabeIto.orange, hatch: 'rising' },
  code: { colour: okabeIto.reddishPurple, hatch: 'crossed' },
  programming: { colour: okabeIto.blue, hatch: 'falling' },
  sublet: { colour: okabeIto.skyBlue, hatch: 'upright' },
  work: { colour: okabeIto.bluishGreen, hatch: 'plain' },
  verify: { colour: okabeIto.bluishGreen, hatch: 'level' },
  present: { colour: okabeIto.bluishGreen, hatch: 'dotted' },
  paper: { colour: okabeIto.reddishPurple, hatch: 'level' },
  idle: { colour: okabeIto.vermillion, hatch: 'grid' },
  ready: { colour: okabeIto.black, hatch: 'open' },
};
