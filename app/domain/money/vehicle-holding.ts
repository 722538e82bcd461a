// What holding one vehicle costs under its own terms: its funding plan, own money in what no plan lends, and lot cost by the day.
import type { Rates } from '../fleet/shop.ts';
import { type Cents, checkCents } from '../shared/cents.ts';
import { addDays, type Day, laterDay } from '../shared/day.ts';
import type { Vehicle } from '../vehicle/vehicle.ts';
import type { Draw } from './curtailments.ts';
import { type FundingCost, fundingCost } from './funding-cost.ts';
import { advanceCents, type FundingPlan } from './funding-plan.ts';
import { type CostOfDays, furtherFunding, furtherHolding } from './further-holding.ts';
import { holdingCost } from './holding-cost.ts';

export type HoldingTerms = { readonly rates: Rates; readonly fundingPlans: readonly FundingPlan[] };

export type Funding = { readonly plan: FundingPlan; readonly draw: Draw };

/** The plan that the vehicle was bought under with its draw on the day of purchase; null for own money, or when the plan is gone. */
export function fundingOf(
  { purchase, targets }: Pick<Vehicle, 'purchase' | 'targets'>,
  plans: readonly FundingPlan[],
): Funding | null {
  const plan = purchase.fundingPlanId === null ? undefined : plans.find(({ id }) => id === purchase.fundingPlanId);
  if (!plan) return null;
  const draw: Draw = {
    principalCents: advanceCents(plan, purchase.priceCents),
    drawnOn: purchase.boughtOn,
    wholesaleCents: targets.tradeValueCents,
  };
  return { plan, draw };
}

/** The part of the purchase price that the shop put in itself on the day of purchase. */
function ownCents({ purchase }: Pick<Vehicle, 'purchase'>, funding: Funding | null): Cents {
  return funding === null ? purchase.priceCents : Math.max(0, purchase.priceCents - funding.draw.principalCents);
}

export type VehicleHolding = {
  readonly funding: Funding | null;
  /** Null for own money. */
  readonly fundingCost: FundingCost | null;
  readonly ownInterestCents: Cents;
  readonly overheadCents: Cents;
  readonly totalCents: Cents;
};

/**
 * Cost of holding up to `until` after `heldDays`, in cents. Interest on own money runs on what the plan did not lend at the draw; what is
 * paid back to the lender on the way is not charged again as own money (common practice differs, no source). A sold vehicle's lender
 * charges interest up to the day of the pay-off where the record names it, else up to the sale.
 */
export function vehicleHolding(
  vehicle: Pick<Vehicle, 'purchase' | 'targets'>,
  { rates, fundingPlans }: HoldingTerms,
  { until, heldDays }: { readonly until: Day; readonly heldDays: number },
): VehicleHolding {
  const funding = fundingOf(vehicle, fundingPlans);
  const own = holdingCost(ownCents(vehicle, funding), heldDays, rates);
  const cost = funding && fundingCost(funding.plan, funding.draw, laterDay(until, funding.draw.drawnOn));
  return {
    funding,
    fundingCost: cost,
    ownInterestCents: own.interestCents,
    overheadCents: own.overheadCents,
    totalCents: checkCents(own.interestCents + own.overheadCents + (cost?.costCents ?? 0)),
  };
}

/** Cents that so many further days from today will cost; 0 for none. */
export function furtherVehicleHolding(
  vehicle: Pick<Vehicle, 'purchase' | 'targets'>,
  { rates, fundingPlans }: HoldingTerms,
  { today, heldDays }: { readonly today: Day; readonly heldDays: number },
): CostOfDays {
  const funding = fundingOf(vehicle, fundingPlans);
  if (funding === null) return furtherHolding(vehicle.purchase.priceCents, heldDays, rates);
  const ofOwn = furtherHolding(ownCents(vehicle, funding), heldDays, { ...rates, overheadCentsPerDay: 0 });
  const { overheadCentsPerDay } = rates;
  const from = laterDay(today, funding.draw.drawnOn);
  const ofPlan = furtherFunding(funding.plan, funding.draw, { today: from, overheadCentsPerDay });
  return (days) => ofOwn(days) + ofPlan(days);
}

const longestDays = 36_525;

/** The most days for which `marginAfter` is not negative; it never rises with days. Null when it is so for a hundred years. */
export function lastDayNotNegative(marginAfter: (days: number) => Cents): number | null {
  let high = 1;
  while (marginAfter(high) >= 0) {
    if (high >= longestDays) return null;
    high = Math.min(longestDays, high * 2);
  }
  let low = 0;
  while (high - low > 1) {
    const middle = Math.floor((low + high) / 2);
    if (marginAfter(middle) >= 0) low = middle;
    else high = middle;
  }
  return low;
}

/** Of the days held so far, how many the amount would have paid for; for a margin that is used up already. */
export function heldDaysPaidFor(
  amountCents: Cents,
  vehicle: Pick<Vehicle, 'purchase' | 'targets'>,
  terms: HoldingTerms,
  { today, heldDays }: { readonly today: Day; readonly heldDays: number },
): number {
  const costAfter = (days: number) =>
    vehicleHolding(vehicle, terms, { until: addDays(today, days - heldDays), heldDays: days }).totalCents;
  let low = 0;
  let high = heldDays;
  while (high - low > 1) {
    const middle = Math.floor((low + high) / 2);
    if (costAfter(middle) <= amountCents) low = middle;
    else high = middle;
  }
  return low;
}
