// Funding terms one by one, and what always holds: a payment on the principal never makes the funding dearer. Published figures are in
// tests/reference.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cashCalendar } from '../../../app/domain/money/cash-calendar.ts';
import { addMonths, curtailmentPayments } from '../../../app/domain/money/curtailments.ts';
import { dayCountSchema, daysBetweenBy, yearLength } from '../../../app/domain/money/day-count.ts';
import { fundingCost } from '../../../app/domain/money/funding-cost.ts';
import {
  advanceCents,
  type Curtailment,
  type FundingPlan,
  fundingPlanSchema,
} from '../../../app/domain/money/funding-plan.ts';
import { roundToCents } from '../../../app/domain/shared/cents.ts';
import { addDays } from '../../../app/domain/shared/day.ts';
import { makeDraw, makePlan, tenPercentOfOriginal } from './funding-plan-maker.ts';

const draw = makeDraw();
const day = (offset: number) => addDays(draw.drawnOn, offset);

describe('the funding of a vehicle', () => {
  it('costs the fee and nothing else on the day of the draw', () => {
    const cost = fundingCost(makePlan({ drawFeeCents: 75_00 }), draw, day(0));
    expect(cost).toMatchObject({ interestCents: 0, drawFeeCents: 75_00, costCents: 75_00, balanceCents: 20_000_00 });
  });

  it('is free of interest for the free days and charged from then on', () => {
    const plan = makePlan({ freeDays: 30 });
    expect(fundingCost(plan, draw, day(30)).interestCents).toBe(0);
    // one night on 20,000 at 8 % over 360
    expect(fundingCost(plan, draw, day(31)).interestCents).toBe(4_44);
  });

  it('follows a change of the rate from its night on', () => {
    const plan = makePlan({ rateChanges: [{ from: day(10), ratePpm: 120_000 }] });
    const cost = fundingCost(plan, draw, day(20));
    expect(cost.spans.map(({ ratePpm, days }) => [ratePpm, days])).toEqual([
      [80_000, 10],
      [120_000, 10],
    ]);
    expect(cost.interestCents).toBe(roundToCents(20_000_00n * (80_000n * 10n + 120_000n * 10n), 360_000_000n));
  });

  it('says what is due next and when', () => {
    const plan = makePlan({ curtailments: [tenPercentOfOriginal(60), tenPercentOfOriginal(90)] });
    expect(fundingCost(plan, draw, day(59)).nextDue).toMatchObject({ dueOn: day(60), cents: 2000_00 });
    expect(fundingCost(plan, draw, day(60)).nextDue).toMatchObject({ dueOn: day(90), balanceAfterCents: 16_000_00 });
    expect(fundingCost(plan, draw, day(90)).nextDue).toBeNull();
  });

  it('sees the next turn of a payment that repeats, however long it has gone on', () => {
    const plan = makePlan({ curtailments: [tenPercentOfOriginal(30, { count: 45, unit: 'days' })] });
    expect(fundingCost(plan, draw, day(30 + 3 * 45)).nextDue?.dueOn).toBe(day(30 + 4 * 45));
  });

  it('takes a part of the balance from what is left, an amount as it is, never more than is owed', () => {
    const curtailments: Curtailment[] = [
      { kind: 'percent-of-balance', dayMark: 10, valuePpm: 500_000, every: null },
      { kind: 'percent-of-balance', dayMark: 20, valuePpm: 500_000, every: null },
      { kind: 'amount', dayMark: 20, valueCents: 9_999_00, every: null },
    ];
    expect(curtailmentPayments(makePlan({ curtailments }), draw, day(40)).map(({ cents }) => cents)).toEqual([
      10_000_00, 5000_00, 5000_00,
    ]);
  });

  it('refuses a day before the draw', () => {
    expect(() => fundingCost(makePlan(), draw, day(-1))).toThrow('Nothing was drawn yet');
  });
});

describe('months', () => {
  it.each([
    ['2026-01-31', 1, '2026-02-28'],
    ['2024-01-31', 1, '2024-02-29'],
    ['2026-01-31', 2, '2026-03-31'],
    ['2026-12-15', 1, '2027-01-15'],
    ['2026-07-04', 12, '2027-07-04'],
  ])('from %s, %i on, lead to %s', (from, months, to) => {
    expect(addMonths(from, months)).toBe(to);
  });
});

describe('a plan', () => {
  it('lends its part of the price', () => {
    expect(advanceCents(makePlan({ advancePpm: 850_000 }), 7_999_99)).toBe(6_799_99);
    expect(advanceCents(makePlan(), 7_999_99)).toBe(7_999_99);
  });

  it('is read when it is whole and refused when its changes of the rate are out of order', () => {
    const plan = makePlan({ curtailments: [tenPercentOfOriginal(60)] });
    expect(fundingPlanSchema.parse(plan)).toEqual(plan);
    const rateChanges = ['2026-03-01', '2026-02-01'].map((from) => ({ from, ratePpm: 1 }));
    expect(fundingPlanSchema.safeParse({ ...plan, rateChanges }).success).toBe(false);
  });
});

describe('the cash calendar', () => {
  it('adds up what falls due on the same day and leaves out what is past', () => {
    const plan = makePlan({ curtailments: [tenPercentOfOriginal(60), tenPercentOfOriginal(90)] });
    const vehicles = [
      { vehicleId: 'first', plan, draw },
      { vehicleId: 'second', plan, draw: makeDraw({ principalCents: 5000_00, drawnOn: day(30) }) },
    ];
    const days = cashCalendar(vehicles, [], { from: day(61), through: day(120) });
    expect(days.map(({ dueOn, cents }) => [dueOn, cents])).toEqual([
      [day(90), 2500_00],
      [day(120), 500_00],
    ]);
    expect(days[0]?.payments.map(({ vehicleId }) => vehicleId)).toEqual(['first', 'second']);
  });
});

const every = fc.option(fc.record({ count: fc.integer({ min: 1, max: 90 }), unit: fc.constantFrom('days', 'months') }));
const dayMark = fc.integer({ min: 1, max: 200 });
const ppm = fc.integer({ min: 0, max: 1_000_000 });
const curtailment: fc.Arbitrary<Curtailment> = fc.oneof(
  fc.record({ kind: fc.constantFrom('percent-of-original', 'percent-of-balance'), dayMark, valuePpm: ppm, every }),
  fc.record({ kind: fc.constant('amount' as const), dayMark, valueCents: fc.nat({ max: 900_000 }), every }),
);
const plans: fc.Arbitrary<FundingPlan> = fc
  .record({
    ratePpm: ppm,
    changes: fc.uniqueArray(fc.integer({ min: -20, max: 300 }), { maxLength: 3 }),
    dayCount: fc.constantFrom(...dayCountSchema.options),
    freeDays: fc.nat({ max: 60 }),
    drawFeeCents: fc.nat({ max: 9_900 }),
    curtailments: fc.array(curtailment, { maxLength: 5 }),
    floor: fc.option(fc.record({ ofOriginalPpm: ppm, ofWholesalePpm: fc.option(ppm) })),
  })
  .map(({ changes, ...about }) =>
    makePlan({
      ...about,
      rateChanges: changes.sort((a, b) => a - b).map((offset) => ({ from: day(offset), ratePpm: 60_000 + offset })),
    }),
  );
const principals = fc.integer({ min: 0, max: 9_000_000 });
const held = fc.nat({ max: 400 });

describe('always', () => {
  it('interest with payments on the principal is never above the interest without, and spans add up to the whole time', () => {
    fc.assert(
      fc.property(plans, principals, held, (plan, principalCents, days) => {
        const own = makeDraw({ principalCents, wholesaleCents: 1_000_000 });
        const until = day(days);
        const cost = fundingCost(plan, own, until);
        const without = fundingCost({ ...plan, curtailments: [] }, own, until);
        expect(cost.interestCents).toBeLessThanOrEqual(without.interestCents);
        expect(cost.interestCents).toBeGreaterThanOrEqual(0);
        const charged = plan.freeDays >= days ? 0 : daysBetweenBy(plan.dayCount, day(plan.freeDays), until, until);
        expect(cost.spans.reduce((sum, span) => sum + span.days, 0)).toBe(charged);
      }),
    );
  });

  it('what was paid and what is owed are the principal, and no balance goes below zero', () => {
    fc.assert(
      fc.property(plans, principals, held, (plan, principalCents, days) => {
        const cost = fundingCost(plan, makeDraw({ principalCents }), day(days));
        const paid = cost.payments.reduce((sum, { cents }) => sum + cents, 0);
        expect(paid + cost.balanceCents).toBe(principalCents);
        for (const { cents, balanceAfterCents } of cost.payments) {
          expect(cents).toBeGreaterThan(0);
          expect(balanceAfterCents).toBeGreaterThanOrEqual(0);
        }
      }),
    );
  });

  it('the same interest comes out when every night is reckoned by itself (Actual day counts)', () => {
    fc.assert(
      fc.property(plans, principals, held, (drawn, principalCents, days) => {
        const plan = { ...drawn, dayCount: days % 2 === 0 ? ('actual-365' as const) : ('actual-360' as const) };
        const own = makeDraw({ principalCents });
        const payments = curtailmentPayments(plan, own, day(days));
        let weighted = 0n;
        for (let night = plan.freeDays; night < days; night += 1) {
          const paid = payments.filter(({ dueOn }) => dueOn <= day(night)).reduce((sum, { cents }) => sum + cents, 0);
          const rate = plan.rateChanges.filter(({ from }) => from <= day(night)).at(-1)?.ratePpm ?? plan.ratePpm;
          weighted += BigInt(principalCents - paid) * BigInt(rate);
        }
        const expected = roundToCents(weighted, 1_000_000n * BigInt(yearLength(plan.dayCount)));
        expect(fundingCost(plan, own, day(days)).interestCents).toBe(expected);
      }),
      { numRuns: 60 },
    );
  });

  it('what is due next is later than today and is the first that comes', () => {
    fc.assert(
      fc.property(plans, principals, held, (plan, principalCents, days) => {
        const own = makeDraw({ principalCents });
        const { nextDue, payments } = fundingCost(plan, own, day(days));
        if (nextDue === null) return;
        expect(nextDue.dueOn > day(days)).toBe(true);
        expect(curtailmentPayments(plan, own, nextDue.dueOn)[payments.length]).toEqual(nextDue);
      }),
    );
  });
});
