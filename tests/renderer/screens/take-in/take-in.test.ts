// Taking in: the stock number that is suggested, the year a VIN names, and what the form's draft becomes.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { nextStockNumber } from '../../../../app/domain/vehicle/next-stock-number.ts';
import { takeInSchema } from '../../../../app/domain/vehicle/take-in.ts';
import {
  emptyTakeIn,
  fieldOfTakeIn,
  finishTakeIn,
  yearAfterVin,
} from '../../../../renderer/screens/take-in/take-in-draft.ts';

describe('the suggested stock number', () => {
  it.each([
    [['F-1041', 'F-1042', 'F-1050'], 'F-1051'],
    [['0098', '0099'], '0100'],
    [['A9', 'A10', 'A2'], 'A11'],
    [['26-001b', '26-002b'], '26-003b'],
    [['F-1041', 'X7', 'F-1042'], 'F-1043'],
    [['blue one'], ''],
    [[], ''],
  ])('follows on %j', (used, expected) => {
    expect(nextStockNumber(used)).toBe(expected);
  });

  it('is never one that is in use, and fits its field', () => {
    fc.assert(
      fc.property(fc.array(fc.stringMatching(/^[A-Z]{0,2}-?\d{1,6}[a-z]?$/), { maxLength: 30 }), (used) => {
        const next = nextStockNumber(used);
        expect(used).not.toContain(next);
        expect(next.length).toBeLessThanOrEqual(24);
      }),
    );
  });
});

describe('the model year', () => {
  // VIN of the worked example in 49 CFR 565.15(c): a 2005 by the rule for light vehicles.
  const vin2005 = '1G4AH59H45G118341';

  it('is taken from the VIN where the rule leaves no choice', () => {
    expect(yearAfterVin({ vin: '', modelYear: null }, vin2005, 'US')).toBe(2005);
  });

  it('goes again with the VIN it was taken from', () => {
    expect(yearAfterVin({ vin: vin2005, modelYear: 2005 }, '1G4AH59H', 'US')).toBeNull();
  });

  it('stays as a person wrote it', () => {
    expect(yearAfterVin({ vin: '', modelYear: 1998 }, vin2005, 'US')).toBe(1998);
    expect(yearAfterVin({ vin: vin2005, modelYear: 2004 }, '', 'US')).toBe(2004);
  });

  it('is left open where the VIN names two', () => {
    expect(yearAfterVin({ vin: '', modelYear: null }, 'WBA3A5G59DNP26082', 'EU')).toBeNull();
  });
});

describe('what is taken in', () => {
  const today = '2026-03-18';
  const empty = emptyTakeIn(today, { distanceUnit: 'km', paperName: 'Title' }, 'F-1051');
  const draft = { ...empty, vin: '1G4AH59H45G118341', priceCents: 420_000 };
  const taken = (more: Partial<typeof draft>) => {
    const finished = finishTakeIn({ ...draft, ...more }, today);
    if (!finished.ok) throw new Error('Not finished.');
    return takeInSchema.parse(finished.value);
  };

  it('needs no more than a VIN, a stock number, a day and a price', () => {
    expect(taken({})).toMatchObject({
      identity: { stockNumber: 'F-1051', odometer: null },
      purchase: { boughtOn: today, priceCents: 420_000, feesCents: 0, transportCents: 0, paperReceivedOn: null },
      arrival: { arrivedOn: null, expectedOn: null },
    });
  });

  it('does not take a vehicle in without a price', () => {
    const finished = finishTakeIn({ ...draft, priceCents: null }, today);
    const parsed = takeInSchema.safeParse(finished.ok ? finished.value : null);
    expect(parsed.error?.issues.map((issue) => fieldOfTakeIn(issue.path.join('.')))).toEqual(['priceCents']);
  });

  it('keeps the day as the arrival when it is here, and as the expectation when it is not', () => {
    expect(taken({ isHere: true, arrivalOn: '2026-03-17' }).arrival).toEqual({
      arrivedOn: '2026-03-17',
      expectedOn: null,
    });
    expect(taken({ isHere: true, arrivalOn: null }).arrival).toEqual({ arrivedOn: today, expectedOn: null });
    expect(taken({ arrivalOn: '2026-03-20' }).arrival).toEqual({ arrivedOn: null, expectedOn: '2026-03-20' });
  });

  it('keeps no expectation of a paper that is here', () => {
    expect(taken({ paperIsHere: true, paperExpectedOn: '2026-03-30' }).purchase).toMatchObject({
      paperReceivedOn: today,
      paperExpectedOn: null,
    });
  });

  it('keeps the odometer with the unit of the shop', () => {
    expect(taken({ odometer: 81_200 }).identity.odometer).toEqual({ reading: 81_200, unit: 'km' });
  });

  it.each([
    ['identity.vin', 'vin'],
    ['identity.odometer.reading', 'odometer'],
    ['arrival.arrivedOn', 'arrivalOn'],
    ['purchase.priceCents', 'priceCents'],
    ['purchase.paperReceivedOn', 'paperIsHere'],
  ])('shows what stands against %s at its field', (path, field) => {
    expect(fieldOfTakeIn(path)).toBe(field);
    expect(field in empty).toBe(true);
  });
});
