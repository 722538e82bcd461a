// Days typed as shorthands beside the date input: t, -3, +5. Pure; today is passed in.
import { addDays, type Day, isDay } from '../../app/domain/shared/day.ts';

/** 't' is today, '-3' three days ago, '+5' in five days, counted from today. Null when it is none of these or leaves the calendar. */
export function readDayShorthand(text: string, today: Day): Day | null {
  const compact = text.trim().toLowerCase().replace('\u2212', '-');
  if (compact === 't') return today;
  const match = /^([+-])(\d{1,4})$/.exec(compact);
  if (match === null) return null;
  const day = addDays(today, Number(`${match[1]}${match[2]}`));
  return isDay(day) ? day : null;
}
