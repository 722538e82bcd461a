// Working days and a network on a working calendar, worked out by hand. The 2026 holidays of the United States (5 U.S.C. 6103) are those
// of a public data set dedicated to the public domain.
import { describe, expect, it } from 'vitest';
import { dayFromNumber, dayNumber } from '../../app/domain/shared/day.ts';
import { criticalPath } from '../../app/domain/time/critical-path.ts';
import { finishDayNumber, workingTimeline } from '../../app/domain/time/timeline.ts';
import { addWorkingDays, type WorkingCalendar } from '../../app/domain/time/working-calendar.ts';

function calendar(holidays: readonly string[] = [], workDays: readonly number[] = [1, 2, 3, 4, 5]): WorkingCalendar {
  return { workDays: [...workDays], minutesPerDay: 480, holidays: [...holidays] };
}

const unitedStates2026 = [
  '2026-01-01',
  '2026-01-19',
  '2026-02-16',
  '2026-05-25',
  '2026-06-19',
  '2026-07-03',
  '2026-09-07',
  '2026-10-12',
  '2026-11-11',
  '2026-11-26',
  '2026-12-25',
];

describe('adding working days', () => {
  it.each([
    ['with Christmas and New Year off', calendar(['2024-12-25', '2024-12-26', '2025-01-01']), 5, '2024-12-31'],
    ['without holidays', calendar(), 5, '2024-12-27'],
    ['in a week of six days', calendar(['2024-12-25', '2024-12-26'], [1, 2, 3, 4, 5, 6]), 5, '2024-12-28'],
  ] as const)('to 20 December 2024, %s', (_words, of, days, expected) => {
    expect(addWorkingDays(of, '2024-12-20', days)).toBe(expected);
  });

  it('passes over Independence Day as it is observed', () => {
    expect(addWorkingDays(calendar(unitedStates2026), '2026-07-02', 1)).toBe('2026-07-06');
  });
});

describe('the handout network read as days from Monday 6 January 2025', () => {
  const tasks = [
    { id: 'A', duration: 6, after: [] },
    { id: 'B', duration: 2, after: ['A'] },
    { id: 'C', duration: 2, after: ['A'] },
    { id: 'D', duration: 3, after: ['B'] },
    { id: 'F', duration: 2, after: ['C'] },
    { id: 'E', duration: 4, after: ['D', 'F'] },
    { id: 'G', duration: 1, after: ['E'] },
  ].map((task) => ({ ...task, time: 'working' as const }));

  it.each([
    ['2025-01-27', []],
    ['2025-01-28', ['2025-01-20']],
  ])('finishes on %s with these holidays: %j', (expected, holidays) => {
    const start = dayNumber('2025-01-06');
    const result = criticalPath(tasks, { start, timeline: workingTimeline(calendar(holidays)) });
    expect(result.ok).toBe(true);
    if (!result.ok) return;
    expect(dayFromNumber(finishDayNumber(result.value.finish, start))).toBe(expected);
    expect(result.value.chains).toEqual([['A', 'B', 'D', 'E', 'G']]);
    expect(result.value.tasks.map(({ totalFloat }) => totalFloat)).toEqual([0, 0, 1, 0, 1, 0, 0]);
  });
});
