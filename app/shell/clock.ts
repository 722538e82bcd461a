// The program's only clock: now as an instant, and today as the calendar day at this desk. Everything else is told.
import type { Day } from '../domain/shared/day.ts';

export function presentInstant(): string {
  return new Date().toISOString();
}

/** The calendar day where the computer stands. */
export function localDay(date: Date): Day {
  const year = String(date.getFullYear()).padStart(4, '0');
  const month = String(date.getMonth() + 1).padStart(2, '0');
  return `${year}-${month}-${String(date.getDate()).padStart(2, '0')}`;
}

export function localToday(): Day {
  return localDay(new Date());
}
