// The dated payments on the principal that a funding plan asks for while a vehicle is unsold. Interest is in funding-cost.ts.
import { type Cents, roundToCents } from '../shared/cents.ts';
import { addDays, type Day, dayFromNumber, dayNumber } from '../shared/day.ts';
import { type Curtailment, type FundingPlan, floorCents } from './funding-plan.ts';

/** The funded debt of one vehicle. */
export type Draw = {
  readonly principalCents: Cents;
  readonly drawnOn: Day;
  /** What the trade would pay, for a floor that is set by it; null when nobody has said. */
  readonly wholesaleCents: Cents | null;
};

export type CurtailmentPayment = {
  readonly dueOn: Day;
  readonly cents: Cents;
  readonly balanceAfterCents: Cents;
  readonly what: string;
};

/** The same day of a later month, or its last day where that month is shorter (common practice, no source). */
export function addMonths(day: Day, months: number): Day {
  const count = Number(day.slice(0, 4)) * 12 + Number(day.slice(5, 7)) - 1 + months;
  const first = `${Math.floor(count / 12)}-${String((count % 12) + 1).padStart(2, '0')}-01`;
  const next = count + 1;
  const afterwards = `${Math.floor(next / 12)}-${String((next % 12) + 1).padStart(2, '0')}-01`;
  const lastNumber = dayNumber(afterwards) - 1;
  return dayFromNumber(Math.min(lastNumber, dayNumber(first) + Number(day.slice(8)) - 1));
}

type DueRow = { readonly dueOn: Day; readonly row: number; readonly curtailment: Curtailment };

function dueRows(curtailments: readonly Curtailment[], drawnOn: Day, through: Day): DueRow[] {
  const due: DueRow[] = [];
  curtailments.forEach((curtailment, row) => {
    const first = addDays(drawnOn, curtailment.dayMark);
    const { every } = curtailment;
    for (let turn = 0, dueOn = first; dueOn <= through; ) {
      due.push({ dueOn, row, curtailment });
      if (every === null) break;
      turn += 1;
      dueOn = every.unit === 'days' ? addDays(first, turn * every.count) : addMonths(first, turn * every.count);
    }
  });
  return due.sort((a, b) => (a.dueOn < b.dueOn ? -1 : a.dueOn > b.dueOn ? 1 : a.row - b.row));
}

function percent(ppm: number): string {
  return `${ppm / 10_000} %`;
}

function askedFor(curtailment: Curtailment, originalCents: Cents, balanceCents: Cents): { cents: Cents; what: string } {
  switch (curtailment.kind) {
    case 'amount':
      return { cents: curtailment.valueCents, what: 'Fixed payment on the principal' };
    case 'percent-of-original':
      return {
        cents: roundToCents(BigInt(originalCents) * BigInt(curtailment.valuePpm), 1_000_000n),
        what: `${percent(curtailment.valuePpm)} of the original principal`,
      };
    case 'percent-of-balance':
      return {
        cents: roundToCents(BigInt(balanceCents) * BigInt(curtailment.valuePpm), 1_000_000n),
        what: `${percent(curtailment.valuePpm)} of the balance`,
      };
  }
}

/**
 * Every payment due from the draw through the day `through`, earliest first, as if the vehicle stays unsold; each in whole cents, rounded
 * once, never bringing the balance below the floor. A row that has nothing left to take gives no payment. Source of the idea: OCC
 * Comptroller's Handbook, "Floor Plan Lending" (2017); the rows are the lender's own.
 */
export function curtailmentPayments(
  plan: Pick<FundingPlan, 'curtailments' | 'floor'>,
  { principalCents, drawnOn, wholesaleCents }: Draw,
  through: Day,
): readonly CurtailmentPayment[] {
  const least = floorCents(plan.floor, principalCents, wholesaleCents);
  const payments: CurtailmentPayment[] = [];
  let balanceCents = principalCents;
  for (const { dueOn, curtailment } of dueRows(plan.curtailments, drawnOn, through)) {
    const { cents: asked, what } = askedFor(curtailment, principalCents, balanceCents);
    const cents = Math.max(0, Math.min(asked, balanceCents - least));
    if (cents === 0) continue;
    balanceCents -= cents;
    payments.push({ dueOn, cents, balanceAfterCents: balanceCents, what });
  }
  return payments;
}
