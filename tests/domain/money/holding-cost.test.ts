// The cost of holding: interest and the amount a day, and how many days an amount pays for. Published figures are in tests/reference.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { holdingCost, simpleInterestCents } from '../../../app/domain/money/holding-cost.ts';
import { noHoldingCost } from '../../helpers/vehicle-maker.ts';

const rates = { ...noHoldingCost, fundingRatePpm: 80_000, overheadCentsPerDay: 1_000 };

describe('holding', () => {
  it('costs nothing on the first day', () => {
    expect(holdingCost(800_000, 0, rates)).toEqual({ interestCents: 0, overheadCents: 0 });
  });

  it('is rounded once for the whole time, not day by day', () => {
    // 1.7534 a day: 100 days are 175.34, a hundred rounded days would be 175.00
    expect(simpleInterestCents(800_000, 100, rates)).toBe(175_34);
  });

  it('never gets cheaper as the days go on', () => {
    const someRates = fc.record({ rate: fc.integer({ min: 0, max: 1_000_000 }), overhead: fc.nat({ max: 5_000 }) });
    fc.assert(
      fc.property(fc.nat({ max: 5_000_000 }), fc.nat({ max: 900 }), someRates, (price, days, { rate, overhead }) => {
        const own = { ...rates, fundingRatePpm: rate, overheadCentsPerDay: overhead };
        const now = holdingCost(price, days, own);
        const next = holdingCost(price, days + 1, own);
        expect(next.interestCents).toBeGreaterThanOrEqual(now.interestCents);
        expect(next.overheadCents).toBe(now.overheadCents + overhead);
      }),
    );
  });
});
