// The part of its asking price that a vehicle loses as it stands, by a curve that the shop draws itself. No market data here.
import { z } from 'zod';
import { type Cents, roundToCents } from '../shared/cents.ts';
import type { CostOfDays } from './further-holding.ts';

/** Points of the curve: after so many days held, this part of the price is lost, in parts per million. Straight lines in between. */
export const valueLossCurveSchema = z
  .array(z.strictObject({ heldDays: z.int().min(0).max(3650), lostPpm: z.int().min(0).max(1_000_000) }))
  .max(24)
  .superRefine((points, context) => {
    points.forEach((point, at) => {
      const before = points[at - 1];
      if (before && (before.heldDays >= point.heldDays || before.lostPpm > point.lostPpm))
        context.addIssue({
          code: 'custom',
          path: [at],
          message: 'Put the points in order of their days; the part lost never gets smaller.',
        });
    });
  });
export type ValueLossCurve = z.infer<typeof valueLossCurveSchema>;

/**
 * Cents of `priceCents` lost after `heldDays`, rounded once. The curve begins at nothing lost on day 0 unless its first point says
 * otherwise, and stays level after its last point. Own definition ("common practice, no source").
 */
export function valueLostCents(curve: ValueLossCurve, priceCents: Cents, heldDays: number): Cents {
  let from = { heldDays: 0, lostPpm: 0 };
  for (const to of curve) {
    if (heldDays < to.heldDays) {
      const span = BigInt(to.heldDays - from.heldDays);
      const part =
        BigInt(from.lostPpm) * span + BigInt(to.lostPpm - from.lostPpm) * BigInt(Math.max(0, heldDays - from.heldDays));
      return roundToCents(BigInt(priceCents) * part, 1_000_000n * span);
    }
    from = to;
  }
  return roundToCents(BigInt(priceCents) * BigInt(from.lostPpm), 1_000_000n);
}

/** What is lost in further days from today on, for a vehicle already held `heldDays`. */
export function furtherValueLoss(curve: ValueLossCurve, priceCents: Cents, heldDays: number): CostOfDays {
  const untilNow = valueLostCents(curve, priceCents, heldDays);
  return (furtherDays) => valueLostCents(curve, priceCents, heldDays + furtherDays) - untilNow;
}
