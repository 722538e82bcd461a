// When to chase next for a part, a code or sublet work, and why then. Parts, codes and sublet work are chased by one rule.
import type { Chase } from '../codes/request-facts.ts';
import { promisedFor } from '../codes/request-life.ts';
import { addDays, type Day, laterDay } from '../shared/day.ts';
import { plural } from '../shared/text.ts';
import type { Usual } from './usual-turnaround.ts';
import { addWorkingDays, isWorkingDay, type WorkingCalendar } from './working-calendar.ts';

/** Days after asking when nothing is known about the provider (common practice, no source). */
export const firstChaseAfterDays = 3;
/** Days between two chases when the provider names no day (common practice, no source). */
export const nextChaseAfterDays = 2;

export type Chasable = {
  readonly askedOn: Day;
  /** As promised when it was asked for. */
  readonly expectedOn: Day | null;
  readonly chases: readonly Pick<Chase, 'chasedOn' | 'promisedOn'>[];
};

export type NextChase = {
  /** A day on which the shop works, today at the earliest. */
  readonly on: Day;
  /** A clause for people; days in it are ISO days. */
  readonly why: string;
};

/**
 * The day after the promised day; where there is no promise that was made since it was chased last, two days after that chase; never
 * chased: the day after which four of five such answers had come, counted from asking, else three days. Own definition.
 */
export function nextChase(
  { askedOn, expectedOn, chases }: Chasable,
  usual: Usual | null,
  { today, calendar }: { readonly today: Day; readonly calendar: WorkingCalendar },
): NextChase {
  const at = (wanted: Day) => {
    const day = laterDay(wanted, today);
    return isWorkingDay(calendar, day) ? day : addWorkingDays(calendar, day, 1);
  };
  const lastTouch = chases.map(({ chasedOn }) => chasedOn).reduce(laterDay, askedOn);
  const promised = promisedFor({ chases, expectedOn });
  // A promise that was already over when the provider was chased last has been dealt with.
  if (promised !== null && promised >= lastTouch)
    return {
      on: at(addDays(promised, 1)),
      why: promised < today ? `promised for ${promised} and not here` : `the day after the promise, ${promised}`,
    };
  if (chases.length > 0)
    return {
      on: at(addDays(lastTouch, nextChaseAfterDays)),
      why: `${nextChaseAfterDays} days after the last chase, which brought no day`,
    };
  if (usual === null)
    return {
      on: at(addDays(askedOn, firstChaseAfterDays)),
      why: `${firstChaseAfterDays} days after asking; too few earlier cases to go by`,
    };
  const days = usual.eightiethDays;
  return {
    on: at(addDays(askedOn, days + 1)),
    why: `four of five came within ${plural(days, 'day', 'days')} (${plural(usual.cases, 'case', 'cases')})`,
  };
}
