// How old the stock is, in bands of days that the shop sets itself. Counts and money tied up; judges nothing.
import { z } from 'zod';
import { type Cents, sumCents } from '../shared/cents.ts';
import type { Identifier } from '../shared/identifier.ts';

/** The last day held that belongs to each band, earliest first; one more band, without an end, follows them. */
export const ageingBandsSchema = z
  .array(z.int().min(0).max(3650))
  .min(1)
  .max(12)
  .refine(
    (ends) => ends.every((end, at) => at === 0 || end > (ends[at - 1] ?? end)),
    'Put the bands in order, each once.',
  );
export type AgeingBands = z.infer<typeof ageingBandsSchema>;

export type AgedVehicle = { readonly id: Identifier; readonly heldDays: number; readonly tiedUpCents: Cents };

export type AgeingBand = {
  readonly fromDays: number;
  /** Null for the last. */
  readonly toDays: number | null;
  readonly vehicles: readonly AgedVehicle[];
  readonly tiedUpCents: Cents;
};

/** Every vehicle in exactly one band, the longest held first in it; empty bands stay. The bands are the shop's: no source sets them. */
export function ageingOf(vehicles: readonly AgedVehicle[], bands: AgeingBands): readonly AgeingBand[] {
  const starts = [0, ...bands.map((end) => end + 1)];
  return starts.map((fromDays, at): AgeingBand => {
    const toDays = bands[at] ?? null;
    const within = vehicles
      .filter(({ heldDays }) => heldDays >= fromDays && (toDays === null || heldDays <= toDays))
      .sort((a, b) => b.heldDays - a.heldDays);
    return { fromDays, toDays, vehicles: within, tiedUpCents: sumCents(within.map(({ tiedUpCents }) => tiedUpCents)) };
  });
}
