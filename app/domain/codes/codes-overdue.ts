// Which kept codes have to be destroyed, because their vehicle was sold or taken out of the fleet long enough ago, or their request was
// removed. Pure; knows no code.
import { addDays, type Day } from '../shared/day.ts';

/** Where a code belongs, as far as is known without opening it. */
export type PlaceOfCode =
  | { readonly in: 'fleet'; readonly soldOn: Day | null; readonly hasRequest: boolean }
  | { readonly in: 'withdrawn'; readonly withdrawnOn: Day }
  /** Neither in the fleet nor known to be taken out: its record may be in quarantine. */
  | { readonly in: 'nowhere' };

export type WhyDestroyed = 'sold' | 'withdrawn' | 'no-request';

/** The day from which a code of a vehicle sold, or taken out, on `endedOn` is not kept any more; 0 days: from that day. */
export function codesDestroyedOn(endedOn: Day, daysUntilDestroyed: number): Day {
  return addDays(endedOn, daysUntilDestroyed);
}

/**
 * Why a code is not kept any longer on `today`; null while it is. Own rule: the shop's days count from the sale, or from the day on which
 * the vehicle was taken out of the fleet; a code whose request is gone from a vehicle of the fleet opens nothing that anybody asked for.
 */
export function whyDestroyed(place: PlaceOfCode, daysUntilDestroyed: number, today: Day): WhyDestroyed | null {
  switch (place.in) {
    case 'nowhere':
      return null;
    case 'withdrawn':
      return codesDestroyedOn(place.withdrawnOn, daysUntilDestroyed) <= today ? 'withdrawn' : null;
    case 'fleet':
      if (!place.hasRequest) return 'no-request';
      return place.soldOn !== null && codesDestroyedOn(place.soldOn, daysUntilDestroyed) <= today ? 'sold' : null;
  }
}
