// A control module to be programmed: its steps in order, and each attempt at a step. Order rules live in plan files beside this.
import { z } from 'zod';
import { daySchema } from '../shared/day.ts';
import { factDraft, keptFact } from '../shared/fact.ts';
import { identifierSchema } from '../shared/identifier.ts';
import { filledLineSchema, lineSchema, paragraphSchema } from '../shared/text.ts';
import { cautionKeySchema } from '../work/cautions.ts';

export const moduleOriginSchema = z.enum(['new', 'used', 'repaired', 'cloned', 'kept']);
export type ModuleOrigin = z.infer<typeof moduleOriginSchema>;

export const programmingStepSchema = z.strictObject({
  id: identifierSchema,
  title: filledLineSchema(160),
  detail: lineSchema(300),
  cautions: z.array(cautionKeySchema).max(8),
  cannotBeUndone: z.boolean(),
  needsPart: z.boolean(),
  needsCode: z.boolean(),
  typicalMinutes: z.int().min(0).max(6000).nullable(),
  /** Why the step is not needed on this vehicle; empty when it is needed. */
  leftOutReason: lineSchema(200),
});
export type ProgrammingStep = z.infer<typeof programmingStepSchema>;

const jobShape = {
  openedOn: daySchema,
  module: filledLineSchema(60),
  origin: moduleOriginSchema,
  faultId: identifierSchema.nullable(),
  /** The part that is the module, and the code request the write needs, where there is one. */
  partId: identifierSchema.nullable(),
  codeRequestId: identifierSchema.nullable(),
  steps: z.array(programmingStepSchema).max(60),
  note: paragraphSchema(2000),
};
export const programmingJobDraftSchema = factDraft(jobShape);
export const programmingJobSchema = keptFact(jobShape);
export type ProgrammingJobDraft = z.infer<typeof programmingJobDraftSchema>;
export type ProgrammingJob = z.infer<typeof programmingJobSchema>;

export const programmingRouteSchema = z.enum(['on-vehicle', 'bench', 'pass-through', 'sent-out', 'by-hand']);
export type ProgrammingRoute = z.infer<typeof programmingRouteSchema>;

export const attemptOutcomeSchema = z.enum(['worked', 'failed', 'stopped']);
export type AttemptOutcome = z.infer<typeof attemptOutcomeSchema>;

const voltsSchema = z.number().min(0).max(60).nullable();
const attemptShape = {
  jobId: identifierSchema,
  stepId: identifierSchema,
  on: daySchema,
  person: identifierSchema,
  route: programmingRouteSchema,
  outcome: attemptOutcomeSchema,
  voltsBefore: voltsSchema,
  voltsLowest: voltsSchema,
  voltsAfter: voltsSchema,
  /** What the tool or the vehicle showed. */
  message: lineSchema(300),
};
export const attemptDraftSchema = factDraft(attemptShape);
export const attemptSchema = keptFact(attemptShape);
export type AttemptDraft = z.infer<typeof attemptDraftSchema>;
export type Attempt = z.infer<typeof attemptSchema>;
