// Since when a vehicle has had an asking price: kept with the price, so that days before it do not count as ready. No price is judged here.
import type { Day } from '../shared/day.ts';
import type { Targets } from './purchase.ts';

/**
 * The targets with the day of their price. A day that a person names stands; a price where there was none is dated `today`; another
 * price keeps the day of the first; no price has no day. Own rule ("common practice, no source").
 */
export function withDatedPrice(before: Pick<Targets, 'askingCents'>, after: Targets, today: Day): Targets {
  if (after.askingCents === null) return after.pricedOn === null ? after : { ...after, pricedOn: null };
  if (after.pricedOn !== null || before.askingCents !== null) return after;
  return { ...after, pricedOn: today };
}
