// Makes the plan of a programming job: its steps, what must come before what, one order that keeps that, and what does not agree.
// Pure and the same every time. How far the job has come is not here.
import { holdsFor, type PlanModule } from './job-condition.ts';
import { type Link, layersOf, linearExtension, neededLinks } from './linear-extension.ts';
import type { MakerOrder } from './maker-order.ts';
import { type Constraint, makerConstraints, packConstraints } from './plan-constraints.ts';
import {
  type Contradiction,
  describeConflict,
  describeStepTwice,
  describeUnknownModule,
  describeUnknownStep,
} from './plan-contradictions.ts';
import { type DraftStep, stepFromMaker, stepsFromPack } from './plan-steps.ts';
import type { RulePack } from './rule-pack.ts';
import { settleConstraints } from './settle-constraints.ts';

export type PlanStep = Omit<DraftStep, 'preference'> & {
  readonly needsPart: boolean;
  readonly needsCode: boolean;
  /** Column in a picture of the partial order: the length of the longest chain of steps before it. */
  readonly layer: number;
  /** The rules that put something directly before it, by id. */
  readonly because: readonly string[];
};

export type PlanConstraint = Constraint & {
  /** False when the shown order does not keep it; a contradiction then names it. */
  readonly holds: boolean;
};

export type Plan = {
  readonly modules: readonly PlanModule[];
  /** Steps in the order to do them in. */
  readonly steps: readonly PlanStep[];
  readonly order: readonly string[];
  readonly constraints: readonly PlanConstraint[];
  readonly contradictions: readonly Contradiction[];
  /** True when nothing contradicts, or every contradiction has been accepted by a named person. Else it is not to be offered as complete. */
  readonly isComplete: boolean;
  /** The steps of each layer, in order, and the links between them that no chain of others implies. */
  readonly layers: readonly (readonly string[])[];
  readonly links: readonly Link[];
  /** Sentences about modules that may have been forgotten. */
  readonly reminders: readonly string[];
};

export type PlanRequest = {
  readonly modules: readonly PlanModule[];
  readonly pack: RulePack;
  readonly makerOrder: MakerOrder | null;
};

type Drafted = {
  readonly steps: readonly DraftStep[];
  readonly ofMaker: readonly Constraint[];
  readonly misplaced: readonly Contradiction[];
};

function draftSteps({ modules, pack, makerOrder }: PlanRequest): Drafted {
  const steps = stepsFromPack(pack, modules);
  if (!makerOrder) return { steps, ofMaker: [], misplaced: [] };
  const misplaced: Contradiction[] = [];
  makerOrder.ownSteps.forEach((own, listed) => {
    if (steps.some(({ id }) => id === own.id)) misplaced.push(describeStepTwice(own.title, own.id, makerOrder));
    else if (own.moduleId !== null && !modules.some(({ id }) => id === own.moduleId))
      misplaced.push(describeUnknownModule(own.title, own.id, makerOrder));
    else steps.push(stepFromMaker(own, listed, makerOrder, modules));
  });
  const { constraints, unknownIds } = makerConstraints(makerOrder, steps);
  const named = new Set(misplaced.flatMap((one) => one.steps));
  const unknown = unknownIds.filter((id) => !named.has(id)).map((id) => describeUnknownStep(id, makerOrder));
  return { steps, ofMaker: constraints, misplaced: [...misplaced, ...unknown] };
}

function finishStep({ preference, ...step }: DraftStep, layer: number, kept: readonly Constraint[]): PlanStep {
  return {
    ...step,
    needsPart: step.gates.includes('part-in-hand'),
    needsCode: step.gates.includes('code-in-hand'),
    layer,
    because: [...new Set(kept.filter(({ after }) => after === step.id).map(({ ruleId }) => ruleId))],
  };
}

/**
 * The plan for these modules. The maker's order overrides the pack where the two disagree, and every rule that gives way is named in a
 * contradiction; so is every circle. `constraints` holds each one that was asked for, kept or not.
 * Order rules: the pack's, each with its own source; among steps that no rule orders, by stage, then module as named, then as listed.
 * @throws when two modules have the same id: that is a fault of the caller, not of a person.
 */
export function makePlan(request: PlanRequest): Plan {
  const { modules, pack, makerOrder } = request;
  if (new Set(modules.map(({ id }) => id)).size < modules.length) throw new Error('Two modules have the same id.');
  const { steps, ofMaker, misplaced } = draftSteps(request);
  const ofPack = packConstraints(pack, steps, modules);
  const { kept, conflicts } = settleConstraints(ofMaker, ofPack, makerOrder?.accepted ?? []);
  const keeps = new Set(kept);
  const order = linearExtension(
    steps.map(({ id, preference }) => ({ id, rank: preference })),
    kept,
  );
  const layerOf = layersOf(order, kept);
  const byId = new Map(steps.map((step) => [step.id, step]));
  const ordered = order.flatMap((id) => {
    const step = byId.get(id);
    return step ? [finishStep(step, layerOf.get(id) ?? 0, kept)] : [];
  });
  const titleOf = (id: string) => byId.get(id)?.title ?? id;
  const contradictions = [...misplaced, ...conflicts.map((conflict) => describeConflict(conflict, titleOf))];
  const layerCount = ordered.reduce((most, { layer }) => Math.max(most, layer + 1), 0);
  return {
    modules,
    steps: ordered,
    order,
    constraints: [...ofMaker, ...ofPack].map((constraint) => ({ ...constraint, holds: keeps.has(constraint) })),
    contradictions,
    isComplete: contradictions.every(({ accepted }) => accepted !== null),
    layers: Array.from({ length: layerCount }, (_, at) =>
      ordered.filter(({ layer }) => layer === at).map(({ id }) => id),
    ),
    links: neededLinks(order, kept),
    reminders: pack.reminders.filter(({ when }) => holdsFor(when, modules)).map(({ sentence }) => sentence),
  };
}
