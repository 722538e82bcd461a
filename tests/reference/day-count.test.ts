// Day counts against ISDA's sheet "30/360 Day Count Conventions" (22 December 2008), as a reference finance library tests them, and
// against interest worked out from the rules of the ISDA 2006 Definitions 4.16.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type DayCount, dayCountSchema, daysBetweenBy, yearFraction } from '../../app/domain/money/day-count.ts';
import { roundToCents } from '../../app/domain/shared/cents.ts';
import { addDays } from '../../app/domain/shared/day.ts';

const isdaSheet: readonly (readonly [from: string, to: string, actual: number, bond: number, eurobond: number])[] = [
  ['2006-08-20', '2007-02-20', 184, 180, 180],
  ['2007-02-20', '2007-08-20', 181, 180, 180],
  ['2006-08-31', '2007-02-28', 181, 178, 178],
  ['2007-08-31', '2008-02-29', 182, 179, 179],
  ['2008-02-29', '2008-08-31', 184, 182, 181],
  ['2009-02-28', '2009-08-31', 184, 183, 182],
  ['2006-01-31', '2006-02-28', 28, 28, 28],
  ['2006-02-28', '2006-03-03', 3, 5, 5],
  ['2006-02-14', '2006-02-28', 14, 14, 14],
  ['2006-10-31', '2006-11-28', 28, 28, 28],
  ['2007-08-31', '2008-02-28', 181, 178, 178],
  ['2008-02-28', '2008-08-30', 184, 182, 182],
  ['2008-02-28', '2008-08-31', 185, 183, 182],
  ['2007-02-26', '2008-02-29', 368, 363, 363],
  ['2008-02-29', '2009-02-28', 365, 359, 359],
  ['2008-02-28', '2008-03-31', 32, 33, 32],
];

const isdaTermination: readonly (readonly [from: string, to: string, terminatesOn: string, days: number])[] = [
  ['2006-01-31', '2006-02-28', '2008-02-29', 30],
  ['2006-02-28', '2006-03-03', '2008-02-29', 3],
  ['2007-02-28', '2008-02-28', '2008-02-29', 358],
  ['2008-02-29', '2009-02-28', '2008-02-29', 360],
  ['2008-02-29', '2008-03-31', '2008-02-29', 30],
  ['2011-08-31', '2012-02-29', '2012-02-29', 179],
];

describe('the days of the ISDA sheet', () => {
  it.each(isdaSheet)('from %s to %s are %i, by bond basis %i, by Eurobond basis %i', (from, to, actual, bond, euro) => {
    expect(daysBetweenBy('actual-360', from, to)).toBe(actual);
    expect(daysBetweenBy('actual-365', from, to)).toBe(actual);
    expect(daysBetweenBy('30-360', from, to)).toBe(bond);
    expect(daysBetweenBy('30e-360', from, to)).toBe(euro);
  });

  it.each(isdaTermination)('from %s to %s, the debt ending on %s, are %i by 30E/360 (ISDA)', (from, to, ends, days) => {
    expect(daysBetweenBy('30e-360-isda', from, to, ends)).toBe(days);
  });

  it('count the end of February as the 30th unless the debt ends there', () => {
    expect(daysBetweenBy('30e-360-isda', '2011-08-31', '2012-02-29')).toBe(180);
    expect(daysBetweenBy('30e-360-isda', '2011-08-31', '2012-02-29', '2012-02-29')).toBe(179);
  });

  it('are 553 from 17 June 2011 to 30 December 2012 in months of thirty days (published for 30/365)', () => {
    expect(daysBetweenBy('30-360', '2011-06-17', '2012-12-30')).toBe(553);
  });
});

/** 10,000.00 at 8 % a year, simple; worked out from the rules. */
const tenThousandAtEight: readonly (readonly [
  from: string,
  to: string,
  over365: number,
  over360: number,
  thirtyDays: number,
  over30360: number,
])[] = [
  ['2024-01-31', '2024-03-31', 131_51, 133_33, 60, 133_33],
  ['2025-01-15', '2025-04-15', 197_26, 200_00, 90, 200_00],
  ['2024-02-28', '2024-03-01', 4_38, 4_44, 3, 6_67],
  ['2023-02-28', '2023-03-01', 2_19, 2_22, 3, 6_67],
  ['2023-11-30', '2024-03-31', 267_40, 271_11, 120, 266_67],
];

function interest(convention: DayCount, from: string, to: string): number {
  const { numerator, denominator } = yearFraction(convention, from, to);
  return roundToCents(10_000_00n * 80_000n * BigInt(numerator), 1_000_000n * BigInt(denominator));
}

describe('the part of a year', () => {
  it.each(tenThousandAtEight)(
    'from %s to %s gives the interest worked out by hand',
    (from, to, a365, a360, days, bond) => {
      expect(interest('actual-365', from, to)).toBe(a365);
      expect(interest('actual-360', from, to)).toBe(a360);
      expect(daysBetweenBy('30-360', from, to)).toBe(days);
      expect(interest('30-360', from, to)).toBe(bond);
    },
  );

  it('is exact, whole days over a whole year', () => {
    expect(yearFraction('actual-365', '2024-01-01', '2025-01-01')).toEqual({ numerator: 366, denominator: 365 });
    expect(yearFraction('30-360', '2024-01-01', '2025-01-01')).toEqual({ numerator: 360, denominator: 360 });
  });
});

describe('counting days', () => {
  const start = fc.integer({ min: 0, max: 3000 }).map((days) => addDays('2020-01-01', days));
  const convention = fc.constantFrom(...dayCountSchema.options);

  it('never goes down as the end moves on, and never below nothing', () => {
    fc.assert(
      fc.property(convention, start, fc.nat({ max: 900 }), (by, from, days) => {
        const to = addDays(from, days);
        const count = daysBetweenBy(by, from, to);
        expect(count).toBeGreaterThanOrEqual(0);
        expect(daysBetweenBy(by, from, addDays(to, 1))).toBeGreaterThanOrEqual(count);
      }),
      { numRuns: 2000 },
    );
  });

  it('stays within a few days of the days that pass in a year', () => {
    fc.assert(
      fc.property(convention, start, (by, from) => {
        expect(Math.abs(daysBetweenBy(by, from, addDays(from, 365)) - 365)).toBeLessThanOrEqual(8);
      }),
    );
  });

  it('refuses to count backwards', () => {
    expect(() => daysBetweenBy('30-360', '2026-02-02', '2026-02-01')).toThrow('2026-02-01 is before 2026-02-02');
  });
});
