// Days held and calendar arithmetic against published rules and computed examples. Days are text, so the computer's time zone and its
// summer time must not matter; the same checks run under several zones to show it.
import fc from 'fast-check';
import { afterAll, describe, expect, it } from 'vitest';
import {
  addDays,
  compareDays,
  dayFromNumber,
  dayNumber,
  daySchema,
  daysBetween,
  isDay,
  laterDay,
} from '../../app/domain/shared/day.ts';

// Days held = end − start as calendar days, the start being day 0 (common practice). Values computed, and checked by hand on a calendar.
const heldDays: readonly (readonly [start: string, end: string, days: number, why: string])[] = [
  ['2024-02-01', '2024-03-01', 29, 'a leap February'],
  ['2023-02-01', '2023-03-01', 28, 'a common February'],
  ['2024-12-31', '2025-01-01', 1, 'over new year'],
  ['2025-03-29', '2025-03-31', 2, 'summer time begins in Europe on 30 March 2025'],
  ['2025-10-25', '2025-10-27', 2, 'summer time ends in Europe on 26 October 2025'],
  ['2025-03-08', '2025-03-10', 2, 'summer time begins in the United States on 9 March 2025'],
  ['2025-11-01', '2025-11-03', 2, 'summer time ends in the United States on 2 November 2025'],
  ['2024-05-05', '2024-05-05', 0, 'the same day'],
  ['2025-01-02', '2025-01-01', -1, 'an end before the start'],
];

// Actual days between dates in ISDA, "30/360 Day Count Conventions" (22 December 2008), as a public finance library's tests give them.
const actualDays: readonly (readonly [start: string, end: string, days: number])[] = [
  ['2006-08-20', '2007-02-20', 184],
  ['2007-02-20', '2007-08-20', 181],
  ['2006-08-31', '2007-02-28', 181],
  ['2007-08-31', '2008-02-29', 182],
  ['2008-02-29', '2008-08-31', 184],
  ['2009-02-28', '2009-08-31', 184],
  ['2006-01-31', '2006-02-28', 28],
  ['2006-02-28', '2006-03-03', 3],
  ['2006-02-14', '2006-02-28', 14],
  ['2006-10-31', '2006-11-28', 28],
  ['2007-08-31', '2008-02-28', 181],
  ['2008-02-28', '2008-08-30', 184],
  ['2008-02-28', '2008-08-31', 185],
  ['2007-02-26', '2008-02-29', 368],
  ['2008-02-29', '2009-02-28', 365],
  ['2008-02-28', '2008-03-31', 32],
];

const zones: readonly (readonly [zone: string, offsetInJuly: number, offsetInJanuary: number])[] = [
  ['UTC', 0, 0],
  ['America/New_York', 240, 300],
  ['Europe/Berlin', -120, -60],
  ['Australia/Lord_Howe', -630, -660],
  ['Pacific/Kiritimati', -840, -840],
  ['Pacific/Pago_Pago', 660, 660],
];

const someDay = fc.integer({ min: dayNumber('1900-01-01'), max: dayNumber('2199-12-31') }).map(dayFromNumber);

describe.each(zones)('with the computer set to %s', (zone, offsetInJuly, offsetInJanuary) => {
  const zoneBefore = process.env.TZ;
  const enterZone = () => {
    process.env.TZ = zone;
    // Without this the checks below could all run in one zone and prove nothing.
    expect(new Date(2025, 6, 1).getTimezoneOffset()).toBe(offsetInJuly);
    expect(new Date(2025, 0, 1).getTimezoneOffset()).toBe(offsetInJanuary);
  };
  afterAll(() => {
    if (zoneBefore === undefined) delete process.env.TZ;
    else process.env.TZ = zoneBefore;
  });

  it.each(heldDays)('counts from %s to %s as %i days (%s)', (start, end, days) => {
    enterZone();
    expect(daysBetween(start, end)).toBe(days);
    expect(addDays(start, days)).toBe(end);
  });

  it.each(actualDays)('counts from %s to %s as %i actual days (ISDA sheet)', (start, end, days) => {
    enterZone();
    expect(daysBetween(start, end)).toBe(days);
  });

  it('goes through every day from 1900 to 2199 once, in order, each one later than the last', () => {
    enterZone();
    let day = '1900-01-01';
    let count = 1;
    while (day !== '2199-12-31') {
      const next = addDays(day, 1);
      if (!isDay(next) || next <= day) throw new Error(`${day} is followed by ${next}`);
      day = next;
      count += 1;
    }
    // 300 Gregorian years, 73 of them leap years: 75 that four divides, without 1900 and 2100.
    expect(count).toBe(300 * 365 + 73);
  });
});

describe('calendar days', () => {
  it.each(['2024-02-29', '2000-02-29', '1900-01-01', '2199-12-31'])('takes %s', (text) => {
    expect(isDay(text)).toBe(true);
    expect(daySchema.safeParse(text).success).toBe(true);
    expect(dayFromNumber(dayNumber(text))).toBe(text);
  });

  // Leap years: the Gregorian rule, ISO 8601; 1900 and 2100 have none.
  it.each([
    '2023-02-29',
    '1900-02-29',
    '2100-02-29',
    '2024-02-30',
    '2024-04-31',
    '2024-13-01',
    '2024-00-10',
    '2024-01-00',
    '1899-12-31',
    '2200-01-01',
    '2024-1-1',
    '24-01-01',
    ' 2024-01-01',
    '2024-01-01T00:00:00Z',
    '20240101',
    '',
  ])('refuses %j', (text) => {
    expect(isDay(text)).toBe(false);
    expect(daySchema.safeParse(text).success).toBe(false);
  });

  it.each(['2023-02-29', '2024-02-30', '2024-13-01', '2024-01-00', '2024-01-01T00', '0024-01-01', 'soon', ''])(
    'does not take %j for another day when it counts',
    (text) => {
      expect(() => dayNumber(text)).toThrow('Not a calendar day');
    },
  );

  it('starts counting on 1 January 1970', () => {
    expect(dayNumber('1970-01-01')).toBe(0);
    expect(dayNumber('2000-03-01')).toBe(11017); // 30 years of 365 days, 7 leap days before 2000, then 31 + 29
  });

  it('adds and counts as inverses, and counting is additive', () => {
    fc.assert(
      fc.property(someDay, someDay, someDay, (a, b, c) => {
        expect(addDays(a, daysBetween(a, b))).toBe(b);
        expect(daysBetween(a, b) + daysBetween(b, c)).toBe(daysBetween(a, c));
        expect(daysBetween(a, b)).toBe(0 - daysBetween(b, a));
      }),
    );
  });

  it('sorts as days, not only as text', () => {
    fc.assert(
      fc.property(someDay, someDay, (a, b) => {
        expect(Math.sign(compareDays(a, b))).toBe(Math.sign(dayNumber(a) - dayNumber(b)));
        expect(dayNumber(laterDay(a, b))).toBe(Math.max(dayNumber(a), dayNumber(b)));
      }),
    );
  });
});
