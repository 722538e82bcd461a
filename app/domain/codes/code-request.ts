// A request for an unlock code: what was asked of whom, when, with which proof of ownership. The code itself is not kept here.
import { z } from 'zod';
import { positiveCentsSchema } from '../shared/cents.ts';
import { daySchema } from '../shared/day.ts';
import { factDraft, keptFact } from '../shared/fact.ts';
import { identifierSchema } from '../shared/identifier.ts';
import { filledLineSchema, lineSchema } from '../shared/text.ts';

export const codeKindSchema = z.enum(['immobiliser', 'radio', 'mechanical-key', 'gateway', 'other']);
export type CodeKind = z.infer<typeof codeKindSchema>;

export const proofOfOwnershipSchema = z.strictObject({
  /** Kind of document: invoice, title, registration. Not a copy of it. */
  document: filledLineSchema(80),
  checkedOn: daySchema,
  checkedBy: identifierSchema,
});
export type ProofOfOwnership = z.infer<typeof proofOfOwnershipSchema>;

const shape = {
  notedOn: daySchema,
  kind: codeKindSchema,
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
};
export const codeRequestDraftSchema = factDraft(shape);
export const codeRequestSchema = keptFact(shape);
export type CodeRequestDraft = z.infer<typeof codeRequestDraftSchema>;
export type CodeRequest = z.infer<typeof codeRequestSchema>;
