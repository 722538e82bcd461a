// A person's signature under one check of the shop's checklist, with its result. When it goes stale is decided in gates.ts.
import { z } from 'zod';
import { daySchema } from '../shared/day.ts';
import { factDraft, keptFact } from '../shared/fact.ts';
import { identifierSchema } from '../shared/identifier.ts';
import { lineSchema } from '../shared/text.ts';

const shape = {
  checkId: identifierSchema,
  signedOn: daySchema,
  signedBy: identifierSchema,
  result: z.enum(['passed', 'failed', 'not-needed']),
  note: lineSchema(300),
};
export const signOffDraftSchema = factDraft(shape);
export const signOffSchema = keptFact(shape);
export type SignOffDraft = z.infer<typeof signOffDraftSchema>;
export type SignOff = z.infer<typeof signOffSchema>;
