// Words of the kit and of more than one screen. Sentences with values are functions.
import type { Role } from '../../app/domain/fleet/shop.ts';
import type { Actor } from '../../app/domain/readiness/gate.ts';
import type { Day } from '../../app/domain/shared/day.ts';
import { sayWholeDay } from './say-day.ts';

/** The shop's form of a day, and the one that is always understood. */
function dayExamples(today: Day): string {
  return [...new Set([sayWholeDay(today), today])].join(' or ');
}

export const commonText = {
  required: 'Has to be filled in.',
  notANumber: (minimum: string, maximum: string, decimals: number) =>
    `This is not a number the program can take. Write ${decimals === 0 ? 'a whole number' : `a number with up to ${decimals} decimals`} from ${minimum} to ${maximum}, or leave it empty.`,
  notAnAmount: 'This cannot be read as an amount. Write it like 1,250.50, or leave it empty.',
  dayTip: 'Also: t for today, -3 for three days ago, +5 for in five days',
  dayUnreadable: (today: Day) =>
    `This is no day the program can take. Write it like ${dayExamples(today)}, or leave it empty.`,
  momentUnreadable: (today: Day) =>
    `This is no day and time the program can take. Write it like ${sayWholeDay(today)} 10:42, or leave it empty.`,
  dayCalendar: 'Calendar',
  dayCalendarTip: 'Opens a calendar (Alt+↓ in the field)',
  /** What a day means that is being typed; empty where the text says it itself. */
  dayMeant: (typed: string, meant: Day | null) => {
    if (/^\s*[-+]\s*$/.test(typed)) return 'Type the number of days from today.';
    return meant === null || typed.trim() === sayWholeDay(meant) ? '' : `Means ${sayWholeDay(meant)}.`;
  },
  close: 'Close',
  cancel: 'Cancel',
  notices: 'Messages',
  /** A blank is never drawn as nothing. */
  none: '–',
} as const;

export const actorNames: Readonly<Record<Actor, string>> = {
  manager: 'manager',
  technician: 'technician',
  sales: 'sales',
  outside: 'outside',
};

export const roleNames: Readonly<Record<Role, string>> = {
  manager: 'manager',
  technician: 'technician',
  sales: 'sales',
};
