// Words of the kit and of more than one screen. Sentences with values are functions.
import type { Role } from '../../app/domain/fleet/shop.ts';
import type { Actor } from '../../app/domain/readiness/gate.ts';
import type { Day } from '../../app/domain/shared/day.ts';
import { sayWholeDay } from './say-day.ts';

export const commonText = {
  required: 'Has to be filled in.',
  notANumber: (minimum: string, maximum: string, decimals: number) =>
    `This is not a number the program can take. Write ${decimals === 0 ? 'a whole number' : `a number with up to ${decimals} decimals`} from ${minimum} to ${maximum}, or leave it empty.`,
  notAnAmount: 'This cannot be read as an amount. Write it like 1,250.50, or leave it empty.',
  dayTip: 'Also: t for today, -3 for three days ago, +5 for in five days',
  dayHalfWritten: 'The day is written in part only. Finish it, or clear it with Delete.',
  dayOutOfRange: 'Write the year with four digits, from 1900 to 2199.',
  dayShorthand: (typed: string, meant: Day | null) =>
    meant === null
      ? `${typed.replace('-', '\u2212')} … type the number of days from today`
      : `${typed.replace('-', '\u2212')} days: ${sayWholeDay(meant)}`,
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
