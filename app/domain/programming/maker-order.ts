// The maker's own order as somebody typed it in from the service information. It overrides the rule pack where the two disagree.
import { z } from 'zod';
import { daySchema } from '../shared/day.ts';
import { identifierSchema } from '../shared/identifier.ts';
import { filledLineSchema, lineSchema } from '../shared/text.ts';
import { cautionKeySchema } from '../work/cautions.ts';
import { gateKindSchema } from './gate-kind.ts';
import { planStepIdSchema } from './plan-step-id.ts';
import { programmingRouteSchema } from './programming-route.ts';
import { slugSchema, stageSchema } from './rule-pack.ts';

/** A step that the maker asks for and the pack does not have. */
export const makerStepSchema = z.strictObject({
  id: slugSchema,
  stage: stageSchema,
  moduleId: identifierSchema.nullable(),
  title: filledLineSchema(160),
  detail: lineSchema(300),
  cautions: z.array(cautionKeySchema).max(8),
  cannotBeUndone: z.boolean(),
  gates: z.array(gateKindSchema).max(12),
  routes: z.array(programmingRouteSchema).min(1).max(5),
  typicalMinutes: z.int().min(0).max(6000).nullable(),
});
export type MakerStep = z.infer<typeof makerStepSchema>;

/** A person has seen that a rule of the pack gives way here, and says why that is right for this vehicle. */
export const acceptedContradictionSchema = z.strictObject({
  ruleId: z.string().min(1).max(100),
  before: planStepIdSchema,
  after: planStepIdSchema,
  by: identifierSchema,
  on: daySchema,
  reason: filledLineSchema(300),
});
export type AcceptedContradiction = z.infer<typeof acceptedContradictionSchema>;

export const makerOrderSchema = z.strictObject({
  /** Reference of the document and the day on which it was read: makers change them. */
  document: filledLineSchema(160),
  readOn: daySchema,
  ownSteps: z.array(makerStepSchema).max(40),
  /** Step ids from first to last, as far as the document lists them one after the other. */
  sequence: z.array(planStepIdSchema).max(120),
  /** Further pairs that the document gives. */
  pairs: z.array(z.strictObject({ before: planStepIdSchema, after: planStepIdSchema })).max(200),
  accepted: z.array(acceptedContradictionSchema).max(100),
});
export type MakerOrder = z.infer<typeof makerOrderSchema>;
