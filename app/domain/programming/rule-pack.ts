// The shape of a rule pack: which steps a job has and in which order, as data that a shop can edit. Holds no rule itself.
import { z } from 'zod';
import { daySchema } from '../shared/day.ts';
import { filledLineSchema, lineSchema } from '../shared/text.ts';
import { cautionKeySchema } from '../work/cautions.ts';
import { gateKindSchema, gates } from './gate-kind.ts';
import { moduleKindSchema } from './module-kind.ts';
import { moduleOriginSchema } from './module-origin.ts';
import { programmingRouteSchema } from './programming-route.ts';

/** Lower-case words joined by single hyphens. Two hyphens in a row are kept free: they join a step to its module in a step's id. */
export const slugSchema = z
  .string()
  .max(48)
  .regex(/^[a-z0-9]+(-[a-z0-9]+)*$/, 'Lower-case words joined by single hyphens, for example scan-before.');

/** Which modules are meant. A module fits when both its kind and its origin do. */
export const moduleFitSchema = z.strictObject({
  kinds: z.union([z.literal('any'), z.array(moduleKindSchema).min(1)]),
  origins: z.union([z.literal('any'), z.array(moduleOriginSchema).min(1)]),
});
export type ModuleFit = z.infer<typeof moduleFitSchema>;

/** A question about all modules of a job together. A module that is not named in the job counts as not there. */
export type JobCondition =
  | { readonly has: ModuleFit }
  | { readonly not: JobCondition }
  | { readonly all: readonly JobCondition[] }
  | { readonly any: readonly JobCondition[] };
export const jobConditionSchema: z.ZodType<JobCondition> = z.lazy(() =>
  z.union([
    z.strictObject({ has: moduleFitSchema }),
    z.strictObject({ not: jobConditionSchema }),
    z.strictObject({ all: z.array(jobConditionSchema).min(1).max(12) }),
    z.strictObject({ any: z.array(jobConditionSchema).min(1).max(12) }),
  ]),
);

/** Parts of a job. They group the steps and settle what comes first where no rule does; they are not rules themselves. */
export const stageSchema = z.enum(['secure', 'exchange', 'write', 'match', 'prove', 'release']);
export type Stage = z.infer<typeof stageSchema>;

const reasonShape = {
  reason: filledLineSchema(300),
  /** A document, or 'common practice, no source', or 'from memory'. */
  source: filledLineSchema(200),
};

export const stepTemplateSchema = z.strictObject({
  id: slugSchema,
  stage: stageSchema,
  /** 'module': once for each module that fits, with `{module}` standing for its name. 'job': once when any module fits. */
  scope: z.enum(['job', 'module']),
  fits: moduleFitSchema,
  when: jobConditionSchema.nullable(),
  title: filledLineSchema(90),
  detail: lineSchema(220),
  cautions: z.array(cautionKeySchema).max(8),
  cannotBeUndone: z.boolean(),
  /** What must be true before the step starts. */
  gates: z.array(gateKindSchema).max(12),
  /** What becomes true when it is done, and what stops being true. */
  meets: z.array(gateKindSchema).max(4),
  ends: z.array(gateKindSchema).max(4),
  routes: z.array(programmingRouteSchema).min(1).max(5),
  typicalMinutes: z.int().min(0).max(6000).nullable(),
  ...reasonShape,
});
export type StepTemplate = z.infer<typeof stepTemplateSchema>;

const stepChoiceSchema = z.strictObject({ steps: z.array(slugSchema).min(1).max(40), fits: moduleFitSchema });
export type StepChoice = z.infer<typeof stepChoiceSchema>;

export const orderRuleSchema = z.strictObject({
  id: slugSchema,
  /** Every step chosen by `before` is done before every step chosen by `after`. */
  before: stepChoiceSchema,
  after: stepChoiceSchema,
  /** 'same': only between steps of one module. 'any': between all. A step of the whole job belongs with every module. */
  modules: z.enum(['same', 'any']),
  when: jobConditionSchema.nullable(),
  /** 'in-vehicle-routes-failed': the rule lets go once every route in the vehicle has failed for the earlier step. */
  letsGoWhen: z.enum(['in-vehicle-routes-failed']).nullable(),
  ...reasonShape,
});
export type OrderRule = z.infer<typeof orderRuleSchema>;

/** A sentence shown when the modules named look incomplete. It changes nothing in the plan. */
export const reminderSchema = z.strictObject({
  id: slugSchema,
  when: jobConditionSchema,
  sentence: filledLineSchema(220),
});
export type Reminder = z.infer<typeof reminderSchema>;

type Complain = (path: (string | number)[], message: string) => void;

function findTemplateFaults(template: StepTemplate, at: number, complain: Complain): void {
  if (template.scope === 'module') return;
  if (`${template.title}${template.detail}`.includes('{module}'))
    complain(['steps', at, 'title'], `Step "${template.id}" is done once a job, so it cannot name one module.`);
  for (const gate of [...template.gates, ...template.meets, ...template.ends])
    if (gates[gate].scope === 'module')
      complain(
        ['steps', at, 'gates'],
        `Step "${template.id}" is done once a job, but "${gate}" is asked module by module.`,
      );
}

export const rulePackSchema = z
  .strictObject({
    id: slugSchema,
    name: filledLineSchema(80),
    version: z.int().min(1),
    changedOn: daySchema,
    note: lineSchema(300),
    steps: z.array(stepTemplateSchema).min(1).max(120),
    rules: z.array(orderRuleSchema).max(300),
    reminders: z.array(reminderSchema).max(40),
  })
  .superRefine((pack, context) => {
    const complain: Complain = (path, message) => context.addIssue({ code: 'custom', path, message });
    for (const list of ['steps', 'rules', 'reminders'] as const) {
      const seen = new Set<string>();
      pack[list].forEach(({ id }, at) => {
        if (seen.has(id)) complain([list, at, 'id'], `"${id}" is used twice. Give one of them another name.`);
        seen.add(id);
      });
    }
    const known = new Set(pack.steps.map(({ id }) => id));
    pack.steps.forEach((template, at) => {
      findTemplateFaults(template, at, complain);
    });
    const met = new Set(pack.steps.flatMap(({ meets }) => meets));
    pack.steps.forEach((template, at) => {
      for (const gate of template.gates)
        if (gates[gate].onlyWithStep && !met.has(gate))
          complain(
            ['steps', at, 'gates'],
            `Step "${template.id}" asks for "${gate}", but no step of this pack brings it about.`,
          );
    });
    const onceAJob = new Set(pack.steps.filter(({ scope }) => scope === 'job').map(({ id }) => id));
    pack.rules.forEach((rule, at) => {
      if (/^(gate|maker)-/.test(rule.id))
        complain(['rules', at, 'id'], `“${rule.id}”: names that begin with gate- or maker- belong to the program.`);
      for (const step of rule.before.steps)
        if (rule.after.steps.includes(step) && (rule.modules === 'same' || onceAJob.has(step)))
          complain(['rules', at, 'after'], `Rule "${rule.id}" puts the step "${step}" before itself.`);
      for (const side of ['before', 'after'] as const)
        for (const step of rule[side].steps)
          if (!known.has(step))
            complain(['rules', at, side], `Rule "${rule.id}" names the step "${step}", which this pack does not have.`);
    });
  });
export type RulePack = z.infer<typeof rulePackSchema>;
