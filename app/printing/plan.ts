// What a block hands over once it is measured: how it is drawn, and how much of it must stay with what comes before.

import type { OpenImage } from './open-image.ts';
import type { PageFlow } from './page-flow.ts';
import type { PageFrame } from './page-frame.ts';
import type { Pen, StructureElement } from './pen.ts';

/** Where and with what a block is drawn. */
export type Desk = {
  readonly pen: Pen;
  readonly frame: PageFrame;
  readonly flow: PageFlow;
  readonly root: StructureElement;
  /** The photographs of this sheet by hash; those that could not be read are not in it. */
  readonly pictures: ReadonlyMap<string, OpenImage>;
};

export type Plan = {
  /** Least height that must fit before a page break may come; a heading above keeps that much with it. */
  readonly lead: number;
  /** True for headings: they never stand alone at the foot of a page. */
  readonly leansOnNext: boolean;
  /** `following` is the height of what comes after it, as far as it must stay together. */
  readonly draw: (following: number) => void;
};
