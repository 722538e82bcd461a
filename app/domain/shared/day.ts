// Plain calendar days as text ('2026-03-04'). No clock, no time zone, no milliseconds outside this file.
import { z } from 'zod';

const millisecondsInDay = 86_400_000;

/** A calendar day of the proleptic Gregorian calendar, ISO 8601 extended form, from year 1900 to 2199. */
export type Day = string;

/**
 * The day's number counted from 1970-01-01 (day 0). Exact, because a UTC day always has 86,400 s in ECMAScript time.
 * @throws when the text is not a real day; call `isDay` on foreign text first.
 */
export function dayNumber(day: Day): number {
  const year = Number(day.slice(0, 4));
  const month = Number(day.slice(5, 7));
  const dayOfMonth = Number(day.slice(8));
  const date = new Date(Date.UTC(year, month - 1, dayOfMonth));
  // Date.UTC rolls over: it would take 30 February for 2 March.
  const isReal = date.getUTCFullYear() === year && date.getUTCMonth() === month - 1 && date.getUTCDate() === dayOfMonth;
  if (!isReal || day.length !== 10) throw new Error(`Not a calendar day: ${day}`);
  return date.getTime() / millisecondsInDay;
}

/** Days already written out: a fleet's reckoning asks for the same few hundred again and again. */
const writtenDays = new Map<number, Day>();

/** The calendar day with this number counted from 1970-01-01. */
export function dayFromNumber(number: number): Day {
  const written = writtenDays.get(number);
  if (written !== undefined) return written;
  const day = new Date(number * millisecondsInDay).toISOString().slice(0, 10);
  writtenDays.set(number, day);
  return day;
}

/** Texts already found to be days; never more than the calendar of this file has. */
const knownDays = new Set<string>();

/** True for the text of a day that exists: '2024-02-29' yes, '2023-02-29' no. */
export function isDay(text: string): boolean {
  if (knownDays.has(text)) return true;
  if (!/^(19|20|21)\d\d-\d\d-\d\d$/.test(text)) return false;
  const time = Date.parse(`${text}T00:00:00Z`);
  const exists = !Number.isNaN(time) && new Date(time).toISOString().slice(0, 10) === text;
  if (exists) knownDays.add(text);
  return exists;
}

/** Whole days from `start` to `end`; the start day is day 0, so the same day gives 0. Negative when `end` is earlier. */
export function daysBetween(start: Day, end: Day): number {
  return dayNumber(end) - dayNumber(start);
}

export function addDays(day: Day, days: number): Day {
  return dayFromNumber(dayNumber(day) + days);
}

/** Negative, zero or positive, for sorting. ISO days sort as text. */
export function compareDays(a: Day, b: Day): number {
  return a < b ? -1 : a > b ? 1 : 0;
}

export function laterDay(a: Day, b: Day): Day {
  return a >= b ? a : b;
}

export const daySchema = z.string().refine(isDay, 'Write a day that exists, for example 2026-03-04.');

/** An instant as ISO 8601 in UTC with milliseconds, as `Date.prototype.toISOString` writes it. */
export const instantSchema = z.iso.datetime({ precision: 3 });
