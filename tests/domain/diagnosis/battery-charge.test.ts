// Batteries beyond the published table: other chemistries, implausible volts, and the supply while programming.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { chargeFromGravity, chargeFromRestingVolts } from '../../../app/domain/diagnosis/battery-charge.ts';
import { chargeOf } from '../../../app/domain/diagnosis/battery-reading.ts';
import {
  supportRangeFor,
  supportRangeSchema,
  usualSupportRange,
  warnAboutSupport,
  warnAboutSupportOf,
} from '../../../app/domain/diagnosis/support-voltage.ts';

describe('charge from resting volts', () => {
  it('gives no charge for lithium, whose voltage does not tell it', () => {
    const reading = chargeFromRestingVolts(13.2, { chemistry: 'lithium' });
    expect(reading).toMatchObject({ percent: null, freezesAtCelsius: null });
    expect(reading?.cautions).toHaveLength(1);
  });

  it('expects more volts of AGM for the same charge, and says that its steps have no source', () => {
    const agm = chargeFromRestingVolts(12.66, { chemistry: 'agm' });
    expect(agm?.percent).toBeLessThan(100);
    expect(agm?.cautions.join(' ')).toContain('from memory');
    expect(chargeFromRestingVolts(12.9, { chemistry: 'agm' })?.percent).toBe(100);
  });

  it('says when the battery has not rested or may be damaged', () => {
    expect(chargeFromRestingVolts(13.2, { chemistry: 'flooded' })?.cautions.join(' ')).toContain('rest six hours');
    expect(chargeFromRestingVolts(9, { chemistry: 'flooded' })?.cautions.join(' ')).toContain('cell may be dead');
    expect(chargeFromRestingVolts(12.5, { chemistry: 'flooded' })?.cautions).toEqual([]);
  });

  it.each([Number.NaN, Number.POSITIVE_INFINITY, 0, -12, 4.9, 24.1])('gives nothing for %s V', (volts) => {
    expect(chargeFromRestingVolts(volts, { chemistry: 'flooded' })).toBeNull();
  });

  it.each([Number.NaN, 0, 0.9, 2])('gives nothing for a specific gravity of %s', (gravity) => {
    expect(chargeFromGravity(gravity)).toBeNull();
  });

  it('stays within 0 and 100 and never falls as the volts rise', () => {
    const volts = fc.double({ min: 5, max: 16, noNaN: true });
    fc.assert(
      fc.property(volts, volts, fc.constantFrom('flooded', 'efb', 'agm'), (a, b, chemistry) => {
        const low = chargeFromRestingVolts(Math.min(a, b), { chemistry })?.percent ?? -1;
        const high = chargeFromRestingVolts(Math.max(a, b), { chemistry })?.percent ?? -1;
        expect(low).toBeGreaterThanOrEqual(0);
        expect(high).toBeLessThanOrEqual(100);
        expect(low).toBeLessThanOrEqual(high);
      }),
    );
  });
});

describe('the supply while programming', () => {
  const ownRange = { make: 'Northolt', lowestVolts: 14, highestVolts: 15.5, source: 'service information, invented' };

  it('warns under 12.4 V and over 14.0 V where the make says nothing else (common practice, no source)', () => {
    expect(warnAboutSupport({ before: 12.4, lowest: 13.1, after: 14 })).toEqual([]);
    expect(warnAboutSupport({ before: 12.39, lowest: null, after: 14.01 })).toHaveLength(2);
    expect(warnAboutSupport({ before: null, lowest: 11.9, after: null })[0]).toContain(
      '11.9 V at the lowest is too low',
    );
    expect(warnAboutSupport({ before: null, lowest: Number.NaN, after: null })[0]).toContain('not a number');
  });

  it('uses the make’s own range where the shop has entered one', () => {
    expect(supportRangeFor('NORTH OLT', [ownRange])).toBe(ownRange);
    expect(supportRangeFor('Other', [ownRange])).toBe(usualSupportRange);
    expect(warnAboutSupport({ before: 13.5, lowest: null, after: 15 }, ownRange)).toHaveLength(1);
    const every = { ...ownRange, make: null };
    expect(supportRangeFor('Other', [ownRange, every])).toBe(every);
  });

  it('refuses a range that is upside down', () => {
    expect(supportRangeSchema.safeParse(ownRange).success).toBe(true);
    expect(supportRangeSchema.safeParse({ ...ownRange, lowestVolts: 16 }).success).toBe(false);
  });
});

describe('a reading as it was taken', () => {
  const reading = { volts: 12.45, chemistry: 'flooded', temperatureCelsius: null, isRested: true } as const;

  it('tells a charge only of a battery that had rested', () => {
    expect(chargeOf(reading)?.percent).toBe(75);
    expect(chargeOf({ ...reading, isRested: false })).toBeNull();
  });

  it('is corrected for temperature: 12.45 V at 10 °C is read at 12.378 V, 66 % (a battery maker’s row)', () => {
    const cold = chargeOf({ ...reading, temperatureCelsius: 10 });
    expect(cold?.tableVolts).toBeCloseTo(12.378, 3);
    expect(Math.round(cold?.percent ?? 0)).toBe(66);
  });
});

describe('the supply of a make', () => {
  it('is judged by its own row of the shop’s table, else by the row for every other make', () => {
    const ranges = [
      { make: null, lowestVolts: 12.4, highestVolts: 14, source: 'common practice' },
      { make: 'Orvane', lowestVolts: 13.4, highestVolts: 14.8, source: 'service information' },
    ];
    const volts = { before: 13.2, lowest: 13.1, after: 14.5 };
    expect(warnAboutSupportOf('orvane', ranges, volts)).toHaveLength(2);
    expect(warnAboutSupportOf('Velquist', ranges, volts)).toEqual([
      '14.5 V after programming is too high; keep the supply within 12.4 to 14 V (common practice).',
    ]);
  });
});
