// What the page is shown of everything asked for and not yet here, and how long whoever owes it usually takes. No amounts where no money
// is seen.
import { z } from 'zod';
import { chaseSchema } from '../domain/codes/request-facts.ts';
import { daySchema } from '../domain/shared/day.ts';
import { identifierSchema } from '../domain/shared/identifier.ts';
import { causeSchema, standingSchema } from '../domain/time/cause.ts';

const turnaroundShape = {
  cases: z.int().min(1),
  medianDays: z.int().min(0),
  eightiethDays: z.int().min(0),
  promised: z.int().min(0),
  late: z.int().min(0),
};

export const waitingForSchema = z.enum(['part', 'code', 'sublet']);

export const waitingLineSchema = z.strictObject({
  vehicleId: identifierSchema,
  stockNumber: z.string(),
  title: z.string(),
  kind: waitingForSchema,
  factId: identifierSchema,
  what: z.string(),
  /** Empty when nobody was named. */
  provider: z.string(),
  askedOn: daySchema,
  promisedOn: daySchema.nullable(),
  waitedDays: z.int().min(0),
  overdueDays: z.int().min(0),
  expected: z.strictObject({
    likelyOn: daySchema,
    safeOn: daySchema,
    /** What it rests on: of whom or of which kind, and how many earlier cases. */
    basis: z.enum(['turnaround', 'promises', 'promise', 'setting']),
    among: z.enum(['provider-and-kind', 'provider', 'kind', 'all']),
    cases: z.int().min(0),
  }),
  chaseOn: daySchema,
  chaseWhy: z.string(),
  chases: z.int().min(0),
  lastChase: chaseSchema.pick({ chasedOn: true, how: true, promisedOn: true, note: true }).nullable(),
  decides: z.enum(['alone', 'together', 'not']),
  decidedBy: z.strictObject({ cause: standingSchema, what: z.string() }),
  isInWork: z.boolean(),
  besides: z.array(z.strictObject({ cause: causeSchema, what: z.string() })).readonly(),
  /** Of the vehicle, and this wait's share; null for whoever may not see money. */
  dayCents: z.int().min(0).nullable(),
  shareCents: z.int().min(0).nullable(),
});
export type WaitingLineView = z.infer<typeof waitingLineSchema>;

/** How long one of those who owe something usually takes for one kind of thing. */
export const providerTurnaroundSchema = z.strictObject({
  provider: z.string(),
  kind: waitingForSchema,
  /** 'radio code'; empty for parts and sublet work. */
  codeKind: z.string(),
  ...turnaroundShape,
});
export type ProviderTurnaround = z.infer<typeof providerTurnaroundSchema>;

export const waitingViewSchema = z.strictObject({
  lines: z.array(waitingLineSchema).readonly(),
  vehicles: z.int().min(0),
  /** Another day of these vehicles, each once, and what of it is decided here; null for whoever may not see money. */
  dayCents: z.int().nullable(),
  sharedCents: z.int().nullable(),
  turnaround: z.array(providerTurnaroundSchema).readonly(),
});
export type WaitingView = z.infer<typeof waitingViewSchema>;
