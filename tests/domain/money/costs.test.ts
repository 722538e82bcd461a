// What a vehicle has cost, what is committed and what is to come: each kind of fact by example, and sums that must hold for any record.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Rates } from '../../../app/domain/fleet/shop.ts';
import { type CostLine, labourCents } from '../../../app/domain/money/cost-lines.ts';
import { type Costs, reckonCosts } from '../../../app/domain/money/costs.ts';
import type { FundingPlan } from '../../../app/domain/money/funding-plan.ts';
import { holdingCost } from '../../../app/domain/money/holding-cost.ts';
import { addDays, type Day, daysBetween } from '../../../app/domain/shared/day.ts';
import type { Vehicle } from '../../../app/domain/vehicle/vehicle.ts';
import { arbitraryVehicle } from '../../helpers/arbitrary-vehicle.ts';
import {
  makeCodeRequest,
  makeDecision,
  makeFault,
  makeLabour,
  makeOtherCost,
  makePart,
  makePerson,
  makeShop,
  makeSublet,
  makeVehicle,
} from '../../helpers/vehicle-maker.ts';

const day = '2026-02-02';
const here = { orderedOn: day, receivedOn: day } as const;

function costsOf(vehicle: Vehicle, rates: Partial<Rates> = {}, heldDays = 0): Costs {
  return reckonCosts(vehicle, makeShop({ rates }), { today: addDays(day, heldDays), heldDays });
}

/** The lines but those of the purchase, short. */
function lines(vehicle: Vehicle, rates: Partial<Rates> = {}): string[] {
  return costsOf(vehicle, rates)
    .lines.filter((line) => line.group !== 'purchase')
    .map(({ group, state, cents }) => `${group} ${state} ${cents}`);
}

describe('a part', () => {
  it('is to come when it is only needed, committed when it is ordered, spent when it is here', () => {
    const part = (about: Parameters<typeof makePart>[1]) => lines(makeVehicle(day, { parts: [makePart(day, about)] }));
    expect(part({ priceCents: 100, quantity: 3 })).toEqual(['parts to-come 300']);
    expect(part({ priceCents: 100, quantity: 3, orderedOn: day })).toEqual(['parts committed 300']);
    expect(part({ priceCents: 100, quantity: 3, ...here })).toEqual(['parts spent 300']);
  });

  it('costs nothing once it was sent back, its core charge included', () => {
    const part = makePart(day, { ...here, coreChargeCents: 50, returnedOn: day });
    expect(lines(makeVehicle(day, { parts: [part] }))).toEqual([]);
  });

  it('carries its core charge until the old unit is returned', () => {
    const part = makePart(day, { ...here, priceCents: 100, coreChargeCents: 50, quantity: 2 });
    expect(lines(makeVehicle(day, { parts: [part] }))).toEqual(['parts spent 200', 'cores spent 100']);
    expect(lines(makeVehicle(day, { parts: [{ ...part, coreReturnedOn: day }] }))).toEqual(['parts spent 200']);
  });

  it('without a price is named as missing, unless it was sent back', () => {
    const part = makePart(day, { ...here, priceCents: null });
    expect(costsOf(makeVehicle(day, { parts: [part] })).missing).toEqual(['no price for body module']);
    expect(costsOf(makeVehicle(day, { parts: [{ ...part, returnedOn: day }] })).missing).toEqual([]);
  });
});

describe('a code', () => {
  const code = (about: Parameters<typeof makeCodeRequest>[1]) =>
    lines(makeVehicle(day, { codeRequests: [makeCodeRequest(day, { feeCents: 900, ...about })] }));

  it('is to come, committed once asked for, spent once given', () => {
    expect(code({})).toEqual(['codes to-come 900']);
    expect(code({ askedOn: day })).toEqual(['codes committed 900']);
    expect(code({ askedOn: day, answeredOn: day, outcome: 'given' })).toEqual(['codes spent 900']);
  });

  it('that was refused costs nothing', () => {
    expect(code({ askedOn: day, answeredOn: day, outcome: 'refused' })).toEqual([]);
  });
});

describe('sublet work', () => {
  const sublet = (about: Parameters<typeof makeSublet>[1]) =>
    lines(makeVehicle(day, { sublets: [makeSublet(day, { quotedCents: 700, ...about })] }));

  it('is to come, committed once sent, spent once back, at the quote until there is an invoice', () => {
    expect(sublet({})).toEqual(['sublet to-come 700']);
    expect(sublet({ sentOn: day })).toEqual(['sublet committed 700']);
    expect(sublet({ sentOn: day, backOn: day })).toEqual(['sublet spent 700']);
    expect(sublet({ sentOn: day, backOn: day, invoicedCents: 650 })).toEqual(['sublet spent 650']);
    expect(sublet({ sentOn: day, invoicedCents: 650 })).toEqual(['sublet spent 650']);
  });

  it('without any amount is named as missing', () => {
    const vehicle = makeVehicle(day, { sublets: [makeSublet(day, { quotedCents: null })] });
    expect(costsOf(vehicle).missing).toEqual(['no amount for windscreen']);
  });
});

describe('labour', () => {
  it('is rounded once for each entry, halves away from zero', () => {
    expect(labourCents(60, 95_00)).toBe(95_00);
    expect(labourCents(1, 90_01)).toBe(1_50); // 150.0166… cents
    expect(labourCents(1, 30)).toBe(1); // half a cent
    expect(labourCents(20, 1_00)).toBe(33);
  });

  it('is booked at the person’s own rate where there is one, else at the shop’s', () => {
    const shop = {
      ...makeShop({ rates: { labourCentsPerHour: 60_00 } }),
      people: [makePerson('technician-1'), makePerson('technician-2', { labourCentsPerHour: 80_00 })],
    };
    const labour = [
      makeLabour(day, { minutes: 30 }),
      makeLabour(day, { minutes: 30, person: 'technician-2' }),
      makeLabour(day, { minutes: 30, person: 'somebody-gone' }),
    ];
    const { lines } = reckonCosts(makeVehicle(day, { labour }), shop, { today: day, heldDays: 0 });
    expect(lines.filter((line) => line.group === 'labour').map((line) => line.cents)).toEqual([30_00, 40_00, 30_00]);
  });

  it('is to come for what was estimated and not booked yet, and never less than nothing', () => {
    const fault = makeFault(day, { decision: makeDecision(day, { estimateMinutes: 90 }) });
    const booked = (minutes: number) => makeLabour(day, { minutes, faultId: fault.id });
    expect(lines(makeVehicle(day, { faults: [fault] }))).toEqual(['labour to-come 9000']);
    expect(lines(makeVehicle(day, { faults: [fault], labour: [booked(30)] }))).toEqual([
      'labour spent 3000',
      'labour to-come 6000',
    ]);
    expect(lines(makeVehicle(day, { faults: [fault], labour: [booked(120)] }))).toEqual(['labour spent 12000']);
    const finished = { ...fault, doneOn: day };
    expect(lines(makeVehicle(day, { faults: [finished], labour: [booked(30)] }))).toEqual(['labour spent 3000']);
  });

  it('that nobody estimated is named as missing, but not for a fault that is left', () => {
    const unknown = makeFault(day, { decision: makeDecision(day, { estimateMinutes: null }) });
    const left = makeFault(day, {
      decision: makeDecision(day, { kind: 'leave', reason: 'cosmetic', estimateMinutes: null }),
    });
    expect(costsOf(makeVehicle(day, { faults: [unknown, left] })).missing).toEqual([
      'no hours estimated for wipers dead',
    ]);
  });
});

describe('the budget', () => {
  it('is used by everything spent, committed and to come on reconditioning, and by nothing else', () => {
    const vehicle = makeVehicle(day, {
      purchase: { feesCents: 111 },
      targets: { budgetCents: 1000 },
      parts: [
        makePart(day, { ...here, priceCents: 200 }),
        makePart(day, { priceCents: 300, orderedOn: day }),
        makePart(day, { priceCents: 400 }),
      ],
      otherCosts: [makeOtherCost(day, 250), makeOtherCost(day, -50)],
    });
    const costs = costsOf(vehicle, { overheadCentsPerDay: 10 }, 30);
    expect(costs.budgets.at(-1)?.leftCents).toBe(1000 - 200 - 300 - 400 - 250 + 50);
    expect(costs.reconditioningCents).toBe(400);
    expect(costs.committedCents).toBe(300);
    expect(costs.toComeCents).toBe(400);
    expect(costs.holdingCents).toBe(300);
  });

  it('is not told where none was set', () => {
    expect(costsOf(makeVehicle(day)).budgets.at(-1)?.leftCents).toBeNull();
  });
});

describe('the margin', () => {
  it('is reckoned from the price it was sold at, not from what was asked', () => {
    const sale = { soldOn: day, priceCents: 900_000, buyer: 'a buyer', paidOffOn: null };
    const costs = costsOf(makeVehicle(day, { sale }));
    expect(costs.startingMarginCents).toBe(100_000);
    expect(costs.breakEvenOn).toBeNull();
  });

  it('is not told without a price', () => {
    const costs = costsOf(makeVehicle(day, { targets: { askingCents: null } }), { overheadCentsPerDay: 10 }, 5);
    expect(costs.marginLeftCents).toBeNull();
    expect(costs.marginExpectedCents).toBeNull();
    expect(costs.startingMarginCents).toBeNull();
    expect(costs.breakEvenOn).toBeNull();
  });

  it('is negative when it is lost', () => {
    const costs = costsOf(makeVehicle(day, { targets: { askingCents: 790_000 } }));
    expect(costs.marginLeftCents).toBe(-10_000);
    expect(costs.breakEvenOn).toBe(day);
  });

  it('never ends where holding costs nothing', () => {
    expect(costsOf(makeVehicle(day), {}, 10).breakEvenOn).toBeNull();
  });
});

describe('any record', () => {
  const sum = (kept: readonly CostLine[]) => kept.reduce((total, line) => total + line.cents, 0);

  it('has totals that are the sums of its lines', () => {
    fc.assert(
      fc.property(arbitraryVehicle, ({ vehicle, today }) => {
        const heldDays = daysBetween(vehicle.purchase.boughtOn, today);
        const rates = { fundingRatePpm: 80_000, overheadCentsPerDay: 900 };
        const costs = reckonCosts(vehicle, makeShop({ rates }), { today, heldDays });
        const inState = (state: string) => sum(costs.lines.filter((line) => line.state === state));
        expect(costs.spentCents).toBe(inState('spent'));
        expect(costs.committedCents).toBe(inState('committed'));
        expect(costs.toComeCents).toBe(inState('to-come'));
        expect(costs.spentCents + costs.committedCents + costs.toComeCents).toBe(sum(costs.lines));
        expect(costs.acquisitionCents + costs.reconditioningCents + costs.holdingCents).toBe(costs.spentCents);
        expect(costs.lines.every((line) => Number.isSafeInteger(line.cents) && line.cents !== 0)).toBe(true);
        const price = vehicle.sale?.priceCents ?? vehicle.targets.askingCents;
        expect(costs.marginExpectedCents).toBe(price === null ? null : price - sum(costs.lines));
      }),
    );
  });
});

describe('a vehicle under a funding plan', () => {
  const plan: FundingPlan = {
    id: 'plan-one',
    name: 'Stock plan',
    advancePpm: 900_000,
    ratePpm: 73_000,
    rateChanges: [],
    dayCount: 'actual-365',
    freeDays: 0,
    drawFeeCents: 50_00,
    curtailments: [{ kind: 'percent-of-original', valuePpm: 100_000, dayMark: 30, every: null }],
    floor: null,
    payoffWorkingDays: 5,
  };
  const rates = { fundingRatePpm: 36_500, dayCount: 'actual-365' as const, overheadCentsPerDay: 10_00 };
  const shop = { ...makeShop({ rates }), fundingPlans: [plan] };
  const vehicle = makeVehicle(day, {
    purchase: { priceCents: 1_000_000, fundingPlanId: plan.id },
    targets: { askingCents: 1_200_000 },
  });
  const heldFor = (days: number) => reckonCosts(vehicle, shop, { today: addDays(day, days), heldDays: days });

  it('bears the plan’s interest and fee, own money on what was not lent, and the lot cost', () => {
    // 9,000.00 lent at 7.3 % is 1.80 a day, 1,000.00 own at 3.65 % is 0.10 a day, the lot 10.00 a day; 50.00 at the draw.
    const costs = heldFor(20);
    expect(costs.lines.filter(({ group }) => group === 'interest').map(({ what, cents }) => [what, cents])).toEqual([
      ['Interest under Stock plan', 36_00],
      ['Fee of Stock plan', 50_00],
      ['Interest on own money in the purchase price', 2_00],
    ]);
    expect(costs.holdingCents).toBe(36_00 + 50_00 + 2_00 + 200_00);
    expect(costs.nextDayCents).toBe(11_90);
    expect(costs.fundingBalanceCents).toBe(900_000);
    expect(costs.nextPayment).toMatchObject({ dueOn: addDays(day, 30), cents: 90_000, balanceAfterCents: 810_000 });
  });

  it('bears less interest after a curtailment', () => {
    // 30 days of 1.80, then 10 of 1.62.
    const line = heldFor(40).lines.find(({ what }) => what.startsWith('Interest under'));
    expect(line?.cents).toBe(54_00 + 16_20);
    expect(heldFor(40).nextDayCents).toBe(1_62 + 10 + 10_00);
    expect(heldFor(40).nextPayment).toBeNull();
  });

  it('breaks even on the last day that every day tried leaves something', () => {
    const { breakEvenOn } = heldFor(20);
    if (breakEvenOn === null) throw new Error('It must break even some day.');
    const days = daysBetween(day, breakEvenOn);
    expect(heldFor(days).marginExpectedCents).toBeGreaterThanOrEqual(0);
    expect(heldFor(days + 1).marginExpectedCents).toBeLessThan(0);
    expect(heldFor(days + 30).breakEvenOn).toBe(breakEvenOn);
  });

  it('of a plan that is gone is reckoned with own money, and says so', () => {
    const costs = reckonCosts(vehicle, { ...shop, fundingPlans: [] }, { today: addDays(day, 20), heldDays: 20 });
    expect(costs.holdingCents).toBe(20_00 + 200_00);
    expect(costs.missing).toEqual(['its funding plan is no longer in the settings, own money is assumed']);
  });
});

describe('tax on the margin', () => {
  const saleTax = { kind: 'on-margin', rate: { numerator: 20, denominator: 100 }, rounding: 'nearest' } as const;
  it('lowers what is left and what is expected, and forgets every repair', () => {
    const vehicle = makeVehicle(day, { otherCosts: [makeOtherCost(day, 50_000)], targets: { askingCents: 920_000 } });
    const costs = reckonCosts(vehicle, { ...makeShop(), saleTax }, { today: day, heldDays: 0 });
    // Bought for 8,000.00, asked 9,200.00: one sixth of 1,200.00.
    expect(costs.taxCents).toBe(20_000);
    expect(costs.marginLeftCents).toBe(920_000 - 20_000 - 800_000 - 50_000);
    expect(costs.startingMarginCents).toBe(120_000);
  });
});

describe('value lost with age', () => {
  it('brings the day on which the margin is used up nearer, by the curve', () => {
    const vehicle = makeVehicle(day, { targets: { askingCents: 1_000_000 } });
    const valueLoss = [
      { heldDays: 10, lostPpm: 0 },
      { heldDays: 110, lostPpm: 250_000 },
    ];
    // 2,500.00 in 100 days is 25.00 a day from the tenth day on; 2,000.00 of margin are gone after 80 such days.
    const costs = reckonCosts(vehicle, { ...makeShop(), valueLoss }, { today: day, heldDays: 0 });
    expect(costs.breakEvenOn).toBe(addDays(day, 90));
  });
});

describe('a vehicle that cost more than it can bring', () => {
  it('is to be written down to the price less what is still to be spent, holding left out', () => {
    const vehicle = makeVehicle(day, {
      purchase: { priceCents: 800_000 },
      targets: { askingCents: 830_000 },
      parts: [makePart(day, { priceCents: 20_000 })],
    });
    const shop = makeShop({ rates: { overheadCentsPerDay: 1_000 } });
    const selling = { ...shop.selling, retailCents: 15_000 };
    const costs = reckonCosts(vehicle, { ...shop, selling }, { today: addDays(day, 10), heldDays: 10 });
    expect(costs.writeDownCents).toBe(800_000 - (830_000 - 20_000 - 15_000));
    expect(costsOf(makeVehicle(day)).writeDownCents).toBe(0);
    expect(costsOf(makeVehicle(day, { targets: { askingCents: null } })).writeDownCents).toBeNull();
  });
});

/** Day by day from the purchase: the last on which the margin still covers the holding so far. */
function lastDayCovered(boughtOn: Day, beforeHoldingCents: number, priceCents: number, rates: Rates): Day {
  let covered = boughtOn;
  for (let index = 0; index < 4000; index += 1) {
    const days = rates.countsFirstDay ? index + 1 : index;
    const { interestCents, overheadCents } = holdingCost(priceCents, days, rates);
    if (beforeHoldingCents - interestCents - overheadCents < 0) return covered;
    covered = addDays(boughtOn, index);
  }
  throw new Error('The margin never ran out; the rates of this test are too small.');
}

describe('the day the margin is used up', () => {
  it('is the one found by trying every day, before it and after it alike', () => {
    let passed = 0;
    fc.assert(
      fc.property(
        fc.record({
          margin: fc.integer({ min: 0, max: 300_000 }),
          price: fc.integer({ min: 100_000, max: 2_500_000 }),
          rate: fc.integer({ min: 0, max: 150_000 }),
          overhead: fc.integer({ min: 200, max: 3_000 }),
          dayCount: fc.constantFrom('actual-365' as const, 'actual-360' as const),
          countsFirstDay: fc.boolean(),
          lookedAt: fc.integer({ min: 0, max: 400 }),
        }),
        ({ margin, price, rate, overhead, dayCount, countsFirstDay, lookedAt }) => {
          const rates = {
            labourCentsPerHour: 0,
            fundingRatePpm: rate,
            dayCount,
            overheadCentsPerDay: overhead,
            countsFirstDay,
          };
          const vehicle = makeVehicle(day, {
            purchase: { priceCents: price },
            targets: { askingCents: price + margin },
          });
          const today = addDays(day, lookedAt);
          const heldDays = lookedAt + (countsFirstDay ? 1 : 0);
          const costs = reckonCosts(vehicle, makeShop({ rates }), { today, heldDays });
          const expected = lastDayCovered(day, margin, price, rates);
          if (expected < today) passed += 1;
          expect(costs.breakEvenOn).toBe(expected);
        },
      ),
      { numRuns: 400 },
    );
    // Both sides were tried: days already gone by and days to come.
    expect(passed).toBeGreaterThan(50);
    expect(passed).toBeLessThan(350);
  });
});
