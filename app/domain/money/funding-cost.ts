// What the funding of one vehicle costs under its plan: interest on each day's balance, the fee, the payments and what is due next.
import { type Cents, roundToCents, sumCents } from '../shared/cents.ts';
import { addDays, type Day, laterDay } from '../shared/day.ts';
import { type CurtailmentPayment, curtailmentPayments, type Draw } from './curtailments.ts';
import { yearFraction, yearLength } from './day-count.ts';
import type { FundingPlan } from './funding-plan.ts';

/** Nights with one balance and one rate. The nights are those from `from` up to, and without, the night of `to`. */
export type InterestSpan = {
  readonly from: Day;
  readonly to: Day;
  readonly balanceCents: Cents;
  /** 0 within the free days. */
  readonly ratePpm: number;
  /** Days by the plan's day count. */
  readonly days: number;
};

export type FundingCost = {
  /** Rounded once, over all spans together. */
  readonly interestCents: Cents;
  readonly drawFeeCents: Cents;
  /** Interest and fee: what the funding costs. Payments on the principal are not a cost. */
  readonly costCents: Cents;
  readonly spans: readonly InterestSpan[];
  /** Due through `until`. */
  readonly payments: readonly CurtailmentPayment[];
  /** Principal still owed at the end of `until`. */
  readonly balanceCents: Cents;
  /** The first payment due after `until` while the vehicle is unsold; null when none is ever due. */
  readonly nextDue: CurtailmentPayment | null;
  /** Terms that could not be applied, in a sentence each. */
  readonly missing: readonly string[];
};

function rateOn(plan: FundingPlan, day: Day): number {
  let ratePpm = plan.ratePpm;
  for (const change of plan.rateChanges) if (change.from <= day) ratePpm = change.ratePpm;
  return ratePpm;
}

/**
 * Interest is charged for the night after each day, on the balance at the end of that day. The days of a span are the difference of two
 * counts from the end of the free days, so that the spans of a 30/360 plan add up to the count over the whole time.
 */
function spansOf(
  plan: FundingPlan,
  { principalCents, drawnOn }: Draw,
  payments: readonly CurtailmentPayment[],
  until: Day,
): InterestSpan[] {
  const chargedFrom = addDays(drawnOn, plan.freeDays);
  const edges = new Set<Day>([drawnOn, until]);
  const marks = [chargedFrom, ...payments.map(({ dueOn }) => dueOn), ...plan.rateChanges.map(({ from }) => from)];
  for (const day of marks) if (day > drawnOn && day < until) edges.add(day);
  const days = [...edges].sort();
  const countTo = (day: Day) =>
    day <= chargedFrom ? 0 : yearFraction(plan.dayCount, chargedFrom, day, day === until ? until : null).numerator;
  const spans: InterestSpan[] = [];
  let balanceCents = principalCents;
  let paid = 0;
  days.forEach((from, at) => {
    const to = days[at + 1];
    for (let next = payments[paid]; next && next.dueOn <= from; next = payments[paid]) {
      balanceCents = next.balanceAfterCents;
      paid += 1;
    }
    if (to === undefined) return;
    const ratePpm = from < chargedFrom ? 0 : rateOn(plan, from);
    spans.push({ from, to, balanceCents, ratePpm, days: Math.max(0, countTo(to) - countTo(from)) });
  });
  return spans;
}

/**
 * The cost of funding `draw` from its day up to `until`, the day of the pay-off or today. All amounts in cents; interest is simple,
 * exact and rounded once. A payment due on `until` counts as paid on it and changes no interest. Source of the day counts: ISDA 2006
 * Definitions 4.16; interest on each day's balance: common practice, no source.
 * @throws when `until` is before the draw.
 */
export function fundingCost(plan: FundingPlan, draw: Draw, until: Day): FundingCost {
  if (until < draw.drawnOn) throw new Error(`Nothing was drawn yet: ${until} is before ${draw.drawnOn}.`);
  const payments = curtailmentPayments(plan, draw, until);
  const spans = spansOf(plan, draw, payments, until);
  let weighted = 0n;
  for (const span of spans) weighted += BigInt(span.balanceCents) * BigInt(span.ratePpm) * BigInt(span.days);
  const interestCents = roundToCents(weighted, 1_000_000n * BigInt(yearLength(plan.dayCount)));
  const balanceCents = payments[payments.length - 1]?.balanceAfterCents ?? draw.principalCents;
  return {
    interestCents,
    drawFeeCents: plan.drawFeeCents,
    costCents: sumCents([interestCents, plan.drawFeeCents]),
    spans,
    payments,
    balanceCents,
    nextDue: nextDue(plan, draw, until, balanceCents),
    missing:
      plan.floor !== null && plan.floor.ofWholesalePpm !== null && draw.wholesaleCents === null
        ? ['The plan stops curtailments by the wholesale value: enter what the trade would pay.']
        : [],
  };
}

/** Looked for until the last mark, or one longest repetition further on: later than that no row can have its next payment. */
function nextDue(plan: FundingPlan, draw: Draw, until: Day, balanceCents: Cents): CurtailmentPayment | null {
  if (balanceCents === 0 || plan.curtailments.length === 0) return null;
  const lastMark = Math.max(...plan.curtailments.map(({ dayMark }) => dayMark));
  const longestStep = Math.max(
    ...plan.curtailments.map(({ every }) => (every === null ? 0 : every.count * (every.unit === 'days' ? 1 : 31))),
  );
  const horizon = addDays(laterDay(until, addDays(draw.drawnOn, lastMark)), longestStep);
  return curtailmentPayments(plan, draw, horizon).find(({ dueOn }) => dueOn > until) ?? null;
}
