// How long the invented suppliers, code desks and workshops take, and how often they disappoint: what a forecast can find out from the
// history of the sample. Invented throughout.
import { addDays, type Day } from '../../domain/shared/day.ts';
import { codeDesks, suppliers, workshops } from './sample-shop.ts';
import type { Random } from './seeded-random.ts';
import { workingDay } from './working-days.ts';

type Pace = { readonly promised: number; readonly least: number; readonly usual: number; readonly longest: number };

const paces: Readonly<Record<string, Pace>> = {
  [suppliers.salvage]: { promised: 8, least: 5, usual: 10, longest: 22 },
  [suppliers.newParts]: { promised: 4, least: 2, usual: 4, longest: 12 },
  [suppliers.exchange]: { promised: 9, least: 6, usual: 10, longest: 18 },
  [suppliers.counter]: { promised: 0, least: 0, usual: 0, longest: 2 },
  [codeDesks.maker]: { promised: 6, least: 3, usual: 6, longest: 13 },
  [codeDesks.keys]: { promised: 2, least: 1, usual: 2, longest: 5 },
  [codeDesks.audio]: { promised: 1, least: 0, usual: 1, longest: 3 },
  [codeDesks.gateway]: { promised: 5, least: 2, usual: 5, longest: 9 },
  [workshops.glass]: { promised: 2, least: 1, usual: 2, longest: 5 },
  [workshops.highVoltage]: { promised: 12, least: 8, usual: 14, longest: 27 },
  [workshops.body]: { promised: 5, least: 3, usual: 6, longest: 11 },
  [workshops.transmission]: { promised: 9, least: 7, usual: 11, longest: 20 },
};

export type Turnaround = { readonly promisedFor: Day; readonly comesOn: Day };

/** Half of the time up to the usual, seldom near the longest; always on a day on which the shop works. */
export function turnaround(random: Random, who: string, from: Day): Turnaround {
  const pace = paces[who];
  if (!pace) throw new Error(`Nobody knows how long ${who} takes.`);
  const { least, usual, longest, promised } = pace;
  const days = random.chance(0.55)
    ? random.whole(least, usual)
    : usual + Math.round((longest - usual) * random.unit() ** 2);
  return { promisedFor: workingDay(addDays(from, promised)), comesOn: workingDay(addDays(from, days)) };
}

/** How often a write works at the first try: by the way it is done and where the module comes from. */
export function worksBy(random: Random, route: 'on-vehicle' | 'bench' | 'pass-through', isUsed: boolean): boolean {
  const odds = { 'on-vehicle': 0.6, bench: 0.85, 'pass-through': 0.75 }[route];
  return random.chance(isUsed ? odds - 0.12 : odds + 0.08);
}
