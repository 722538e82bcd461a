// What a sold vehicle earned, held against what was planned when its targets were set: like with like, before holding and tax.
import type { Costs } from '../money/costs.ts';
import { type Cents, sumCents } from '../shared/cents.ts';
import type { Vehicle } from '../vehicle/vehicle.ts';

export type SoldMargin = {
  /** Price less purchase, fees, transport and reconditioning: before holding and tax, as the plan is. */
  readonly earnedCents: Cents;
  readonly holdingCents: Cents;
  readonly taxCents: Cents;
  /** What is left after both, and after anything still committed or to come. */
  readonly madeCents: Cents;
  /** Asking price less purchase, fees, transport and the reconditioning budget; null where price or budget was not set. */
  readonly plannedCents: Cents | null;
};

/**
 * Cents; null for a vehicle that is not sold. The targets hold neither days nor tax, so neither side of the comparison has them; both
 * are told beside it. Own definition ("common practice, no source").
 */
export function soldMargin({ sale, targets }: Pick<Vehicle, 'sale' | 'targets'>, costs: Costs): SoldMargin | null {
  if (sale === null) return null;
  const { askingCents } = targets;
  const budgetCents = costs.budgets.find(({ group }) => group === null)?.budgetCents ?? null;
  const laterCents = sumCents([costs.committedCents, costs.toComeCents]);
  const earnedCents = sale.priceCents - costs.acquisitionCents - costs.reconditioningCents - laterCents;
  return {
    earnedCents,
    holdingCents: costs.holdingCents,
    taxCents: costs.taxCents ?? 0,
    madeCents: costs.marginExpectedCents ?? 0,
    plannedCents:
      askingCents === null || budgetCents === null ? null : askingCents - costs.acquisitionCents - budgetCents,
  };
}
