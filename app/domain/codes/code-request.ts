// A request for an unlock code: what was asked of whom, when, with which proof of ownership, and what became of it.
// The code itself is not kept here, nor what form it has.
import { z } from 'zod';
import { positiveCentsSchema } from '../shared/cents.ts';
import { daySchema } from '../shared/day.ts';
import { factDraft, keptFact } from '../shared/fact.ts';
import { identifierSchema } from '../shared/identifier.ts';
import { filledLineSchema, lineSchema } from '../shared/text.ts';
import { requestLifeShape } from './request-facts.ts';

export const proofOfOwnershipSchema = z.strictObject({
  /** Kind of document: invoice, title, registration. Not a copy of it. */
  document: filledLineSchema(80),
  checkedOn: daySchema,
  checkedBy: identifierSchema,
});
export type ProofOfOwnership = z.infer<typeof proofOfOwnershipSchema>;

const shape = {
  notedOn: daySchema,
  /** Identity of one of the shop's kinds, see code-kinds.ts. */
  kind: identifierSchema,
  module: lineSchema(60),
  deviceSerial: lineSchema(40),
  reason: lineSchema(200),
  faultId: identifierSchema.nullable(),
  proof: proofOfOwnershipSchema.nullable(),
  askedOn: daySchema.nullable(),
  askedOf: lineSchema(80),
  expectedOn: daySchema.nullable(),
  answeredOn: daySchema.nullable(),
  outcome: z.enum(['given', 'refused']).nullable(),
  feeCents: positiveCentsSchema,
  /** Where the shop keeps the code it was given (a sealed envelope, a safe). Never the code. */
  keptWhere: lineSchema(80),
  note: lineSchema(300),
  ...requestLifeShape,
};
export const codeRequestDraftSchema = factDraft(shape);
export const codeRequestSchema = keptFact(shape);
export type CodeRequestDraft = z.infer<typeof codeRequestDraftSchema>;
export type CodeRequest = z.infer<typeof codeRequestSchema>;
