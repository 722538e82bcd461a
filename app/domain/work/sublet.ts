// Work given to somebody else: agreed, sent, expected back, back, and what it was quoted and invoiced at.
import type { z } from 'zod';
import { chasesSchema } from '../codes/request-facts.ts';
import { positiveCentsSchema } from '../shared/cents.ts';
import { daySchema } from '../shared/day.ts';
import { factDraft, keptFact } from '../shared/fact.ts';
import { identifierSchema } from '../shared/identifier.ts';
import { filledLineSchema, lineSchema } from '../shared/text.ts';
import { workAreaSchema } from './work-area.ts';

const shape = {
  notedOn: daySchema,
  what: filledLineSchema(160),
  supplier: lineSchema(80),
  area: workAreaSchema,
  faultId: identifierSchema.nullable(),
  sentOn: daySchema.nullable(),
  expectedOn: daySchema.nullable(),
  backOn: daySchema.nullable(),
  quotedCents: positiveCentsSchema.nullable(),
  invoicedCents: positiveCentsSchema.nullable(),
  /** Each time somebody asked where it stays. */
  chases: chasesSchema,
  note: lineSchema(300),
};
export const subletDraftSchema = factDraft(shape);
export const subletSchema = keptFact(shape);
export type SubletDraft = z.infer<typeof subletDraftSchema>;
export type Sublet = z.infer<typeof subletSchema>;
