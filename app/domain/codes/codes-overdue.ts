// Which kept codes have to be destroyed, because their vehicle was sold long enough ago. Pure; knows no code.
import { addDays, type Day } from '../shared/day.ts';

type Kept = { readonly vehicleId: string };
type Sold = { readonly sale: { readonly soldOn: Day } | null };

/** The day from which a code of a vehicle sold on `soldOn` is not kept any more; 0 days: from the day of the sale. */
export function codesDestroyedOn(soldOn: Day, daysUntilDestroyed: number): Day {
  return addDays(soldOn, daysUntilDestroyed);
}

/** Codes whose time is over on `today`. Those of vehicles that are not in the fleet are left: their record may be in quarantine. */
export function codesOverdue<Code extends Kept>(
  held: readonly Code[],
  vehicleOf: (id: string) => Sold | null,
  daysUntilDestroyed: number,
  today: Day,
): readonly Code[] {
  return held.filter(({ vehicleId }) => {
    const sale = vehicleOf(vehicleId)?.sale ?? null;
    return sale !== null && codesDestroyedOn(sale.soldOn, daysUntilDestroyed) <= today;
  });
}
