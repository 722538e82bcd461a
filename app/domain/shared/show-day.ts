// How a person reads a day: the forms a shop may choose from, and the one place that writes a day in one of them. Files, CSV and the
// bridge keep ISO text; nothing here is stored.
import { z } from 'zod';
import type { Day } from './day.ts';

/**
 * Only forms that nobody can read two ways. The month stands in letters, because 04/03 is 4 March to one reader and 3 April to the next; in
 * digits it stands between dots, which no country writes month first, or in ISO 8601, where the year comes first.
 */
export const dayFormSchema = z.enum(['day-month', 'month-day', 'iso', 'dotted']);
export type DayForm = z.infer<typeof dayFormSchema>;

/** Taken for granted where no shop has said otherwise. */
export const usualDayForm: DayForm = 'day-month';

export const monthNames = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'] as const;

/** 'Mar' for any day or month ('2026-03') of it. */
export function monthName(day: string): string {
  return monthNames[Number(day.slice(5, 7)) - 1] ?? '';
}

/** '4 Mar 2026', 'Mar 4, 2026', '2026-03-04' or '04.03.2026'. */
export function showDay(day: Day, form: DayForm): string {
  const [year, month, dayOfMonth] = [day.slice(0, 4), day.slice(5, 7), day.slice(8, 10)];
  switch (form) {
    case 'day-month':
      return `${Number(dayOfMonth)} ${monthName(day)} ${year}`;
    case 'month-day':
      return `${monthName(day)} ${Number(dayOfMonth)}, ${year}`;
    case 'iso':
      return day;
    case 'dotted':
      return `${dayOfMonth}.${month}.${year}`;
  }
}

/**
 * As `showDay`, without the year where it is that of `today`. A form in digits keeps its year: 03-04 and 04.03 are read two ways, and may be
 * taken for other numbers.
 */
export function showShortDay(day: Day, today: Day, form: DayForm): string {
  if (day.slice(0, 4) !== today.slice(0, 4)) return showDay(day, form);
  if (form === 'day-month') return `${Number(day.slice(8, 10))} ${monthName(day)}`;
  if (form === 'month-day') return `${monthName(day)} ${Number(day.slice(8, 10))}`;
  return showDay(day, form);
}

/** 'Mar 2026', '2026-03' or '03.2026', of a day or of a month ('2026-03'). */
export function showMonth(month: string, form: DayForm): string {
  const year = month.slice(0, 4);
  if (form === 'iso') return month.slice(0, 7);
  return form === 'dotted' ? `${month.slice(5, 7)}.${year}` : `${monthName(month)} ${year}`;
}

/** A day that stands by itself: not one inside the name of a file or folder, a stock number or a longer number. */
const isoDays = /(?<![\w/\\.-])(?:19|20|21)\d\d-(?:0[1-9]|1[0-2])-(?:0[1-9]|[12]\d|3[01])(?![\w/\\-]|\.\w)/g;

/** The sentence with every ISO day in it written by `write`. */
export function rewriteDaysIn(sentence: string, write: (day: Day) => string): string {
  return sentence.replace(isoDays, write);
}

/** The sentence with every ISO day in it written as `showDay` writes it. */
export function showDaysIn(sentence: string, form: DayForm): string {
  return rewriteDaysIn(sentence, (day) => showDay(day, form));
}
