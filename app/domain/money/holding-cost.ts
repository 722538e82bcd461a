// What holding a vehicle costs: simple interest on its purchase price and an amount a day. Real funding terms are not here.
import type { Rates } from '../fleet/shop.ts';
import { type Cents, checkCents, roundToCents } from '../shared/cents.ts';
import { yearLength } from './day-count.ts';

const partsPerMillion = 1_000_000n;

/**
 * Simple interest in cents on `principalCents` for whole `days` at `ratePpm` parts per million a year, rounded once to the nearest cent.
 * Source of the day counts: ISDA 2006 Definitions 4.16 (d), (e).
 */
export function simpleInterestCents(
  principalCents: Cents,
  days: number,
  { fundingRatePpm, dayCount }: Pick<Rates, 'fundingRatePpm' | 'dayCount'>,
): Cents {
  const numerator = BigInt(principalCents) * BigInt(fundingRatePpm) * BigInt(days);
  return roundToCents(numerator, partsPerMillion * BigInt(yearLength(dayCount)));
}

export type HoldingCost = { readonly interestCents: Cents; readonly overheadCents: Cents };

export function holdingCost(purchasePriceCents: Cents, heldDays: number, rates: Rates): HoldingCost {
  return {
    interestCents: simpleInterestCents(purchasePriceCents, heldDays, rates),
    overheadCents: checkCents(rates.overheadCentsPerDay * heldDays),
  };
}
