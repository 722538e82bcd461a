// What is owed to a lender after a sale: how much, by when, and that it stays due until somebody records it as paid.
import { describe, expect, it } from 'vitest';
import { soldMargin } from '../../../app/domain/fleet/sold-margin.ts';
import { cashCalendar } from '../../../app/domain/money/cash-calendar.ts';
import { reckonCosts } from '../../../app/domain/money/costs.ts';
import { openPayoff } from '../../../app/domain/money/payoff.ts';
import { makeOtherCost, makeShop, makeVehicle } from '../../helpers/vehicle-maker.ts';
import { makePlan, tenPercentOfOriginal } from './funding-plan-maker.ts';

const plan = makePlan({
  id: 'plan',
  advancePpm: 1_000_000,
  curtailments: [tenPercentOfOriginal(10)],
  payoffWorkingDays: 5,
});
const shop = { ...makeShop(), fundingPlans: [plan] };
const sale = { soldOn: '2026-05-21', priceCents: 1_200_000, buyer: 'somebody', paidOffOn: null };
const sold = (paidOffOn: string | null = null, boughtOn = '2026-05-04') =>
  makeVehicle(boughtOn, { purchase: { fundingPlanId: plan.id }, sale: { ...sale, paidOffOn } });

describe('a pay-off', () => {
  it('is the balance after what was due before the sale, within the plan’s working days', () => {
    // 8,000.00 less a tenth due on 14 May; Thursday 21 May and five working days: 28 May without a holiday.
    expect(openPayoff(sold(), shop)).toEqual({ cents: 720_000, dueOn: '2026-05-28' });
    const closed = { ...shop, calendar: { ...shop.calendar, holidays: ['2026-05-25'] } };
    expect(openPayoff(sold(), closed)?.dueOn).toBe('2026-05-29');
  });

  it('is due with the sale where the plan names no time', () => {
    const silent = { ...shop, fundingPlans: [{ ...plan, payoffWorkingDays: null }] };
    expect(openPayoff(sold(), silent)?.dueOn).toBe('2026-05-21');
  });

  it('is none once paid, for own money, and before the sale', () => {
    expect(openPayoff(sold('2026-05-26'), shop)).toBeNull();
    expect(openPayoff(makeVehicle('2026-05-04', { sale }), shop)).toBeNull();
    expect(openPayoff({ ...sold(), sale: null }, shop)).toBeNull();
  });

  it('carries interest until it is paid', () => {
    const interest = (paidOffOn: string | null) =>
      reckonCosts(sold(paidOffOn), shop, { today: '2026-06-30', heldDays: 17 })
        .lines.filter(({ group }) => group === 'interest')
        .reduce((sum, { cents }) => sum + cents, 0);
    // Five nights on 7,200.00 at 8 % over 360 days: 8.00.
    expect(interest('2026-05-26') - interest(null)).toBe(8_00);
  });

  it('stands in the calendar on its day, also when the day has gone by', () => {
    const owed = [{ vehicleId: 'one', cents: 720_000, dueOn: '2026-05-28', soldOn: '2026-05-21' }];
    const days = (from: string, through: string) => cashCalendar([], owed, { from, through });
    expect(days('2026-05-22', '2026-06-30')).toEqual([
      {
        dueOn: '2026-05-28',
        cents: 720_000,
        payments: [
          {
            vehicleId: 'one',
            kind: 'payoff',
            dueOn: '2026-05-28',
            cents: 720_000,
            balanceAfterCents: 0,
            what: 'Pay-off, sold on 2026-05-21',
          },
        ],
      },
    ]);
    expect(days('2026-06-15', '2026-06-30')).toHaveLength(1);
    expect(days('2026-05-22', '2026-05-27')).toEqual([]);
  });
});

describe('the margin of a sold vehicle', () => {
  it('is held against the plan before holding and tax, and tells both beside it', () => {
    const vehicle = makeVehicle('2026-05-01', {
      targets: { askingCents: 1_250_000, budgetCents: 60_000 },
      otherCosts: [makeOtherCost('2026-05-02', 70_000)],
      sale,
    });
    const terms = {
      ...makeShop({ rates: { overheadCentsPerDay: 1_000 } }),
      saleTax: { kind: 'on-margin' as const, rate: { numerator: 1, denominator: 5 }, rounding: 'nearest' as const },
    };
    const costs = reckonCosts(vehicle, terms, { today: '2026-06-01', heldDays: 20 });
    const margin = soldMargin(vehicle, costs);
    expect(margin).toMatchObject({
      plannedCents: 1_250_000 - 800_000 - 60_000,
      earnedCents: 1_200_000 - 800_000 - 70_000,
      holdingCents: 20_000,
    });
    // A sixth of the margin of 4,000.00.
    expect(margin?.taxCents).toBe(66_667);
    expect(margin?.madeCents).toBe((margin?.earnedCents ?? 0) - 20_000 - 66_667);
  });

  it('has no plan where price or budget was not set', () => {
    const bare = makeVehicle('2026-05-01', { targets: { askingCents: null }, sale });
    const costs = reckonCosts(bare, makeShop(), { today: '2026-06-01', heldDays: 20 });
    expect(soldMargin(bare, costs)?.plannedCents).toBeNull();
    expect(soldMargin({ ...bare, sale: null }, costs)).toBeNull();
  });
});
