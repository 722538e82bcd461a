// How far a plan has come: which steps are done, which can start, and what blocks the others. Starts nothing and records nothing.

import { type GateKind, gates } from './gate-kind.ts';
import type { KeptPlan, KeptStep } from './kept-plan.ts';
import { type AskedGate, indexOf, type LinkBefore, type PlanIndex } from './plan-index.ts';
import type { ProgrammingRoute } from './programming-route.ts';

/** What the record says about the job so far. Step ids are the plan's. */
export type PlanFacts = {
  readonly done: ReadonlySet<string>;
  /** Left out with a reason. Frees the steps after it, but meets no gate: what it would have brought about has not happened. */
  readonly leftOut: ReadonlySet<string>;
  readonly failedRoutes: ReadonlyMap<string, readonly ProgrammingRoute[]>;
  /** Gates that something outside the plan meets as things stand now: a part received, a code given, proof of ownership checked. Null: for every module. */
  readonly gatesMet: readonly { readonly gate: GateKind; readonly moduleId: string | null }[];
};

/** A plan with the names of its modules, for sentences. */
export type NamedPlan = {
  readonly plan: KeptPlan;
  readonly modules: readonly { readonly id: string; readonly name: string }[];
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
function hasLetGo({ letsGo, step }: LinkBefore, facts: PlanFacts): boolean {
  if (!letsGo) return false;
  const inVehicle = step.routes.filter((route) => inVehicleRoutes.includes(route));
  const failed = facts.failedRoutes.get(step.id) ?? [];
  return inVehicle.length > 0 && inVehicle.every((route) => failed.includes(route));
}

/** True when the gate is met for the step: by a fact as things stand now, or by every step of the plan that brings it about while none has ended it. */
export function isGateMet({ gate, providers, enders }: AskedGate, step: KeptStep, facts: PlanFacts): boolean {
  const isStated = facts.gatesMet.some(
    (fact) =>
      fact.gate === gate && (fact.moduleId === null || gates[gate].scope === 'job' || fact.moduleId === step.moduleId),
  );
  if (isStated) return true;
  if (providers.length === 0) return gates[gate].onlyWithStep;
  const isEnded = enders.some(({ id }) => facts.done.has(id));
  return !isEnded && providers.every(({ id }) => facts.done.has(id));
}

function gateReasons(step: KeptStep, { modules }: NamedPlan, index: PlanIndex, facts: PlanFacts): BlockingReason[] {
  const module = modules.find(({ id }) => id === step.moduleId);
  return (index.gatesOf.get(step.id) ?? [])
    .filter((asked) => !isGateMet(asked, step, facts))
    .map(({ gate }) => ({
      kind: 'gate',
      what: gate,
      mayBeOverridden: gates[gate].mayBeOverridden,
      sentence: gates[gate].missing.replaceAll('{module}', () => module?.name ?? 'module'),
    }));
}

function contradictionReasons(step: KeptStep, plan: KeptPlan): BlockingReason[] {
  return plan.contradictions
    .filter(({ accepted, steps }) => accepted === null && steps.includes(step.id))
    .map(({ rules, sentence }) => ({ kind: 'contradiction', what: rules.join(', '), mayBeOverridden: true, sentence }));
}

type Earlier = { readonly open: ReadonlySet<string>; readonly letGo: ReadonlySet<string> };

/**
 * The nearest open steps that must come before this one. What comes before a step that is done or left out must still come before this
 * one: a plan keeps only links that no others imply.
 */
function openBefore(stepId: string, index: PlanIndex, facts: PlanFacts): Earlier {
  const open = new Set<string>();
  const letGo = new Set<string>();
  const seen = new Set<string>();
  const walk = (id: string, isFirst: boolean) => {
    for (const link of index.before.get(id) ?? []) {
      const earlier = link.step.id;
      if (facts.done.has(earlier) || facts.leftOut.has(earlier)) {
        if (seen.has(earlier)) continue;
        seen.add(earlier);
        walk(earlier, false);
      } else if (!hasLetGo(link, facts)) open.add(earlier);
      else if (isFirst) letGo.add(earlier);
    }
  };
  walk(stepId, true);
  return { open, letGo };
}

function readinessOf(step: KeptStep, named: NamedPlan, index: PlanIndex, facts: PlanFacts): StepReadiness {
  if (facts.done.has(step.id)) return { stepId: step.id, state: 'done', reasons: [], notes: [] };
  if (facts.leftOut.has(step.id)) return { stepId: step.id, state: 'left-out', reasons: [], notes: [] };
  const { plan } = named;
  const { open, letGo } = openBefore(step.id, index, facts);
  const titled = (ids: ReadonlySet<string>) => (ids.size === 0 ? [] : plan.steps.filter(({ id }) => ids.has(id)));
  const reasons: BlockingReason[] = [
    ...titled(open).map(({ id, title }): BlockingReason => {
      return { kind: 'step', what: id, mayBeOverridden: true, sentence: `First: ${title}.` };
    }),
    ...gateReasons(step, named, index, facts),
    ...contradictionReasons(step, plan),
  ];
  const notes = titled(letGo).map(
    ({ title }) =>
      `“${title}” failed on every route in the vehicle, so it may be done later on the bench. It is still open.`,
  );
  return { stepId: step.id, state: reasons.length === 0 ? 'can-start' : 'blocked', reasons, notes };
}

/**
 * For each step, in the plan's order: done, left out, can start, or blocked and by what. A step can start when every step that must come
 * before it is done or left out, its gates are met, and it takes part in no contradiction that nobody has accepted.
 */
export function stepReadiness(named: NamedPlan, facts: PlanFacts): readonly StepReadiness[] {
  const index = indexOf(named.plan);
  return named.plan.steps.map((step) => readinessOf(step, named, index, facts));
}
