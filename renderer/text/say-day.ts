// Days as a person on the lot says them, in the form that the shop has chosen. The year only where it is not this one.
import { type Day, daysBetween } from '../../app/domain/shared/day.ts';
import { rewriteDaysIn, showDay, showDaysIn, showMonth, showShortDay } from '../../app/domain/shared/show-day.ts';
import { plural } from '../../app/domain/shared/text.ts';
import { dayFormStore } from '../state/day-form-store.ts';

/** '4 Mar'; '4 Mar 2025' when it is not in the year of `today`. A form in digits always has its year. */
export function sayDay(day: Day, today: Day): string {
  return showShortDay(day, today, dayFormStore.read());
}

/** The sentence with every ISO day in it said as `sayDay` says it. */
export function sayDaysIn(sentence: string, today: Day): string {
  return rewriteDaysIn(sentence, (day) => sayDay(day, today));
}

/** '4 Mar 2026': with its year, where what is read may be long ago or no day of today's is at hand. */
export function sayWholeDay(day: Day): string {
  return showDay(day, dayFormStore.read());
}

/** The sentence with every ISO day in it said as `sayWholeDay` says it. */
export function sayWholeDaysIn(sentence: string): string {
  return showDaysIn(sentence, dayFormStore.read());
}

/** 'Mar 2026', of a day or of a month ('2026-03'). */
export function sayMonth(month: string): string {
  return showMonth(month, dayFormStore.read());
}

/** 'today', 'yesterday', '9 days ago', 'tomorrow', 'in 4 days'. */
export function sayDistance(day: Day, today: Day): string {
  const days = daysBetween(today, day);
  if (days === 0) return 'today';
  if (days === 1) return 'tomorrow';
  if (days === -1) return 'yesterday';
  return days > 0 ? `in ${plural(days, 'day', 'days')}` : `${plural(-days, 'day', 'days')} ago`;
}

/** 'since 12 Mar, 9 days'. */
export function saySince(since: Day, today: Day): string {
  const days = Math.max(0, daysBetween(since, today));
  return days === 0 ? 'since today' : `since ${sayDay(since, today)}, ${plural(days, 'day', 'days')}`;
}
