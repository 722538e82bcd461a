// What the page learns of the vault: whether there is one and who may open it; of each request, whether a code is kept. One answer alone
// carries a code, and one alone a recovery key.
import { z } from 'zod';
import { daySchema, instantSchema } from '../domain/shared/day.ts';
import { identifierSchema } from '../domain/shared/identifier.ts';

export const vaultStateSchema = z.strictObject({
  /** 'open': for whoever is at the desk. */
  state: z.enum(['none', 'damaged', 'locked', 'open']),
  /** What is wrong with it and what to do; empty when nothing is. */
  sentence: z.string(),
  /** Whether whoever is at the desk has a key to it. */
  hasKey: z.boolean(),
  /** Milliseconds until they may try again. */
  waitMilliseconds: z.int(),
  /** Everybody who has a key. */
  peopleIds: z.array(identifierSchema).readonly(),
  /** Codes kept now. */
  heldCodes: z.int(),
});
export type VaultState = z.infer<typeof vaultStateSchema>;

const lookSchema = z.strictObject({
  at: instantSchema,
  by: identifierSchema,
  kind: z.enum(['put-code', 'look-at-code', 'destroy-code']),
  label: z.string(),
  reason: z.string(),
});
export type CodeHappening = z.infer<typeof lookSchema>;

export const keptCodeSchema = z.strictObject({
  requestId: identifierSchema,
  /** 'destroyed': there was one. */
  state: z.enum(['none', 'held', 'destroyed']),
  keptAt: instantSchema.nullable(),
  destroyedAt: instantSchema.nullable(),
  /** When it is going to be destroyed; null before the sale and where none is kept. */
  destroyedOn: daySchema.nullable(),
  /** Why whoever is at the desk may not see it; empty when they may. */
  whyNoLook: z.string(),
  /** Open steps that need it. */
  steps: z
    .array(z.strictObject({ jobId: identifierSchema, stepId: z.string(), number: z.int(), title: z.string() }))
    .readonly(),
  /** Kept, looked at, destroyed: newest first. */
  happenings: z.array(lookSchema).readonly(),
});
export type KeptCode = z.infer<typeof keptCodeSchema>;

export const keptCodesSchema = z.strictObject({
  codes: z.array(keptCodeSchema).readonly(),
  mayKeep: z.boolean(),
  mayDestroy: z.boolean(),
  mayHandOver: z.boolean(),
});
export type KeptCodes = z.infer<typeof keptCodesSchema>;

/** The one answer that carries a code. Never to be kept by the page beyond what it shows. */
export const seenCodeSchema = z.strictObject({ value: z.string(), hiddenAfterSeconds: z.int() });

/** The one answer that carries a recovery key: told once, kept nowhere. `unreadable`: codes that could not be taken along. */
export const newRecoverySchema = z.strictObject({
  state: vaultStateSchema,
  recoveryKey: z.string(),
  unreadable: z.int(),
});

export const keyChangeSchema = z.strictObject({ state: vaultStateSchema, unreadable: z.int() });
