// Measures over many vehicles: a stock counted by hand, ageing bands, days by cause and what idle days cost. Published figures are in
// tests/reference.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { ageingBandsSchema, ageingOf } from '../../../app/domain/fleet/ageing.ts';
import { daysByCause } from '../../../app/domain/fleet/days-by-cause.ts';
import { type StockVehicle, stockMeasures } from '../../../app/domain/fleet/stock-measures.ts';
import { addDays } from '../../../app/domain/shared/day.ts';
import { chargeHeldDays } from '../../../app/domain/time/held-days.ts';
import { arbitraryVehicle } from '../../helpers/arbitrary-vehicle.ts';
import { cleaned, roadTest } from '../../helpers/vehicle-maker.ts';

function makeStock(boughtOn: string, costCents: number, soldOn: string | null = null, priceCents = 0): StockVehicle {
  return { boughtOn, costCents, sale: soldOn === null ? null : { soldOn, priceCents } };
}

describe('the measures of a stock', () => {
  const vehicles = [
    makeStock('2026-01-01', 8000_00, '2026-03-15', 10_000_00),
    makeStock('2026-01-01', 6000_00, '2026-03-01', 7000_00),
    makeStock('2026-02-10', 9000_00, '2026-03-31', 9500_00),
    makeStock('2026-03-20', 5000_00),
    makeStock('2026-04-02', 7000_00),
  ];

  it('count what was in stock at the ends and what was sold in between', () => {
    // at the end of 1 March: the first and the third, 17,000; at the end of 31 March: the fourth, 5,000
    const found = stockMeasures(vehicles, { from: '2026-03-01', to: '2026-03-31' });
    expect(found).toMatchObject({
      inStock: 1,
      sold: 2,
      overDays: 30,
      averageInventoryCents: 11_000_00,
      daysSupply: 15,
    });
    expect(found.turn).toBeCloseTo((17_000 * 365) / 30 / 11_000, 12);
    expect(found.grossReturn).toBeCloseTo((19_500 - 17_000) / 11_000, 12);
  });

  it('are not taken over no time', () => {
    expect(() => stockMeasures(vehicles, { from: '2026-03-01', to: '2026-03-01' })).toThrow('at least one day');
  });
});

describe('ageing', () => {
  const aged = (id: string, heldDays: number) => ({ id, heldDays, tiedUpCents: heldDays * 100 });

  it('puts a vehicle on the last day of a band into that band', () => {
    const bands = ageingOf([aged('new', 0), aged('edge', 30), aged('over', 31), aged('old', 400)], [30, 60]);
    expect(bands.map(({ fromDays, toDays, vehicles }) => [fromDays, toDays, vehicles.map(({ id }) => id)])).toEqual([
      [0, 30, ['edge', 'new']],
      [31, 60, ['over']],
      [61, null, ['old']],
    ]);
    expect(bands.map(({ tiedUpCents }) => tiedUpCents)).toEqual([3000, 3100, 40_000]);
  });

  it('has every vehicle exactly once, whatever the bands', () => {
    const bands = fc
      .uniqueArray(fc.nat({ max: 200 }), { minLength: 1, maxLength: 6 })
      .map((ends) => ends.sort((a, b) => a - b));
    fc.assert(
      fc.property(bands, fc.array(fc.nat({ max: 300 })), (ends, days) => {
        expect(ageingBandsSchema.safeParse(ends).success).toBe(true);
        const found = ageingOf(
          days.map((held, at) => aged(`v${at}`, held)),
          ends,
        ).flatMap(({ vehicles }) => vehicles);
        expect(found.map(({ id }) => id).sort()).toEqual(days.map((_, at) => `v${at}`).sort());
      }),
    );
  });

  it('takes no bands out of order', () => {
    expect(ageingBandsSchema.safeParse([30, 30]).success).toBe(false);
    expect(ageingBandsSchema.safeParse([60, 30]).success).toBe(false);
  });
});

describe('days by cause', () => {
  it('are summed by month of purchase, with the idle days and their share of the holding cost', () => {
    const found = daysByCause([
      { boughtOn: '2026-02-03', heldDays: 30, byCause: { part: 18, idle: 12 }, holdingCents: 450_00 },
      { boughtOn: '2026-01-20', heldDays: 10, byCause: { code: 10 }, holdingCents: 150_00 },
      { boughtOn: '2026-02-28', heldDays: 7, byCause: { idle: 2, part: 5 }, holdingCents: 100_00 },
      { boughtOn: '2026-02-28', heldDays: 0, byCause: {}, holdingCents: 0 },
    ]);
    expect(found.months.map(({ month, vehicles }) => [month, vehicles])).toEqual([
      ['2026-01', 1],
      ['2026-02', 3],
    ]);
    // 12/30 of 450.00 and 2/7 of 100.00
    expect(found.months[1]).toMatchObject({
      heldDays: 37,
      byCause: { part: 23, idle: 14 },
      idleDays: 14,
      idleCents: 208_57,
    });
    expect(found.all).toMatchObject({
      vehicles: 4,
      heldDays: 47,
      idleDays: 14,
      byCause: { part: 23, code: 10, idle: 14 },
    });
  });

  it('add up to the days held, in each month and over the fleet', () => {
    fc.assert(
      fc.property(fc.array(arbitraryVehicle, { maxLength: 6 }), fc.nat({ max: 90 }), (drawn, apart) => {
        const vehicles = drawn.map(({ vehicle, today }, at) => {
          const held = chargeHeldDays(vehicle, [roadTest, cleaned], { today, countsFirstDay: false });
          const boughtOn = addDays(vehicle.purchase.boughtOn, at * apart);
          return { boughtOn, heldDays: held.heldDays, byCause: held.byCause, holdingCents: held.heldDays * 137 };
        });
        const { months, all } = daysByCause(vehicles);
        for (const tally of [...months, all]) {
          const sum = Object.values(tally.byCause).reduce((total, days) => total + days, 0);
          expect(sum).toBe(tally.heldDays);
          expect(tally.idleCents).toBe(tally.idleDays * 137);
        }
        expect(months.reduce((sum, { heldDays }) => sum + heldDays, 0)).toBe(all.heldDays);
      }),
      { numRuns: 40 },
    );
  });
});
