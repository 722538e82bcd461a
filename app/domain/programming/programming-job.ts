// A programming job: the modules it touches, the plan as it was made for them, and what people vouched for or left out on the way.
import { z } from 'zod';
import { daySchema } from '../shared/day.ts';
import { factDraft, keptFact } from '../shared/fact.ts';
import { identifierSchema } from '../shared/identifier.ts';
import { filledLineSchema, paragraphSchema } from '../shared/text.ts';
import { gateKindSchema } from './gate-kind.ts';
import { keptPlanSchema } from './kept-plan.ts';
import { makerOrderSchema } from './maker-order.ts';
import { moduleKindSchema } from './module-kind.ts';
import { moduleOriginSchema } from './module-origin.ts';
import { planStepIdSchema } from './plan-step-id.ts';

export const jobModuleSchema = z.strictObject({
  /** Unique in its job only; stands in the ids of its steps. */
  id: identifierSchema,
  kind: moduleKindSchema,
  name: filledLineSchema(60),
  origin: moduleOriginSchema,
  /** The part that is the module, and the code request that its steps need, where there is one. */
  partId: identifierSchema.nullable(),
  codeRequestId: identifierSchema.nullable(),
});
export type JobModule = z.infer<typeof jobModuleSchema>;

/** A named person vouches that something is as a step asks: every key is here, no code is asked for. */
export const tickSchema = z.strictObject({
  gate: gateKindSchema,
  /** Null where one answer holds for the whole job. */
  moduleId: identifierSchema.nullable(),
  on: daySchema,
  by: identifierSchema,
});
export type Tick = z.infer<typeof tickSchema>;

/** A step that is not needed on this vehicle, and why. */
export const leftOutSchema = z.strictObject({
  stepId: planStepIdSchema,
  reason: filledLineSchema(200),
  by: identifierSchema,
  on: daySchema,
});
export type LeftOut = z.infer<typeof leftOutSchema>;

const jobShape = {
  openedOn: daySchema,
  title: filledLineSchema(80),
  faultId: identifierSchema.nullable(),
  modules: z.array(jobModuleSchema).min(1).max(12),
  plan: keptPlanSchema,
  makerOrder: makerOrderSchema.nullable(),
  ticks: z.array(tickSchema).max(80),
  leftOut: z.array(leftOutSchema).max(300),
  /** Steps of an earlier plan of this job that were attempted and that the present one does not have. */
  formerSteps: z.array(z.strictObject({ id: planStepIdSchema, title: filledLineSchema(220) })).max(300),
  note: paragraphSchema(2000),
};
export const programmingJobDraftSchema = factDraft(jobShape);
export const programmingJobSchema = keptFact(jobShape);
export type ProgrammingJobDraft = z.infer<typeof programmingJobDraftSchema>;
export type ProgrammingJob = z.infer<typeof programmingJobSchema>;
