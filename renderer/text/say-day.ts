// Days as a person on the lot says them. The year only where it is not this one.
import { type Day, daysBetween } from '../../app/domain/shared/day.ts';
import { plural } from '../../app/domain/shared/text.ts';
import { monthNames } from './common.ts';

/** '4 Mar'; '4 Mar 2025' when it is not in the year of `today`. */
export function sayDay(day: Day, today: Day): string {
  const short = `${Number(day.slice(8))} ${monthNames[Number(day.slice(5, 7)) - 1] ?? ''}`;
  return day.slice(0, 4) === today.slice(0, 4) ? short : `${short} ${day.slice(0, 4)}`;
}

/** The sentence with every ISO day in it said as `sayDay` says it. */
export function sayDaysIn(sentence: string, today: Day): string {
  return sentence.replace(/\b(?:19|20|21)\d\d-(?:0[1-9]|1[0-2])-\d\d\b/g, (day) => sayDay(day, today));
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
