// The terms under which a lender funds a vehicle in stock. Terms only: what they come to for one vehicle is in funding-cost.ts.
import { z } from 'zod';
import { type Cents, positiveCentsSchema, roundToCents } from '../shared/cents.ts';
import { daySchema } from '../shared/day.ts';
import { identifierSchema } from '../shared/identifier.ts';
import { filledLineSchema } from '../shared/text.ts';
import { dayCountSchema } from './day-count.ts';

/** Parts per million of a whole: 8 % is 80,000. */
const partSchema = z.int().min(0).max(1_000_000);

const curtailmentBase = {
  /** Days after the draw, the day of the draw being day 0. The payment is due on that day and lowers the balance at its end. */
  dayMark: z.int().min(1).max(3650),
  /** When the same payment is due again and again after the mark; null: once. */
  every: z.strictObject({ count: z.int().min(1).max(365), unit: z.enum(['days', 'months']) }).nullable(),
};

/** A payment on the principal that is due while the vehicle is unsold. */
export const curtailmentSchema = z.discriminatedUnion('kind', [
  z.strictObject({ ...curtailmentBase, kind: z.literal('percent-of-original'), valuePpm: partSchema }),
  z.strictObject({ ...curtailmentBase, kind: z.literal('percent-of-balance'), valuePpm: partSchema }),
  z.strictObject({ ...curtailmentBase, kind: z.literal('amount'), valueCents: positiveCentsSchema }),
]);
export type Curtailment = z.infer<typeof curtailmentSchema>;

/**
 * Curtailments stop at this balance: the least of the parts given. A part that is null sets no floor. The shape is that of a public
 * used-vehicle retailer's debt note (quarterly report to the SEC, third quarter of 2017): the lesser of 50 % of the original principal
 * and 50 % of the wholesale value.
 */
export const curtailmentFloorSchema = z
  .strictObject({ ofOriginalPpm: partSchema.nullable(), ofWholesalePpm: partSchema.nullable() })
  .refine((floor) => floor.ofOriginalPpm !== null || floor.ofWholesalePpm !== null, 'Say what the floor is a part of.');
export type CurtailmentFloor = z.infer<typeof curtailmentFloorSchema>;

export const fundingPlanSchema = z
  .strictObject({
    id: identifierSchema,
    name: filledLineSchema(80),
    /** Part of the purchase price that is lent; some lenders lend the fees on top, hence more than a whole. */
    advancePpm: z.int().min(0).max(1_500_000),
    /** Simple yearly interest. */
    ratePpm: partSchema,
    /** A new rate from the night of this day on, earliest first. */
    rateChanges: z.array(z.strictObject({ from: daySchema, ratePpm: partSchema })).max(200),
    dayCount: dayCountSchema,
    /** Days from the draw without interest. Curtailments are due all the same. */
    freeDays: z.int().min(0).max(365),
    /** Charged once, at the draw. */
    drawFeeCents: positiveCentsSchema,
    curtailments: z.array(curtailmentSchema).max(40),
    floor: curtailmentFloorSchema.nullable(),
    /** Working days after the sale within which the balance is owed; null when the plan does not say. */
    payoffWorkingDays: z.int().min(0).max(60).nullable(),
  })
  .superRefine((plan, context) => {
    plan.rateChanges.forEach((change, at) => {
      const before = plan.rateChanges[at - 1];
      if (before && before.from >= change.from)
        context.addIssue({
          code: 'custom',
          path: ['rateChanges', at, 'from'],
          message: 'Put the changes of the rate in order of their days, one for each day.',
        });
    });
  });
export type FundingPlan = z.infer<typeof fundingPlanSchema>;

/** What the plan lends on this purchase price, in cents, rounded once to the nearest. The rest is the shop's own cash. */
export function advanceCents(plan: Pick<FundingPlan, 'advancePpm'>, purchasePriceCents: Cents): Cents {
  return roundToCents(BigInt(purchasePriceCents) * BigInt(plan.advancePpm), 1_000_000n);
}

/**
 * The balance at which curtailments stop, in cents; 0 without a floor. A floor on the wholesale value counts only when that value is
 * known: without it the other part alone sets the floor, or none.
 */
export function floorCents(floor: CurtailmentFloor | null, originalCents: Cents, wholesaleCents: Cents | null): Cents {
  if (floor === null) return 0;
  const parts: Cents[] = [];
  const take = (base: Cents, ppm: number) => parts.push(roundToCents(BigInt(base) * BigInt(ppm), 1_000_000n));
  if (floor.ofOriginalPpm !== null) take(originalCents, floor.ofOriginalPpm);
  if (floor.ofWholesalePpm !== null && wholesaleCents !== null) take(wholesaleCents, floor.ofWholesalePpm);
  return parts.length === 0 ? 0 : Math.min(...parts);
}
