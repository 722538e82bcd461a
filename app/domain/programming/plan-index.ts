// What can be looked up in a kept plan, worked out once for each plan: what comes right before a step, and what lies behind it. Judges nothing.
import type { GateKind } from './gate-kind.ts';
import type { KeptPlan, KeptStep } from './kept-plan.ts';
import { concernsSameGate, isAskedAsGate } from './plan-constraints.ts';

export type LinkBefore = {
  readonly step: KeptStep;
  /** The link lets go once every route in the vehicle has failed for the earlier step. */
  readonly letsGo: boolean;
};

export type AskedGate = {
  readonly gate: GateKind;
  readonly providers: readonly KeptStep[];
  readonly enders: readonly KeptStep[];
};

export type PlanIndex = {
  readonly stepOf: ReadonlyMap<string, KeptStep>;
  /** By step: what must come right before it. What is asked as a gate is not among them. */
  readonly before: ReadonlyMap<string, readonly LinkBefore[]>;
  /** By step: the steps for which it must be done, right after it, gates included. */
  readonly after: ReadonlyMap<string, readonly string[]>;
  /** Steps behind which a step of the whole job lies: while they wait, the job cannot come to its end. */
  readonly leadsToWholeJob: ReadonlySet<string>;
  /** By step: for each gate it asks for, the steps that bring it about and those that end it. */
  readonly gatesOf: ReadonlyMap<string, readonly AskedGate[]>;
};

const indexes = new WeakMap<KeptPlan, PlanIndex>();

function buildIndex(plan: KeptPlan): PlanIndex {
  const stepOf = new Map(plan.steps.map((step) => [step.id, step]));
  const letsGo = new Map(plan.rules.map((rule) => [rule.id, rule.letsGo]));
  const before = new Map<string, LinkBefore[]>(plan.steps.map(({ id }) => [id, []]));
  const after = new Map<string, string[]>(plan.steps.map(({ id }) => [id, []]));
  for (const link of plan.links) {
    const [earlier, later] = [stepOf.get(link.before), stepOf.get(link.after)];
    if (!earlier || !later) continue;
    after.get(earlier.id)?.push(later.id);
    if (!isAskedAsGate(link.ruleId, earlier, later))
      before.get(later.id)?.push({ step: earlier, letsGo: letsGo.get(link.ruleId) ?? false });
  }
  const leadsToWholeJob = new Set<string>();
  for (const step of [...plan.steps].reverse()) {
    const followers = after.get(step.id) ?? [];
    if (followers.some((id) => stepOf.get(id)?.moduleId === null || leadsToWholeJob.has(id)))
      leadsToWholeJob.add(step.id);
  }
  const asked = (step: KeptStep): AskedGate[] =>
    step.gates.map((gate) => {
      const same = plan.steps.filter((one) => concernsSameGate(gate, one, step));
      return {
        gate,
        providers: same.filter(({ meets }) => meets.includes(gate)),
        enders: same.filter(({ ends }) => ends.includes(gate)),
      };
    });
  const gatesOf = new Map(plan.steps.map((step) => [step.id, asked(step)]));
  return { stepOf, before, after, leadsToWholeJob, gatesOf };
}

/** The same plan is looked up for every day of a vehicle's past, so its index is kept as long as the plan is. */
export function indexOf(plan: KeptPlan): PlanIndex {
  const known = indexes.get(plan);
  if (known) return known;
  const built = buildIndex(plan);
  indexes.set(plan, built);
  return built;
}
