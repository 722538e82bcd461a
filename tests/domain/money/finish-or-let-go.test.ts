// Finishing against letting go: a case worked out by hand, how far the answer stands from turning, and what is asked for when missing.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  type FinishOrLetGo,
  type FinishOrLetGoInputs,
  finishOrLetGo,
} from '../../../app/domain/money/finish-or-let-go.ts';
import { furtherFunding, furtherHolding } from '../../../app/domain/money/further-holding.ts';
import { valueLossCurveSchema, valueLostCents } from '../../../app/domain/money/value-loss.ts';
import { addDays } from '../../../app/domain/shared/day.ts';
import { noHoldingCost } from '../../helpers/vehicle-maker.ts';
import { makeDraw, makePlan, tenPercentOfOriginal } from './funding-plan-maker.ts';

const today = '2026-03-02';

type About = Partial<Omit<FinishOrLetGoInputs, 'finish' | 'letGo'>> & {
  readonly finish?: Partial<FinishOrLetGoInputs['finish']>;
  readonly letGo?: Partial<FinishOrLetGoInputs['letGo']>;
};

/** Spent 9,000; asks 10,995 and needs 700 more and 20 days at 15 a day; the trade pays 8,200 in two days. */
function makeInputs({ finish, letGo, ...about }: About = {}): FinishOrLetGoInputs {
  return {
    today,
    spentCents: 9000_00,
    purchaseCents: 8000_00,
    tax: { kind: 'none' },
    holding: (days) => days * 15_00,
    valueLost: null,
    ...about,
    finish: {
      askingCents: 10_995_00,
      readyOn: addDays(today, 10),
      daysToSell: 10,
      committedCents: 300_00,
      toComeCents: 400_00,
      withoutAmount: [],
      sellingCents: 150_00,
      ...finish,
    },
    letGo: { tradeCents: 8200_00, daysToGo: 2, committedCents: 100_00, sellingCents: 50_00, ...letGo },
  };
}

function answer(inputs: FinishOrLetGoInputs): FinishOrLetGo {
  const result = finishOrLetGo(inputs);
  if (!result.ok) throw new Error(result.error.map(({ sentence }) => sentence).join(' '));
  return result.value;
}

describe('a vehicle worked out by hand', () => {
  // finish: 10,995 − 9,000 − 300 − 400 − 20 × 15 − 150 = 845; let go: 8,200 − 9,000 − 100 − 2 × 15 − 50 = −980
  const found = answer(makeInputs());

  it('is worth finishing by 1,825, on the days that each way takes', () => {
    expect(found.finish).toMatchObject({ on: '2026-03-22', resultCents: 845_00 });
    expect(found.letGo).toMatchObject({ on: '2026-03-04', resultCents: -980_00 });
    expect(found).toMatchObject({ advantageCents: 1825_00, verdict: 'finish', spendRoomCents: 1825_00 });
  });

  it('may be 121 days late: 1,825 pays for 121 days at 15', () => {
    expect(found.daysRoom).toBe(121);
    expect(found.readyByOn).toBe(addDays(today, 131));
  });

  it('shows what it is made of: the lines add up to the result', () => {
    for (const way of [found.finish, found.letGo])
      expect(way.lines.reduce((sum, { cents }) => sum + cents, 0)).toBe(way.resultCents);
    expect(found.finish.lines[0]).toEqual({ what: 'Asking price', cents: 10_995_00 });
  });

  it('moves by 549.75 with 5 % of the price and by 105 with a week', () => {
    const of = (askingPercent: number, readyDays: number) =>
      found.whatIfs.find((one) => one.askingPercent === askingPercent && one.readyDays === readyDays)?.advantageCents;
    expect(found.whatIfs).toHaveLength(9);
    expect(of(0, 0)).toBe(1825_00);
    expect(of(-5, 0)).toBe(1825_00 - 549_75);
    expect(of(5, 7)).toBe(1825_00 + 549_75 - 105_00);
    expect(of(0, -7)).toBe(1825_00 + 105_00);
  });

  it('pays tax on the margin over the purchase price alone, and none on the loss', () => {
    const tax = { kind: 'on-margin', rate: { numerator: 20, denominator: 100 }, rounding: 'nearest' } as const;
    const taxed = answer(makeInputs({ tax }));
    // 2,995 / 6 = 499.17; the trade pays 200 above the purchase: 33.33
    expect(taxed.finish.resultCents).toBe(845_00 - 499_17);
    expect(taxed.letGo.resultCents).toBe(-980_00 - 33_33);
  });

  it('loses value until the day of the sale where the shop keeps a curve of it', () => {
    const losing = answer(makeInputs({ valueLost: (days) => days * 10_00 }));
    expect(losing.finish.resultCents).toBe(845_00 - 200_00);
    expect(losing.daysRoom).toBe(65);
  });
});

describe('the answer', () => {
  it('turns when more than the room is spent, and not before', () => {
    const { spendRoomCents } = answer(makeInputs());
    const spending = (more: number) => answer(makeInputs({ finish: { toComeCents: 400_00 + more } })).verdict;
    expect([spending(spendRoomCents - 1), spending(spendRoomCents), spending(spendRoomCents + 1)]).toEqual([
      'finish',
      'even',
      'let-go',
    ]);
  });

  it('is to let go when the trade pays more than finishing brings, with what would have to be saved', () => {
    const found = answer(makeInputs({ letGo: { tradeCents: 10_500_00 } }));
    expect(found).toMatchObject({ verdict: 'let-go', spendRoomCents: -475_00, daysRoom: 0, readyByOn: null });
  });

  it('never turns by waiting alone where waiting costs nothing', () => {
    expect(answer(makeInputs({ holding: () => 0 }))).toMatchObject({ daysRoom: null, readyByOn: null });
  });

  it('takes a ready day that has passed for today', () => {
    const late = answer(makeInputs({ finish: { readyOn: addDays(today, -5) } }));
    expect(late.finish.on).toBe(addDays(today, 10));
    expect(late.whatIfs.find((one) => one.readyDays === -7)?.readyOn).toBe(today);
  });

  it('is not given while anything is missing; each missing thing is named with what to do', () => {
    const result = finishOrLetGo(
      makeInputs({
        finish: {
          askingCents: null,
          readyOn: null,
          daysToSell: null,
          sellingCents: null,
          withoutAmount: ['body module: no price'],
        },
        letGo: { tradeCents: null, daysToGo: null, sellingCents: null },
      }),
    );
    expect(result.ok).toBe(false);
    if (result.ok) return;
    expect(result.error.map(({ what }) => what)).toEqual([
      'asking price',
      'ready day',
      'days to sell',
      'cost of selling',
      'body module: no price',
      'trade value',
      'days to the trade',
      'cost of the trade sale',
    ]);
    for (const { sentence } of result.error) expect(sentence).toMatch(/^[A-Z].+\.$/);
  });

  it('says the last day of ready right, whatever the figures', () => {
    const cents = fc.nat({ max: 2_000_000 });
    fc.assert(
      fc.property(
        cents,
        cents,
        cents,
        fc.integer({ min: 1, max: 5000 }),
        fc.nat({ max: 90 }),
        (asking, trade, spent, aDay, ready) => {
          const inputs = makeInputs({
            spentCents: spent,
            holding: (days) => days * aDay,
            finish: { askingCents: asking, readyOn: addDays(today, ready) },
            letGo: { tradeCents: trade },
          });
          const found = answer(inputs);
          if (found.readyByOn === null) {
            expect(found.advantageCents < 0 || found.daysRoom === null).toBe(true);
            return;
          }
          const readyAt = (readyOn: string) =>
            answer({ ...inputs, finish: { ...inputs.finish, readyOn } }).advantageCents;
          expect(readyAt(found.readyByOn)).toBeGreaterThanOrEqual(0);
          expect(readyAt(addDays(found.readyByOn, 1))).toBeLessThan(0);
        },
      ),
    );
  });
});

describe('the cost of further days', () => {
  it('is what the shop’s rates add from today on', () => {
    const rates = { ...noHoldingCost, fundingRatePpm: 80_000, overheadCentsPerDay: 12_00 };
    const further = furtherHolding(8000_00, 42, rates);
    expect(further(0)).toBe(0);
    // interest for 72 days is 126.25, for 42 it was 73.64
    expect(further(30)).toBe(126_25 - 73_64 + 30 * 12_00);
  });

  it('falls with the balance where a plan takes payments on the principal', () => {
    const draw = makeDraw();
    const plan = makePlan({ curtailments: [tenPercentOfOriginal(60)] });
    const further = furtherFunding(plan, draw, { today: addDays(draw.drawnOn, 60), overheadCentsPerDay: 5_00 });
    // 18,000 × 8 % × 30/360 = 120.00
    expect(further(30)).toBe(120_00 + 150_00);
  });
});

describe('the curve of lost value', () => {
  const curve = [
    { heldDays: 30, lostPpm: 0 },
    { heldDays: 60, lostPpm: 30_000 },
    { heldDays: 90, lostPpm: 90_000 },
  ];

  it.each([
    [0, 0],
    [30, 0],
    [45, 150_00],
    [60, 300_00],
    [75, 600_00],
    [90, 900_00],
    [400, 900_00],
  ])('after %i days has taken %i of 10,000', (heldDays, cents) => {
    expect(valueLostCents(curve, 10_000_00, heldDays)).toBe(cents);
  });

  it('is refused when it turns back', () => {
    expect(valueLossCurveSchema.safeParse(curve).success).toBe(true);
    expect(valueLossCurveSchema.safeParse([...curve, { heldDays: 100, lostPpm: 1 }]).success).toBe(false);
    expect(valueLossCurveSchema.safeParse([...curve, { heldDays: 90, lostPpm: 90_000 }]).success).toBe(false);
  });
});
