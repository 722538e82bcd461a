// Moves along time in whole and part days, for tasks that run day and night and for tasks that need the shop open. Plain numbers only.
import type { WorkingCalendar } from './working-calendar.ts';
import { workingDayTable } from './working-calendar.ts';

/**
 * 'calendar': runs on every day (a part on its way, paint that cures). 'working': only while the shop works. 'turn': waits for its turn in
 * days of the shop and is over when the shop is open next, never on a day on which nobody is there.
 */
export type TaskTime = 'calendar' | 'working' | 'turn';

/**
 * Instants are numbers of days; with a working calendar, the number of the day (1970-01-01 is 0) plus the part of its hours that has gone
 * by. Durations are in days of the task's own time.
 */
export type Timeline = {
  /** The first instant from this one on at which such a task can begin. */
  readonly begin: (from: number, duration: number, time: TaskTime) => number;
  readonly finish: (start: number, duration: number, time: TaskTime) => number;
  /** The latest start that still finishes by then. */
  readonly start: (finish: number, duration: number, time: TaskTime) => number;
  /** Time of the task's own kind between two instants. */
  readonly gap: (from: number, to: number, time: TaskTime) => number;
};

/** Time without a calendar: every task runs all the time, and the unit is whatever the durations are in. */
export const plainTimeline: Timeline = {
  begin: (from) => from,
  finish: (start, duration) => start + duration,
  start: (finish, duration) => finish - duration,
  gap: (from, to) => to - from,
};

/** Sums of parts of a day are off by less than this; an instant so near a whole day is that day. */
const noise = 1e-9;

/** Working tasks run in the hours of working days only; what finishes at the end of a day finishes on that day, not on the next. */
export function workingTimeline(calendar: WorkingCalendar): Timeline {
  const table = workingDayTable(calendar);
  /** Working days gone by at this instant, the open part of the day included. */
  const worked = (instant: number) => {
    const number = Math.floor(instant + noise);
    const whole = table.countBefore(number);
    return table.isWorking(number) ? whole + Math.max(0, instant - number) : whole;
  };
  const beginAt = (work: number) => {
    const whole = Math.floor(work + noise);
    return table.dayAt(whole) + Math.max(0, work - whole);
  };
  const endAt = (work: number) => {
    const whole = Math.floor(work + noise);
    const part = work - whole;
    return part <= noise ? table.dayAt(whole - 1) + 1 : table.dayAt(whole) + part;
  };
  const isOpenAllDay = (duration: number, time: TaskTime) =>
    time === 'calendar' || (time === 'working' && duration === 0);
  return {
    begin: (from, duration, time) => (isOpenAllDay(duration, time) ? from : beginAt(worked(from))),
    finish: (start, duration, time) => {
      if (isOpenAllDay(duration, time)) return start + duration;
      const end = worked(start) + duration;
      return time === 'turn' ? beginAt(end) : endAt(end);
    },
    start: (finish, duration, time) =>
      isOpenAllDay(duration, time) ? finish - duration : beginAt(worked(finish) - duration),
    gap: (from, to, time) => (time === 'calendar' ? to - from : worked(to) - worked(from)),
  };
}

/** The number of the day on which something finishes at this instant: the end of a day is that day. Never before the day of `start`. */
export function finishDayNumber(finish: number, start: number): number {
  return Math.max(Math.floor(start + noise), Math.ceil(finish - noise) - 1);
}
