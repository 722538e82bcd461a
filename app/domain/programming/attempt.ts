// One attempt at a step of a programming job: who, when, by which route, what was read, and how it went. Who may begin is decided elsewhere.
import { z } from 'zod';
import { daySchema } from '../shared/day.ts';
import { factDraft, keptFact } from '../shared/fact.ts';
import { identifierSchema } from '../shared/identifier.ts';
import { filledLineSchema, lineSchema } from '../shared/text.ts';
import { planStepIdSchema } from './plan-step-id.ts';
import { programmingRouteSchema } from './programming-route.ts';

export const attemptOutcomeSchema = z.enum(['worked', 'failed', 'stopped']);
export type AttemptOutcome = z.infer<typeof attemptOutcomeSchema>;

/** A named person went past what blocked the step, and why. */
export const overrideSchema = z.strictObject({ by: identifierSchema, reason: filledLineSchema(300) });
export type Override = z.infer<typeof overrideSchema>;

const voltsSchema = z.number().min(0).max(60).nullable();
const attemptShape = {
  jobId: identifierSchema,
  /** The step as the plan names it. */
  stepId: planStepIdSchema,
  on: daySchema,
  person: identifierSchema,
  route: programmingRouteSchema,
  outcome: attemptOutcomeSchema,
  /** The last eight of the VIN as read from the vehicle; empty where the step does not ask for it. */
  vinRead: lineSchema(24),
  override: overrideSchema.nullable(),
  voltsBefore: voltsSchema,
  voltsLowest: voltsSchema,
  voltsAfter: voltsSchema,
  /** What the tool or the vehicle showed. */
  message: lineSchema(300),
  /** Where the photograph or the file is. */
  evidence: lineSchema(200),
};
export const attemptDraftSchema = factDraft(attemptShape);
export const attemptSchema = keptFact(attemptShape);
export type AttemptDraft = z.infer<typeof attemptDraftSchema>;
export type Attempt = z.infer<typeof attemptSchema>;
