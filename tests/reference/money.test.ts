// Interest and margin against worked figures. Days divided by: ISDA 2006 Definitions 4.16 (d) Actual/365 (Fixed) and (e) Actual/360;
// the figures were computed from these rules. The margin example is this project's own definition ("common practice, no source").
import { describe, expect, it } from 'vitest';
import { reckonCosts } from '../../app/domain/money/costs.ts';
import { simpleInterestCents } from '../../app/domain/money/holding-cost.ts';
import { daysBetween } from '../../app/domain/shared/day.ts';
import { makeLabour, makeOtherCost, makePart, makeShop, makeSublet, makeVehicle } from '../helpers/vehicle-maker.ts';

/** 10,000.00 at 8 % a year, simple. */
const tenThousandAtEight: readonly (readonly [
  start: string,
  end: string,
  days: number,
  over365: number,
  over360: number,
])[] = [
  ['2024-01-31', '2024-03-31', 60, 131_51, 133_33],
  ['2025-01-15', '2025-04-15', 90, 197_26, 200_00],
  ['2024-02-28', '2024-03-01', 2, 4_38, 4_44],
  ['2023-02-28', '2023-03-01', 1, 2_19, 2_22],
  ['2023-11-30', '2024-03-31', 122, 267_40, 271_11],
];

/** Interest of one day and of 1,000 days: the long run shows that a day is not rounded before it is multiplied. */
const byTheDay: readonly (readonly [
  principalCents: number,
  ratePpm: number,
  dayCount: 'actual-365' | 'actual-360',
  oneDay: number,
  thousandDays: number,
])[] = [
  // 2.191781 and 2.222222 a day
  [1_000_000, 80_000, 'actual-365', 2_19, 2191_78],
  [1_000_000, 80_000, 'actual-360', 2_22, 2222_22],
  // 2.482877 and 2.517361 a day
  [1_250_000, 72_500, 'actual-365', 2_48, 2482_88],
  [1_250_000, 72_500, 'actual-360', 2_52, 2517_36],
  // 5.205479 and 5.277778 a day
  [2_000_000, 95_000, 'actual-365', 5_21, 5205_48],
  [2_000_000, 95_000, 'actual-360', 5_28, 5277_78],
];

describe('simple interest', () => {
  it.each(tenThousandAtEight)(
    'on 10,000 at 8 %% from %s to %s is over %i days',
    (start, end, days, over365, over360) => {
      expect(daysBetween(start, end)).toBe(days);
      const rate = { fundingRatePpm: 80_000 };
      expect(simpleInterestCents(1_000_000, days, { ...rate, dayCount: 'actual-365' })).toBe(over365);
      expect(simpleInterestCents(1_000_000, days, { ...rate, dayCount: 'actual-360' })).toBe(over360);
    },
  );

  it.each(byTheDay)(
    'on %i cents at %i ppm, %s, is %i cents a day and %i in 1,000 days',
    (principal, ppm, dayCount, one, many) => {
      expect(simpleInterestCents(principal, 1, { fundingRatePpm: ppm, dayCount })).toBe(one);
      expect(simpleInterestCents(principal, 1000, { fundingRatePpm: ppm, dayCount })).toBe(many);
    },
  );

  it('divides by 365 in a leap year too, as Actual/365 (Fixed) says', () => {
    const days = daysBetween('2024-01-01', '2025-01-01');
    expect(days).toBe(366);
    // 8,000.00 × 366 / 365, not 8,000.00
    expect(simpleInterestCents(10_000_000, days, { fundingRatePpm: 80_000, dayCount: 'actual-365' })).toBe(8021_92);
  });
});

describe('the worked margin of one vehicle', () => {
  // Bought 8,000 + 250 fees + 120 transport; asking 10,995; reconditioning 640 + 420 + 180 + 55; held 42 days at 8 %, Actual/365, and 12 a day.
  const boughtOn = '2026-01-05';
  const today = '2026-02-16';
  const vehicle = makeVehicle(boughtOn, {
    purchase: { priceCents: 8000_00, feesCents: 250_00, transportCents: 120_00 },
    targets: { askingCents: 10_995_00 },
    parts: [makePart(boughtOn, { priceCents: 640_00, orderedOn: boughtOn, receivedOn: boughtOn })],
    // seven hours at 60
    labour: [makeLabour(boughtOn, { minutes: 420 })],
    sublets: [makeSublet(boughtOn, { sentOn: boughtOn, backOn: boughtOn, invoicedCents: 180_00 })],
    otherCosts: [makeOtherCost(boughtOn, 55_00)],
  });
  const shop = makeShop({ rates: { fundingRatePpm: 80_000, overheadCentsPerDay: 12_00, labourCentsPerHour: 60_00 } });
  const costs = reckonCosts(vehicle, shop, { today, heldDays: daysBetween(boughtOn, today) });

  it('starts with 2,625 and has used 1,872.64 of it, 71.34 %', () => {
    expect(daysBetween(boughtOn, today)).toBe(42);
    expect(costs.acquisitionCents).toBe(8370_00);
    expect(costs.startingMarginCents).toBe(2625_00);
    expect(costs.reconditioningCents).toBe(1295_00);
    expect(costs.lines.find((line) => line.group === 'interest')?.cents).toBe(73_64);
    expect(costs.lines.find((line) => line.group === 'overhead')?.cents).toBe(504_00);
    expect(costs.holdingCents).toBe(577_64);
    expect(costs.marginUsedBasisPoints).toBe(7134);
  });

  it('has 752.36 left, which lasts until 11 April', () => {
    expect(costs.marginLeftCents).toBe(752_36);
    expect(costs.marginExpectedCents).toBe(752_36);
    // 13.753425 a day: 2,625 − 1,295 = 1,330.00 pays for 96 days (1,320.33) and not for 97 (1,334.08). 5 January + 96 days.
    expect(costs.breakEvenOn).toBe('2026-04-11');
  });

  it('says that there is no margin to use, not a percentage, when the price does not cover the purchase', () => {
    for (const askingCents of [8370_00, 8000_00]) {
      const without = reckonCosts({ ...vehicle, targets: { ...vehicle.targets, askingCents } }, shop, {
        today,
        heldDays: 42,
      });
      expect(without.startingMarginCents).toBe(askingCents - 8370_00);
      expect(without.marginUsedBasisPoints).toBeNull();
    }
  });
});
