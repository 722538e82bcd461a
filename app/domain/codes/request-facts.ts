// What happens to a code request after it is drafted, as dated facts: asked how, chased, tried, filed, closed. Shapes only, no rules.
// The code itself is in none of them.
import { z } from 'zod';
import { daySchema, instantSchema } from '../shared/day.ts';
import { identifierSchema } from '../shared/identifier.ts';
import { filledLineSchema, lineSchema } from '../shared/text.ts';
import type { CodeRequestDraft } from './code-request.ts';

export const askWaySchema = z.enum(['phone', 'letter', 'portal', 'in-person']);
export type AskWay = z.infer<typeof askWaySchema>;

export const chaseSchema = z.strictObject({
  id: identifierSchema,
  chasedOn: daySchema,
  by: identifierSchema,
  how: askWaySchema,
  /** The day the answer was promised for when chased; null when none was. */
  promisedOn: daySchema.nullable(),
  note: lineSchema(200),
});
export type Chase = z.infer<typeof chaseSchema>;

export const chasesSchema = z.array(chaseSchema).max(200);

/** One time the code was entered into the vehicle. Kept in the order in which it happened. */
export const codeTrySchema = z.strictObject({
  id: identifierSchema,
  triedOn: daySchema,
  by: identifierSchema,
  result: z.enum(['right', 'wrong']),
  /** As the device showed; null when it did not say. */
  triesLeft: z.int().min(0).max(99).nullable(),
  /** Until when the device takes no code, as it showed; null when it is not locked or did not say. */
  lockedUntil: instantSchema.nullable(),
  note: lineSchema(200),
});
export type CodeTry = z.infer<typeof codeTrySchema>;

/** A form about the transaction that a scheme wants filed in time. */
export const filingSchema = z.strictObject({
  /** Identity of the scheme's rule, see filing-limit.ts. */
  schemeId: identifierSchema,
  /** The day of the transaction; null: the day the code was given counts. */
  transactionOn: daySchema.nullable(),
  filedOn: daySchema.nullable(),
  reference: lineSchema(80),
});
export type Filing = z.infer<typeof filingSchema>;

/** Why a value that does not look as usual was kept all the same. */
export const keptWarningSchema = z.strictObject({
  key: filledLineSchema(40),
  reason: filledLineSchema(200),
  by: identifierSchema,
  keptOn: daySchema,
});
export type KeptWarning = z.infer<typeof keptWarningSchema>;

/** To be spread into the shape of the code request in the record. */
export const requestLifeShape = {
  askedHow: askWaySchema.nullable(),
  /** Whose credential the code was asked for with: a number or a name, never a password. */
  credentialReference: lineSchema(80),
  chases: chasesSchema,
  tries: z.array(codeTrySchema).max(200),
  filing: filingSchema.nullable(),
  keptWarnings: z.array(keptWarningSchema).max(20),
  closedOn: daySchema.nullable(),
  closedWhy: lineSchema(200),
};
export const requestLifeSchema = z.strictObject(requestLifeShape);
export type RequestLife = z.infer<typeof requestLifeSchema>;

/** For a new request: nothing of this has happened. */
export const noRequestLife: RequestLife = {
  askedHow: null,
  credentialReference: '',
  chases: [],
  tries: [],
  filing: null,
  keptWarnings: [],
  closedOn: null,
  closedWhy: '',
};

/** A request as the rules need it, whoever entered it. */
export type RequestFacts = Omit<CodeRequestDraft, 'id'>;
