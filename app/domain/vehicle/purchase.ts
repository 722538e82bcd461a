// What was bought, from whom, for how much, and what came with it; the arrival; the targets; the sale.
import { z } from 'zod';
import { groupBudgetsSchema, noGroupBudgets } from '../money/budget.ts';
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
  /** Since when it has had an asking price, whatever the price was; null without one, or when nobody has said. */
  pricedOn: daySchema.nullable(),
  /** Reconditioning budget of the whole: parts, cores, labour, sublet, codes and other costs; null: the sum of the groups, if any. */
  budgetCents: positiveCentsSchema.nullable(),
  budgetByGroup: groupBudgetsSchema,
  /** What the trade would pay today for the vehicle as it stands. */
  tradeValueCents: positiveCentsSchema.nullable(),
  marginFloorCents: positiveCentsSchema.nullable(),
});
export type Targets = z.infer<typeof targetsSchema>;

export const noTargets: Targets = {
  askingCents: null,
  pricedOn: null,
  budgetCents: null,
  budgetByGroup: noGroupBudgets,
  tradeValueCents: null,
  marginFloorCents: null,
};

export const saleSchema = z.strictObject({
  soldOn: daySchema,
  priceCents: positiveCentsSchema,
  buyer: lineSchema(80),
  /** When the lender was paid what was still owed; null while it is owed, or with own money. */
  paidOffOn: daySchema.nullable(),
});
export type Sale = z.infer<typeof saleSchema>;
