// The plan of a job as it was made: a fact of that day. A rule pack that changes later orders no running job anew. Texts stand in it once.
import { z } from 'zod';
import { daySchema } from '../shared/day.ts';
import { identifierSchema } from '../shared/identifier.ts';
import { filledLineSchema, lineSchema } from '../shared/text.ts';
import { cautionKeySchema } from '../work/cautions.ts';
import { gateKindSchema } from './gate-kind.ts';
import { acceptedContradictionSchema } from './maker-order.ts';
import { planStepIdSchema } from './plan-step-id.ts';
import { programmingRouteSchema } from './programming-route.ts';
import { slugSchema, stageSchema } from './rule-pack.ts';

export const keptStepSchema = z.strictObject({
  id: planStepIdSchema,
  /** Null: done once for the whole job. */
  moduleId: identifierSchema.nullable(),
  stage: stageSchema,
  title: filledLineSchema(220),
  detail: lineSchema(400),
  cautions: z.array(cautionKeySchema).max(8),
  gates: z.array(gateKindSchema).max(12),
  meets: z.array(gateKindSchema).max(4),
  ends: z.array(gateKindSchema).max(4),
  routes: z.array(programmingRouteSchema).min(1).max(5),
  cannotBeUndone: z.boolean(),
  typicalMinutes: z.int().min(0).max(6000).nullable(),
  /** Column in the picture of the order: the length of the longest chain of steps before it. */
  layer: z.int().min(0).max(200),
});
export type KeptStep = z.infer<typeof keptStepSchema>;

/** 'gate-…' and 'maker-…' are rules that the steps and the maker's order say themselves; all others stand in the plan's list of rules. */
const ruleIdSchema = z.string().min(1).max(100);

export const keptLinkSchema = z.strictObject({
  before: planStepIdSchema,
  after: planStepIdSchema,
  ruleId: ruleIdSchema,
});
export type KeptLink = z.infer<typeof keptLinkSchema>;

export const keptRuleSchema = z.strictObject({
  id: slugSchema,
  reason: filledLineSchema(300),
  source: filledLineSchema(200),
  /** The rule lets go once every route in the vehicle has failed for the earlier step. */
  letsGo: z.boolean(),
});
export type KeptRule = z.infer<typeof keptRuleSchema>;

export const keptContradictionSchema = z.strictObject({
  kind: z.enum(['cycle', 'pack-against-maker', 'unknown-step', 'step-twice']),
  rules: z.array(ruleIdSchema).max(120),
  steps: z.array(z.string().max(100)).max(120),
  /** The link that the order does not keep; null when it keeps all of them. */
  setAside: keptLinkSchema.nullable(),
  accepted: acceptedContradictionSchema.nullable(),
  sentence: filledLineSchema(8000),
});
export type KeptContradiction = z.infer<typeof keptContradictionSchema>;

export const keptPlanSchema = z
  .strictObject({
    packId: slugSchema,
    packVersion: z.int().min(1),
    madeOn: daySchema,
    /** In the order to do them in. */
    steps: z.array(keptStepSchema).min(1).max(300),
    /** What must come before what, without what others imply: see keep-plan.ts. */
    links: z.array(keptLinkSchema).max(3000),
    rules: z.array(keptRuleSchema).max(300),
    contradictions: z.array(keptContradictionSchema).max(300),
    reminders: z.array(filledLineSchema(220)).max(40),
  })
  .superRefine(({ steps, links, rules }, context) => {
    const complain = (path: (string | number)[], message: string) =>
      context.addIssue({ code: 'custom', path, message });
    const place = new Map(steps.map(({ id }, at) => [id, at]));
    if (place.size < steps.length) complain(['steps'], 'Two steps of the plan have the same id.');
    const ruleIds = new Set(rules.map(({ id }) => id));
    links.forEach(({ before, after, ruleId }, at) => {
      const [from, to] = [place.get(before), place.get(after)];
      if (from === undefined || to === undefined || from >= to)
        complain(['links', at], `The steps of the plan do not keep “${before}” before “${after}”.`);
      if (!/^(gate|maker)-/.test(ruleId) && !ruleIds.has(ruleId))
        complain(['links', at, 'ruleId'], `The plan does not say what rule “${ruleId}” is.`);
    });
  });
export type KeptPlan = z.infer<typeof keptPlanSchema>;
