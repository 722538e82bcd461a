// Words of the programming plan sheet for the plan's short keys: stages, what must be true first, routes. No rules.
import type { GateKind } from '../programming/gate-kind.ts';
import type { ProgrammingRoute } from '../programming/programming-route.ts';
import type { Stage } from '../programming/rule-pack.ts';

export const stageTitles: Readonly<Record<Stage, string>> = {
  secure: 'Secure what is there',
  exchange: 'Exchange',
  write: 'Write',
  match: 'Match to the vehicle',
  prove: 'Prove',
  release: 'Let go',
};

/** Said so that a tick beside it means: it is so. */
export const gateWords: Readonly<Record<GateKind, string>> = {
  'codes-recorded': 'codes on arrival are on record',
  'old-module-saved': 'data of the old unit is saved',
  'part-in-hand': 'replacement is here',
  'used-module-fits': 'used unit is known to fit',
  'code-in-hand': 'code is in hand',
  'ownership-proven': 'proof of ownership is checked',
  'keys-present': 'every key is here',
  'vins-compared': 'VINs are compared',
  'negative-lead-off': 'negative lead is off',
  'airbag-wait-over': 'wait of the maker is over',
  'high-voltage-safe': 'high voltage is released in writing',
  'supply-connected': 'supply is connected',
  'replacement-proven': 'replacement is proven',
};

export const routeTitles: Readonly<Record<ProgrammingRoute, string>> = {
  'on-vehicle': 'on the vehicle',
  bench: 'on the bench',
  'pass-through': 'maker’s software, pass-through device',
  'sent-out': 'sent out',
  'by-hand': 'by hand',
};
