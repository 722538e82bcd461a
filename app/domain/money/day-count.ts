// Counts the days that interest is charged for by the conventions lenders use. Knows days, not money.
import { z } from 'zod';
import { type Day, dayFromNumber, dayNumber, daysBetween } from '../shared/day.ts';

/**
 * The conventions of the ISDA 2006 Definitions 4.16, by their letter there: (d) Actual/365 (Fixed), (e) Actual/360, (f) 30/360 or bond
 * basis, (g) 30E/360 or Eurobond basis, (h) 30E/360 (ISDA).
 */
export const dayCountSchema = z.enum(['actual-365', 'actual-360', '30-360', '30e-360', '30e-360-isda']);
export type DayCount = z.infer<typeof dayCountSchema>;

export const dayCountNames: Readonly<Record<DayCount, string>> = {
  'actual-365': 'Actual/365 (Fixed)',
  'actual-360': 'Actual/360',
  '30-360': '30/360, bond basis',
  '30e-360': '30E/360, Eurobond basis',
  '30e-360-isda': '30E/360 (ISDA)',
};

/** The length of the year that a convention divides by, in days. */
export function yearLength(convention: DayCount): 360 | 365 {
  return convention === 'actual-365' ? 365 : 360;
}

type DateParts = { readonly year: number; readonly month: number; readonly dayOfMonth: number };

function partsOf(day: Day): DateParts {
  dayNumber(day);
  return { year: Number(day.slice(0, 4)), month: Number(day.slice(5, 7)), dayOfMonth: Number(day.slice(8)) };
}

function isLastOfMonth(day: Day): boolean {
  return dayFromNumber(dayNumber(day) + 1).slice(8) === '01';
}

/** 360(Y2−Y1) + 30(M2−M1) + (D2−D1), the sum common to the three 30/360 conventions. */
function thirtyDayMonths(from: DateParts, to: DateParts, fromDay: number, toDay: number): number {
  return 360 * (to.year - from.year) + 30 * (to.month - from.month) + (toDay - fromDay);
}

/**
 * Whole days from `from` to `to` as the convention counts them; the first day does not count, the last does. Never negative.
 * `terminatesOn`, the day the debt ends, matters to 30E/360 (ISDA) only: the last day of February is not moved to the 30th when it is
 * that day. Source: ISDA 2006 Definitions 4.16 (d) to (h).
 * @throws when `to` is before `from`, or either is not a day.
 */
export function daysBetweenBy(convention: DayCount, from: Day, to: Day, terminatesOn: Day | null = null): number {
  if (to < from) throw new Error(`Days are counted forward only: ${to} is before ${from}.`);
  if (convention === 'actual-365' || convention === 'actual-360') return daysBetween(from, to);
  const start = partsOf(from);
  const end = partsOf(to);
  if (convention === '30e-360-isda') {
    const fromDay = isLastOfMonth(from) ? 30 : start.dayOfMonth;
    const isFinalFebruary = to === terminatesOn && end.month === 2;
    const toDay = isLastOfMonth(to) && !isFinalFebruary ? 30 : end.dayOfMonth;
    return Math.max(0, thirtyDayMonths(start, end, fromDay, toDay));
  }
  const fromDay = Math.min(30, start.dayOfMonth);
  const movesEnd = convention === '30e-360' || fromDay === 30;
  const toDay = movesEnd ? Math.min(30, end.dayOfMonth) : end.dayOfMonth;
  return thirtyDayMonths(start, end, fromDay, toDay);
}

/** An exact part of a year: whole days over the convention's year, not reduced. */
export type YearFraction = { readonly numerator: number; readonly denominator: number };

/**
 * The part of a year from `from` to `to`, exact: multiply first, divide and round once at the end. Arguments, errors and source as for
 * `daysBetweenBy`.
 */
export function yearFraction(convention: DayCount, from: Day, to: Day, terminatesOn: Day | null = null): YearFraction {
  return { numerator: daysBetweenBy(convention, from, to, terminatesOn), denominator: yearLength(convention) };
}
