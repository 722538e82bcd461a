// The days on which the invented shop works: Monday to Friday, its own holidays left out. Saturdays only sales is there.
import { addDays, type Day, dayNumber } from '../../domain/shared/day.ts';

const closed: ReadonlySet<Day> = new Set([
  '2024-11-28',
  '2024-12-25',
  '2025-01-01',
  '2025-05-26',
  '2025-07-04',
  '2025-09-01',
  '2025-11-27',
  '2025-12-25',
  '2026-01-01',
]);

/** 1970-01-01 was a Thursday; Monday is 0. */
function weekday(day: Day): number {
  return (dayNumber(day) + 3) % 7;
}

export function isWorkingDay(day: Day): boolean {
  return weekday(day) < 5 && !closed.has(day);
}

/** The day itself or the next on which the shop works. */
export function workingDay(day: Day): Day {
  let next = day;
  while (!isWorkingDay(next)) next = addDays(next, 1);
  return next;
}

/** The day itself or the next on which somebody is in sales. */
export function salesDay(day: Day): Day {
  let next = day;
  while (weekday(next) > 5 || closed.has(next)) next = addDays(next, 1);
  return next;
}

/** `count` working days after `day`. */
export function workingDaysAfter(day: Day, count: number): Day {
  let next = day;
  for (let left = count; left > 0; left -= 1) next = workingDay(addDays(next, 1));
  return workingDay(next);
}
