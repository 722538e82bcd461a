// A day and a time of day as a person types them: a day in any way a field for a day takes, and the hour behind it. Pure but for the
// computer's own time zone, in which the person reads the clock.
import type { Day } from '../../app/domain/shared/day.ts';
import { readDay } from '../../app/domain/shared/read-day.ts';
import type { DayForm } from '../../app/domain/shared/show-day.ts';
import { readDayShorthand } from './day-shorthand.ts';

/** '4 Mar 2026 10:42' or 't 10:42' as an ISO instant; null when it is none. */
export function readMoment(text: string, form: DayForm, today: Day): string | null {
  const [, dayWords = '', hour = '', minute = ''] = /^(.*\S)[ T]+(\d{1,2}):(\d\d)$/.exec(text.trim()) ?? [];
  const day = readDayShorthand(dayWords, today) ?? readDay(dayWords, form, today);
  if (day === null || Number(hour) > 23 || Number(minute) > 59) return null;
  return new Date(`${day}T${hour.padStart(2, '0')}:${minute}`).toISOString();
}
