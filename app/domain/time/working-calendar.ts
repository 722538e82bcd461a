// The days on which the shop works: its week, less the holidays it has named. Knows no country's holidays by itself.
import { z } from 'zod';
import { type Day, dayFromNumber, dayNumber, daySchema } from '../shared/day.ts';

export const workingCalendarSchema = z.strictObject({
  /** Days of the week by ISO 8601 number: Monday 1 to Sunday 7. */
  workDays: z
    .array(z.int().min(1).max(7))
    .min(1, 'Name at least one day of the week on which the shop works.')
    .max(7)
    .refine((days) => new Set(days).size === days.length, 'Name each day of the week once.'),
  /** Working time in a day. */
  minutesPerDay: z.int().min(1).max(1440),
  holidays: z.array(daySchema).max(2000),
});
export type WorkingCalendar = z.infer<typeof workingCalendarSchema>;

const firstNumber = dayNumber('1900-01-01');
const lastNumber = dayNumber('2199-12-31');

/** The calendar laid out for counting: every look-up takes the same short time however far apart the days are. */
export type WorkingDayTable = {
  /** Working days before the day with this number, from the first day that this program knows. */
  readonly countBefore: (number: number) => number;
  readonly isWorking: (number: number) => boolean;
  /** The number of the working day with this place in the count, from 0. @throws when no such day is left before 2200. */
  readonly dayAt: (place: number) => number;
};

const tables = new WeakMap<WorkingCalendar, WorkingDayTable>();

function layOut({ workDays, holidays }: WorkingCalendar): WorkingDayTable {
  const size = lastNumber - firstNumber + 1;
  const isOff = new Set(holidays.map(dayNumber));
  // 1 January 1970, day 0, was a Thursday: ISO number 4.
  const worksOn = Array.from({ length: 7 }, (_, at) => workDays.includes(at + 1));
  const before = new Int32Array(size + 1);
  const places = new Int32Array(size);
  let count = 0;
  for (let at = 0; at < size; at += 1) {
    const number = firstNumber + at;
    before[at] = count;
    const weekday = (((number + 3) % 7) + 7) % 7;
    if (worksOn[weekday] && !isOff.has(number)) {
      places[count] = number;
      count += 1;
    }
  }
  before[size] = count;
  const within = (number: number) => Math.min(size, Math.max(0, number - firstNumber));
  const countBefore = (number: number) => before[within(number)] ?? count;
  return {
    countBefore,
    isWorking: (number) => countBefore(number + 1) > countBefore(number),
    dayAt: (place) => {
      const number = place >= 0 && place < count ? places[place] : undefined;
      if (number === undefined)
        throw new Error('The working calendar has no day left for this. Look through its holidays.');
      return number;
    },
  };
}

/** Laid out once for each calendar object and kept; a changed calendar must be a new object. */
export function workingDayTable(calendar: WorkingCalendar): WorkingDayTable {
  const kept = tables.get(calendar);
  if (kept) return kept;
  const table = layOut(calendar);
  tables.set(calendar, table);
  return table;
}

export function isWorkingDay(calendar: WorkingCalendar, day: Day): boolean {
  return workingDayTable(calendar).isWorking(dayNumber(day));
}

/** The day itself when the shop works on it, else the next one on which it does. */
export function workingDayFrom(calendar: WorkingCalendar, day: Day): Day {
  const table = workingDayTable(calendar);
  return dayFromNumber(table.dayAt(table.countBefore(dayNumber(day))));
}

/**
 * The working day that comes `days` working days after `day`, before it for a negative number; 0 gives the day itself, working or not.
 * The day counted from is never counted (common practice, no source). @throws when the calendar has no such day.
 */
export function addWorkingDays(calendar: WorkingCalendar, day: Day, days: number): Day {
  if (!Number.isSafeInteger(days)) throw new Error(`Not a whole number of days: ${days}`);
  if (days === 0) return day;
  const table = workingDayTable(calendar);
  const number = dayNumber(day);
  const place = days > 0 ? table.countBefore(number + 1) + days - 1 : table.countBefore(number) + days;
  return dayFromNumber(table.dayAt(place));
}

/** Working days after `from` up to and including `to`; negative when `to` is earlier. The inverse of adding, for a working `to`. */
export function workingDaysBetween(calendar: WorkingCalendar, from: Day, to: Day): number {
  if (to < from) return -workingDaysBetween(calendar, to, from);
  const { countBefore } = workingDayTable(calendar);
  return countBefore(dayNumber(to) + 1) - countBefore(dayNumber(from) + 1);
}
