// What was bought, from whom, for how much, and what came with it; the arrival; the targets; the sale.
import { z } from 'zod';
import { positiveCentsSchema } from '../shared/cents.ts';
import { daySchema } from '../shared/day.ts';
import { identifierSchema } from '../shared/identifier.ts';
import { lineSchema } from '../shared/text.ts';

export const purchaseSchema = z.strictObject({
  boughtOn: daySchema,
  source: lineSchema(80),
  priceCents: positiveCentsSchema,
  feesCents: positiveCentsSchema,
  transportCents: positiveCentsSchema,
  /** Title or registration paper: what it is called where the shop works. */
  paperKind: lineSchema(40),
  paperExpectedOn: daySchema.nullable(),
  paperReceivedOn: daySchema.nullable(),
  keysReceived: z.int().min(0).max(20).nullable(),
  /** The shop's funding plan that pays for it; null: own money. */
  fundingPlanId: identifierSchema.nullable(),
});
export type Purchase = z.infer<typeof purchaseSchema>;

export const arrivalSchema = z.strictObject({ expectedOn: daySchema.nullable(), arrivedOn: daySchema.nullable() });
export type Arrival = z.infer<typeof arrivalSchema>;

export const targetsSchema = z.strictObject({
  askingCents: positiveCentsSchema.nullable(),
  /** Reconditioning budget: parts, labour, sublet, codes and other costs. */
  budgetCents: positiveCentsSchema.nullable(),
  /** What the trade would pay today for the vehicle as it stands. */
  tradeValueCents: positiveCentsSchema.nullable(),
  marginFloorCents: positiveCentsSchema.nullable(),
});
export type Targets = z.infer<typeof targetsSchema>;

export const saleSchema = z.strictObject({ soldOn: daySchema, priceCents: positiveCentsSchema, buyer: lineSchema(80) });
export type Sale = z.infer<typeof saleSchema>;
