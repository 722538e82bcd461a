// When a vehicle will be sold and what is left then, by hand.
import { describe, expect, it } from 'vitest';
import type { Shop } from '../../../app/domain/fleet/shop.ts';
import { reckonCosts } from '../../../app/domain/money/costs.ts';
import { weighVehicle } from '../../../app/domain/money/weigh-vehicle.ts';
import { addDays, type Day } from '../../../app/domain/shared/day.ts';
import type { Vehicle } from '../../../app/domain/vehicle/vehicle.ts';
import { makePart, makeShop, makeVehicle } from '../../helpers/vehicle-maker.ts';

const today = '2026-03-18';
const shop: Shop = {
  ...makeShop({ rates: { overheadCentsPerDay: 10_00 } }),
  selling: { retailCents: 200_00, tradeCents: 100_00, daysToSell: null, daysToTrade: 4 },
};
const vehicle = makeVehicle(addDays(today, -20), {
  purchase: { priceCents: 800_000 },
  targets: { askingCents: 1_000_000, tradeValueCents: 780_000 },
  parts: [makePart(addDays(today, -10), { priceCents: 30_000 })],
});

function weigh(of: Vehicle, by: Shop, readyOn: Day | null, ownDaysToSell: { days: number; cases: number } | null) {
  const costs = reckonCosts(of, by, { today, heldDays: 20 });
  return weighVehicle({ vehicle: of, shop: by, today, heldDays: 20, costs, readyOn, ownDaysToSell });
}

describe('the prospects of a vehicle', () => {
  it('are sold so many days after it is ready as the shop’s own sales took, and what is left then', () => {
    const prospect = weigh(vehicle, shop, addDays(today, 6), { days: 9, cases: 40 });
    expect(prospect).toMatchObject({ saleOn: addDays(today, 15), daysToSell: 9, daysToSellCases: 40 });
    // 10,000 less 8,000 bought, 200 held so far, 300 for the part, 15 more days at 10, 200 for selling.
    expect(prospect.marginAtSaleCents).toBe(1_000_000 - 800_000 - 20_000 - 30_000 - 15_000 - 20_000);
    if (!prospect.weighed.ok) throw new Error('Nothing is missing.');
    expect(prospect.weighed.value.finish.resultCents).toBe(prospect.marginAtSaleCents);
    // 7,800 less 8,200 spent, 4 days at 10 and 100.
    expect(prospect.weighed.value.letGo.resultCents).toBe(780_000 - 820_000 - 4_000 - 10_000);
    expect(prospect.weighed.value.advantageCents).toBe(115_000 + 54_000);
  });

  it('take the shop’s setting for the days to sell before its history, and a day gone by as today', () => {
    const by = { ...shop, selling: { ...shop.selling, daysToSell: 2 } };
    const prospect = weigh(vehicle, by, addDays(today, -3), { days: 9, cases: 40 });
    expect(prospect).toMatchObject({ saleOn: addDays(today, 2), daysToSell: 2, daysToSellCases: 0 });
  });

  it('less the value lost until then, and the tax on what is left of the price', () => {
    const by: Shop = {
      ...shop,
      saleTax: { kind: 'on-margin', rate: { numerator: 20, denominator: 100 }, rounding: 'nearest' },
      valueLoss: [
        { heldDays: 20, lostPpm: 0 },
        { heldDays: 40, lostPpm: 40_000 },
      ],
    };
    // After 10 more of 20 days half of 400.00 is lost: sold for 9,800, of which 1,800 are margin and 300 tax.
    const { marginAtSaleCents } = weigh(vehicle, by, today, { days: 10, cases: 1 });
    expect(marginAtSaleCents).toBe(980_000 - 30_000 - 850_000 - 10_000 - 20_000);
  });

  it('name every input that is missing and then foresee no sale', () => {
    const bare = makeVehicle(today, { targets: { askingCents: null, tradeValueCents: null } });
    const prospect = weigh(bare, makeShop(), null, null);
    expect(prospect).toMatchObject({ saleOn: null, marginAtSaleCents: null });
    if (prospect.weighed.ok) throw new Error('Everything is missing.');
    expect(prospect.weighed.error.map(({ what }) => what)).toEqual([
      'asking price',
      'ready day',
      'days to sell',
      'cost of selling',
      'trade value',
      'days to the trade',
      'cost of the trade sale',
    ]);
  });
});
