// Whether a vehicle in stock is worth what it has cost: the lower of cost and net realisable value. A warning, not a posting.
import { type Cents, checkCents, sumCents } from '../shared/cents.ts';
import type { Costs } from './costs.ts';

/**
 * What counts as the cost of the stock: purchase, fees, transport and reconditioning spent; interest and lot cost do not. ASC 330-10-30
 * takes in what brings an item to its present condition and location; which of a dealer's costs these are: common practice, no source.
 */
export function stockCostCents(costs: Pick<Costs, 'acquisitionCents' | 'reconditioningCents'>): Cents {
  return sumCents([costs.acquisitionCents, costs.reconditioningCents]);
}

export type RealisableInputs = {
  readonly costCents: Cents;
  readonly expectedPriceCents: Cents;
  readonly toCompleteCents: Cents;
  readonly toSellCents: Cents;
};

export type Realisable = {
  readonly netRealisableCents: Cents;
  /** The lower of the two, never negative. */
  readonly carriedCents: Cents;
  /** By how much the cost is above it; 0 when it is not. */
  readonly writeDownCents: Cents;
};

/**
 * Net realisable value = expected price less the cost to complete less the cost to sell; all in cents. Stock is carried at the lower of
 * cost and that value. Source: ASC 330-10-35-1B (after ASU 2015-11).
 */
export function lowerOfCostAndRealisable(inputs: RealisableInputs): Realisable {
  const { costCents, expectedPriceCents, toCompleteCents, toSellCents } = inputs;
  const netRealisableCents = checkCents(expectedPriceCents - toCompleteCents - toSellCents);
  const carriedCents = Math.max(0, Math.min(costCents, netRealisableCents));
  return { netRealisableCents, carriedCents, writeDownCents: Math.max(0, checkCents(costCents - carriedCents)) };
}
