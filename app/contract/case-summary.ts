// What the page is told of earlier cases like the one at hand. Amounts are null for who may not see money.
import { z } from 'zod';
import { programmingRouteSchema } from '../domain/programming/programming-route.ts';
import { daySchema } from '../domain/shared/day.ts';
import { identifierSchema } from '../domain/shared/identifier.ts';

const centsOrNull = z.int().nullable();

export const caseQuerySchema = z.strictObject({
  module: z.string().max(60),
  codes: z.array(z.string().max(12)).max(40),
  exceptVehicleId: identifierSchema,
});

export const caseSummarySchema = z.strictObject({
  /** The closest match found; the count and the fixes are of these cases alone. Null without any. */
  match: z.enum(['both', 'code', 'module']).nullable(),
  count: z.int().min(0),
  fixes: z
    .array(z.strictObject({ fix: z.string(), count: z.int(), medianCents: centsOrNull, medianDays: z.number() }))
    .readonly(),
  routes: z.array(z.strictObject({ route: programmingRouteSchema, worked: z.int(), tried: z.int() })).readonly(),
  leftAsTheyWere: z.int().min(0),
  /** The closest and latest few. */
  cases: z
    .array(
      z.strictObject({
        vehicleId: identifierSchema,
        stockNumber: z.string(),
        title: z.string(),
        what: z.string(),
        fix: z.string(),
        days: z.int(),
        doneOn: daySchema,
        totalCents: centsOrNull,
        isIncomplete: z.boolean(),
      }),
    )
    .readonly(),
});
export type CaseSummary = z.infer<typeof caseSummarySchema>;
