// A part for a vehicle: needed, ordered, expected, received, fitted or sent back, and the core charge that rides on it.
import { z } from 'zod';
import { chasesSchema } from '../codes/request-facts.ts';
import { positiveCentsSchema } from '../shared/cents.ts';
import { daySchema } from '../shared/day.ts';
import { factDraft, keptFact } from '../shared/fact.ts';
import { identifierSchema } from '../shared/identifier.ts';
import { filledLineSchema, lineSchema } from '../shared/text.ts';

const shape = {
  neededOn: daySchema,
  what: filledLineSchema(120),
  partNumber: lineSchema(60),
  supplier: lineSchema(80),
  faultId: identifierSchema.nullable(),
  quantity: z.int().min(1).max(999),
  /** Price of one, without the core charge; null when not known yet. */
  priceCents: positiveCentsSchema.nullable(),
  /** Core charge of one, owed back when the old unit is returned. */
  coreChargeCents: positiveCentsSchema,
  orderedOn: daySchema.nullable(),
  expectedOn: daySchema.nullable(),
  receivedOn: daySchema.nullable(),
  fittedOn: daySchema.nullable(),
  returnedOn: daySchema.nullable(),
  coreReturnedOn: daySchema.nullable(),
  /** Each time somebody asked the supplier where it stays. */
  chases: chasesSchema,
  note: lineSchema(300),
};
export const partDraftSchema = factDraft(shape);
export const partSchema = keptFact(shape);
export type PartDraft = z.infer<typeof partDraftSchema>;
export type Part = z.infer<typeof partSchema>;
