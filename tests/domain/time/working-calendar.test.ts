// The shop's working days: what always holds of counting and adding. Dated vectors are in tests/reference.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { addDays, compareDays } from '../../../app/domain/shared/day.ts';
import {
  addWorkingDays,
  isWorkingDay,
  type WorkingCalendar,
  workingCalendarSchema,
  workingDayFrom,
  workingDaysBetween,
} from '../../../app/domain/time/working-calendar.ts';

const mondayToFriday: WorkingCalendar = { workDays: [1, 2, 3, 4, 5], minutesPerDay: 480, holidays: ['2026-04-06'] };

const calendars: fc.Arbitrary<WorkingCalendar> = fc.record({
  workDays: fc.uniqueArray(fc.integer({ min: 1, max: 7 }), { minLength: 1, maxLength: 7 }),
  minutesPerDay: fc.constant(480),
  holidays: fc.array(
    fc.nat({ max: 200 }).map((days) => addDays('2026-01-01', days)),
    { maxLength: 12 },
  ),
});
const days = fc.nat({ max: 200 }).map((offset) => addDays('2026-01-01', offset));

describe('working days', () => {
  it('are those of the week less the holidays', () => {
    const week = ['2026-04-03', '2026-04-04', '2026-04-05', '2026-04-06', '2026-04-07'];
    expect(week.map((day) => isWorkingDay(mondayToFriday, day))).toEqual([true, false, false, false, true]);
    expect(workingDayFrom(mondayToFriday, '2026-04-04')).toBe('2026-04-07');
    expect(workingDayFrom(mondayToFriday, '2026-04-03')).toBe('2026-04-03');
    // before 1970 too: 29 December 1969 was a Monday
    expect(isWorkingDay(mondayToFriday, '1969-12-29')).toBe(true);
    expect(isWorkingDay(mondayToFriday, '1969-12-28')).toBe(false);
  });

  it('are counted one by one', () => {
    fc.assert(
      fc.property(calendars, days, fc.nat({ max: 60 }), (calendar, from, span) => {
        let count = 0;
        for (let after = 1; after <= span; after += 1) if (isWorkingDay(calendar, addDays(from, after))) count += 1;
        const to = addDays(from, span);
        expect(workingDaysBetween(calendar, from, to)).toBe(count);
        expect(workingDaysBetween(calendar, to, from) + count).toBe(0);
      }),
    );
  });

  it('added and counted again are as many', () => {
    fc.assert(
      fc.property(calendars, days, fc.integer({ min: -30, max: 30 }), (calendar, from, count) => {
        const to = addWorkingDays(calendar, from, count);
        if (count !== 0) expect(isWorkingDay(calendar, to)).toBe(true);
        expect(Math.sign(compareDays(to, from))).toBe(Math.sign(count));
        if (count > 0 || isWorkingDay(calendar, from))
          expect(workingDaysBetween(calendar, from, to) === count || count === 0).toBe(true);
      }),
    );
  });

  it('run out in words when the holidays leave none', () => {
    expect(() => addWorkingDays(mondayToFriday, '2199-12-30', 5)).toThrow('Look through its holidays');
  });
});

describe('a calendar', () => {
  it('needs a day of the week, each once', () => {
    const read = (workDays: number[]) =>
      workingCalendarSchema.safeParse({ workDays, minutesPerDay: 480, holidays: [] }).success;
    expect([read([1, 6]), read([]), read([1, 1]), read([8])]).toEqual([true, false, false, false]);
  });
});
