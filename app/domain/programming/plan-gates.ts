// How far a plan has come: which steps are done, which can start, and what blocks the others. Starts nothing and records nothing.

import { type GateKind, gates } from './gate-kind.ts';
import type { PlanModule } from './job-condition.ts';
import type { Plan, PlanConstraint, PlanStep } from './plan.ts';
import { concernsSameGate } from './plan-constraints.ts';
import type { ProgrammingRoute } from './programming-job.ts';

/** What the record says about the job so far. Step ids are the plan's. */
export type PlanFacts = {
  readonly done: ReadonlySet<string>;
  /** Left out with a reason. Frees the steps after it, but meets no gate: what it would have brought about has not happened. */
  readonly leftOut: ReadonlySet<string>;
  readonly failedRoutes: ReadonlyMap<string, readonly ProgrammingRoute[]>;
  /** Gates that something outside the plan meets as things stand now: a part received, a code given, proof of ownership checked. Null: for every module. */
  readonly gatesMet: readonly { readonly gate: GateKind; readonly moduleId: string | null }[];
};

export type BlockingReason = {
  readonly kind: 'step' | 'gate' | 'contradiction';
  /** The step that comes first, the gate, or the rules that contradict each other. */
  readonly what: string;
  /** False where nobody may go on regardless. */
  readonly mayBeOverridden: boolean;
  readonly sentence: string;
};

export type StepReadiness = {
  readonly stepId: string;
  readonly state: 'done' | 'left-out' | 'can-start' | 'blocked';
  /** Empty unless blocked. */
  readonly reasons: readonly BlockingReason[];
  /** Sentences worth reading before the start: what let go of the step and what that means. */
  readonly notes: readonly string[];
};

const inVehicleRoutes: readonly ProgrammingRoute[] = ['on-vehicle', 'pass-through'];

/** True once each route in the vehicle that the earlier step has was tried and failed. */
function hasLetGo(constraint: PlanConstraint, earlier: PlanStep, facts: PlanFacts): boolean {
  if (constraint.letsGoWhen !== 'in-vehicle-routes-failed') return false;
  const inVehicle = earlier.routes.filter((route) => inVehicleRoutes.includes(route));
  const failed = facts.failedRoutes.get(earlier.id) ?? [];
  return inVehicle.length > 0 && inVehicle.every((route) => failed.includes(route));
}

/** True when the gate is met for the step: by a fact as things stand now, or by every step of the plan that brings it about while none has ended it. */
export function isGateMet(gate: GateKind, step: PlanStep, plan: Plan, facts: PlanFacts): boolean {
  const isStated = facts.gatesMet.some(
    (fact) =>
      fact.gate === gate && (fact.moduleId === null || gates[gate].scope === 'job' || fact.moduleId === step.moduleId),
  );
  if (isStated) return true;
  const providers = plan.steps.filter((one) => one.meets.includes(gate) && concernsSameGate(gate, one, step));
  if (providers.length === 0) return gates[gate].onlyWithStep;
  const ended = plan.steps.some(
    (one) => one.ends.includes(gate) && concernsSameGate(gate, one, step) && facts.done.has(one.id),
  );
  return !ended && providers.every(({ id }) => facts.done.has(id));
}

function gateReasons(step: PlanStep, plan: Plan, facts: PlanFacts): BlockingReason[] {
  const module: PlanModule | undefined = plan.modules.find(({ id }) => id === step.moduleId);
  return step.gates
    .filter((gate) => !isGateMet(gate, step, plan, facts))
    .map((gate) => ({
      kind: 'gate',
      what: gate,
      mayBeOverridden: gates[gate].mayBeOverridden,
      sentence: gates[gate].missing.replaceAll('{module}', () => module?.name ?? 'module'),
    }));
}

function contradictionReasons(step: PlanStep, plan: Plan): BlockingReason[] {
  return plan.contradictions
    .filter(({ accepted, steps }) => accepted === null && steps.includes(step.id))
    .map(({ rules, sentence }) => ({ kind: 'contradiction', what: rules.join(', '), mayBeOverridden: true, sentence }));
}

function readinessOf(step: PlanStep, plan: Plan, facts: PlanFacts): StepReadiness {
  if (facts.done.has(step.id)) return { stepId: step.id, state: 'done', reasons: [], notes: [] };
  if (facts.leftOut.has(step.id)) return { stepId: step.id, state: 'left-out', reasons: [], notes: [] };
  const gateBlocks = gateReasons(step, plan, facts);
  const earlierIds = new Set<string>();
  const letGoIds = new Set<string>();
  for (const constraint of plan.constraints) {
    if (constraint.after !== step.id || !constraint.holds) continue;
    if (facts.done.has(constraint.before) || facts.leftOut.has(constraint.before)) continue;
    const earlier = plan.steps.find(({ id }) => id === constraint.before);
    if (!earlier) continue;
    // What the earlier step brings about is asked as a gate, above: met by a fact, it needs no step; not met, its own sentence says so.
    if (step.gates.some((gate) => constraint.ruleId === `gate-${gate}` && earlier.meets.includes(gate))) continue;
    if (hasLetGo(constraint, earlier, facts)) letGoIds.add(earlier.id);
    else earlierIds.add(earlier.id);
  }
  const titled = (ids: ReadonlySet<string>) => plan.steps.filter(({ id }) => ids.has(id));
  const reasons: BlockingReason[] = [
    ...titled(earlierIds).map(({ id, title }): BlockingReason => {
      return { kind: 'step', what: id, mayBeOverridden: true, sentence: `First: ${title}.` };
    }),
    ...gateBlocks,
    ...contradictionReasons(step, plan),
  ];
  const notes = titled(letGoIds).map(
    ({ title }) =>
      `“${title}” failed on every route in the vehicle, so it may be done later on the bench. It is still open.`,
  );
  return { stepId: step.id, state: reasons.length === 0 ? 'can-start' : 'blocked', reasons, notes };
}

/**
 * For each step, in the plan's order: done, left out, can start, or blocked and by what. A step can start when every step that must come
 * before it is done or left out, its gates are met, and it takes part in no contradiction that nobody has accepted.
 */
export function stepReadiness(plan: Plan, facts: PlanFacts): readonly StepReadiness[] {
  return plan.steps.map((step) => readinessOf(step, plan, facts));
}

/** The first step in the plan's order that can start now; null when nothing can. */
export function nextStep(readiness: readonly StepReadiness[]): StepReadiness | null {
  return readiness.find(({ state }) => state === 'can-start') ?? null;
}
