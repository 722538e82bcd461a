// The sentence of every route, as each screen's own file of words has it: the compiler asks for one where a route is added.
import type { Route } from '../state/route-store.ts';
import { importListPurpose } from './import-list.ts';
import { lotPurpose } from './lot.ts';
import { moneyPurpose } from './money.ts';
import { nextJobsPurpose } from './next-jobs.ts';
import type { Purpose } from './purpose.ts';
import { safetyPurpose } from './safety.ts';
import { setupPurpose } from './setup.ts';
import { sheetsPurpose } from './sheets.ts';
import { takeInPurpose } from './take-in.ts';
import { vehiclePurpose } from './vehicle.ts';
import { waitingPurpose } from './waiting.ts';

export const purposes: Readonly<Record<Route['screen'], Purpose>> = {
  lot: lotPurpose,
  vehicle: vehiclePurpose,
  'take-in': takeInPurpose,
  'import-list': importListPurpose,
  'next-jobs': nextJobsPurpose,
  waiting: waitingPurpose,
  sheets: sheetsPurpose,
  setup: setupPurpose,
  safety: safetyPurpose,
  money: moneyPurpose,
};

export const purposeText = { whatFor: 'What this screen is for' } as const;
