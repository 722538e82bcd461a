// Stock funding against figures worked out by hand from the ISDA 2006 Definitions 4.16 (d), (e), and against the curtailment clause of
// a public used-vehicle retailer's debt note (quarterly report to the SEC, third quarter of 2017).
import { describe, expect, it } from 'vitest';
import { fundingCost } from '../../app/domain/money/funding-cost.ts';
import { payoffDueOn } from '../../app/domain/money/payoff-day.ts';
import { addDays } from '../../app/domain/shared/day.ts';
import { makeDraw, makePlan, tenPercentOfOriginal } from '../domain/money/funding-plan-maker.ts';

describe('20,000 at 8 %, 10 % of the original due at days 60, 90 and 120, sold on day 130', () => {
  const curtailments = [60, 90, 120].map((dayMark) => tenPercentOfOriginal(dayMark));
  const draw = makeDraw();
  const soldOn = addDays(draw.drawnOn, 130);

  it.each([
    ['actual-360', 524_44],
    ['actual-365', 517_26],
  ] as const)('costs by %s %i cents of interest', (dayCount, interestCents) => {
    const cost = fundingCost(makePlan({ dayCount, curtailments }), draw, soldOn);
    expect(cost.interestCents).toBe(interestCents);
    expect(cost.balanceCents).toBe(14_000_00);
    const balanceDays = cost.spans.reduce((sum, span) => sum + span.balanceCents * span.days, 0);
    expect(balanceDays).toBe(2_360_000_00);
    expect(cost.spans.map(({ balanceCents, days }) => [balanceCents, days])).toEqual([
      [20_000_00, 60],
      [18_000_00, 30],
      [16_000_00, 30],
      [14_000_00, 10],
    ]);
  });

  it('would cost 577.78 without them (Actual/360)', () => {
    expect(fundingCost(makePlan(), draw, soldOn).interestCents).toBe(577_78);
  });
});

describe('the clause of the debt note', () => {
  // Held more than 180 days: monthly 10 % of the original until the lesser of half the original and half the wholesale value.
  const plan = makePlan({
    curtailments: [tenPercentOfOriginal(180, { count: 1, unit: 'months' })],
    floor: { ofOriginalPpm: 500_000, ofWholesalePpm: 500_000 },
  });

  it('takes five payments of 1,000 and one of 500 from 10,000 with a wholesale value of 9,000, then none', () => {
    const draw = makeDraw({ principalCents: 10_000_00, wholesaleCents: 9_000_00, drawnOn: '2026-01-05' });
    const cost = fundingCost(plan, draw, '2027-12-31');
    expect(cost.payments.map(({ cents }) => cents)).toEqual([1000_00, 1000_00, 1000_00, 1000_00, 1000_00, 500_00]);
    expect(cost.payments.map(({ dueOn }) => dueOn)).toEqual([
      '2026-07-04',
      '2026-08-04',
      '2026-09-04',
      '2026-10-04',
      '2026-11-04',
      '2026-12-04',
    ]);
    expect(cost.balanceCents).toBe(4_500_00);
    expect(cost.nextDue).toBeNull();
  });

  it('stops at half the original where the wholesale value is higher', () => {
    const draw = makeDraw({ principalCents: 10_000_00, wholesaleCents: 12_000_00 });
    expect(fundingCost(plan, draw, '2027-12-31').balanceCents).toBe(5_000_00);
  });

  it('asks for the wholesale value when nobody has entered it', () => {
    const cost = fundingCost(plan, makeDraw({ principalCents: 10_000_00 }), '2026-02-01');
    expect(cost.missing).toHaveLength(1);
    expect(cost.missing[0]).toContain('wholesale value');
  });
});

describe('the pay-off after a sale', () => {
  const calendar = { workDays: [1, 2, 3, 4, 5], minutesPerDay: 480, holidays: ['2026-05-25'] };

  it('is due five business days after it, as in the debt note, over a weekend and Memorial Day', () => {
    expect(payoffDueOn(makePlan({ payoffWorkingDays: 5 }), '2026-05-21', calendar)).toBe('2026-05-29');
  });

  it('has no day where the plan names none', () => {
    expect(payoffDueOn(makePlan(), '2026-05-21', calendar)).toBeNull();
  });
});

describe('interest of one day (per diem)', () => {
  it.each([
    [10_000_00, 80_000, 2_191781n, 2_222222n],
    [12_500_00, 72_500, 2_482877n, 2_517361n],
    [20_000_00, 95_000, 5_205479n, 5_277778n],
  ])('on %i cents at %i ppm is known to a millionth', (principalCents, ratePpm, over365, over360) => {
    // Ten million dollars' worth of the same debt shows the digits that a single vehicle rounds away.
    const draw = makeDraw({ principalCents: principalCents * 10_000 });
    const until = addDays(draw.drawnOn, 1);
    const of = (dayCount: 'actual-365' | 'actual-360') =>
      fundingCost(makePlan({ dayCount, ratePpm }), draw, until).interestCents;
    expect(BigInt(of('actual-365'))).toBe(over365);
    expect(BigInt(of('actual-360'))).toBe(over360);
  });
});
