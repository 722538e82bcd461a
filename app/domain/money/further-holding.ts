// What holding a vehicle for so many more days will cost, counted from today: by the shop's plain rates or by a funding plan.
import type { Rates } from '../fleet/shop.ts';
import type { Cents } from '../shared/cents.ts';
import { addDays, type Day } from '../shared/day.ts';
import type { Draw } from './curtailments.ts';
import { fundingCost } from './funding-cost.ts';
import type { FundingPlan } from './funding-plan.ts';
import { holdingCost } from './holding-cost.ts';

/** Cents for this many further days from today: 0 for no day, never less for more days. */
export type CostOfDays = (furtherDays: number) => Cents;

/** By the shop's rates: simple interest on the purchase price and an amount a day, as in holding-cost.ts. */
export function furtherHolding(purchasePriceCents: Cents, heldDays: number, rates: Rates): CostOfDays {
  const costAt = (days: number) => {
    const { interestCents, overheadCents } = holdingCost(purchasePriceCents, days, rates);
    return interestCents + overheadCents;
  };
  const untilNow = costAt(heldDays);
  return (furtherDays) => costAt(heldDays + furtherDays) - untilNow;
}

/** By a funding plan, plus an amount a day; payments on the principal fall due as the plan says and lower the interest after them. */
export function furtherFunding(
  plan: FundingPlan,
  draw: Draw,
  { today, overheadCentsPerDay }: { readonly today: Day; readonly overheadCentsPerDay: Cents },
): CostOfDays {
  // The end of the debt moves with the days, so 30E/360 (ISDA) may count a final February shorter: a further day never costs less than none.
  const untilNow = fundingCost(plan, draw, today).interestCents;
  return (furtherDays) => {
    const interest = fundingCost(plan, draw, addDays(today, furtherDays)).interestCents;
    return Math.max(0, interest - untilNow) + overheadCentsPerDay * furtherDays;
  };
}
