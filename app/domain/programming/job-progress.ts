// How far a programming job has come, derived from its attempts and what is in hand: what is done, what is next, what it waits for.

import { shippedCodeKinds } from '../codes/code-kinds.ts';
import { codeName, type NamedKinds } from '../codes/code-name.ts';
import { type Day, laterDay } from '../shared/day.ts';
import type { Vehicle } from '../vehicle/vehicle.ts';
import type { Attempt } from './attempt.ts';
import { codeRequestOf, isHere, jobFacts, partOf } from './job-facts.ts';
import type { KeptStep } from './kept-plan.ts';
import { type BlockingReason, stepReadiness } from './plan-gates.ts';
import { indexOf, type PlanIndex } from './plan-index.ts';
import type { JobModule, LeftOut, ProgrammingJob } from './programming-job.ts';

export type StepProgress = {
  readonly step: KeptStep;
  /** Place in the plan, from 1. */
  readonly number: number;
  /** 'next': can be done now. 'later': waits for other steps of the plan. 'blocked': something else is missing. */
  readonly state: 'done' | 'left-out' | 'next' | 'later' | 'blocked';
  readonly reasons: readonly BlockingReason[];
  readonly notes: readonly string[];
  /** What a blocked step waits for, in a few words; empty for all others. */
  readonly blockedBy: string;
  readonly attempts: readonly Attempt[];
  readonly doneOn: Day | null;
  readonly leftOut: LeftOut | null;
};

/** Somebody has to bring something before a job can go on. */
export type Missing = {
  /** 'body module is not here'. */
  readonly what: string;
  readonly who: 'manager' | 'technician' | 'outside';
};

export type JobProgress = {
  readonly job: ProgrammingJob;
  readonly steps: readonly StepProgress[];
  readonly isClosed: boolean;
  /** The day on which the last step was done or left out; null while one is open. */
  readonly closedOn: Day | null;
  /** The day from which all parts and codes are in hand that the job as a whole waits for; null while one is missing. */
  readonly canStartOn: Day | null;
  /** Parts and codes that are linked, not in hand, and hold up the job as a whole. One that holds up a single module alone is not among them. */
  readonly missing: readonly Missing[];
  /**
   * The steps worth doing now, in the plan's order. While the job waits for something from outside these are only the steps that secure
   * what is there: nobody takes a module out of a vehicle for a replacement that has not come.
   */
  readonly next: readonly StepProgress[];
  /** Why nothing is next; null when something is, or the job is closed. */
  readonly waitsFor: Missing | null;
};

type Seen = { readonly vehicle: Vehicle; readonly job: ProgrammingJob; readonly kinds: NamedKinds };

function missingPart({ vehicle }: Seen, module: JobModule | undefined): Missing {
  const part = module ? partOf(vehicle, module) : null;
  if (!part) return { what: `the part for ${module?.name ?? 'the module'} is not noted as here`, who: 'manager' };
  return { what: `${part.what} is not here`, who: part.orderedOn === null || part.returnedOn ? 'manager' : 'outside' };
}

function missingCode({ vehicle, kinds }: Seen, module: JobModule | undefined): Missing {
  const request = module ? codeRequestOf(vehicle, module) : null;
  if (!request) return { what: `no code is asked for ${module?.name ?? 'the module'}`, who: 'manager' };
  if (request.outcome === 'refused') return { what: `the ${codeName(request, kinds)} was refused`, who: 'manager' };
  if (request.closedOn !== null)
    return { what: `the request for the ${codeName(request, kinds)} was closed`, who: 'manager' };
  const who = request.askedOn === null ? 'manager' : 'outside';
  return { what: `the ${codeName(request, kinds)} has not been given`, who };
}

function missingFor(seen: Seen, step: KeptStep, { kind, what, sentence }: BlockingReason): Missing {
  const module = seen.job.modules.find(({ id }) => id === step.moduleId);
  if (kind === 'contradiction') return { what: 'the rules contradict each other', who: 'technician' };
  if (what === 'part-in-hand') return missingPart(seen, module);
  if (what === 'code-in-hand') return missingCode(seen, module);
  const words = sentence.replace(/[.].*$/s, '');
  const lowered = words.charAt(0).toLowerCase() + words.slice(1);
  return {
    what: what === 'keys-present' ? 'not every key is here' : lowered,
    who: what === 'ownership-proven' ? 'manager' : 'technician',
  };
}

/** Waits for another step: one that must come first, or one that brings about what a gate asks for. */
function waitsForStep(step: KeptStep, reasons: readonly BlockingReason[], index: PlanIndex, done: ReadonlySet<string>) {
  return reasons.some(
    ({ kind, what }) =>
      kind === 'step' ||
      (kind === 'gate' &&
        index.gatesOf
          .get(step.id)
          ?.some(({ gate, providers }) => gate === what && providers.some(({ id }) => !done.has(id)))),
  );
}

const fromOutside: readonly string[] = ['part-in-hand', 'code-in-hand'];

/** The linked parts and requests behind the steps that hold up the whole job: what is missing, and since when the rest is here. */
function outside(seen: Seen, steps: readonly StepProgress[], index: PlanIndex) {
  const { vehicle, job } = seen;
  const missing = new Map<string, Missing>();
  let inHandOn = job.openedOn;
  for (const { step, state } of steps) {
    if (!index.leadsToWholeJob.has(step.id)) continue;
    const module = job.modules.find(({ id }) => id === step.moduleId);
    if (!module || !step.gates.some((gate) => fromOutside.includes(gate))) continue;
    const isOpen = state !== 'done' && state !== 'left-out';
    const part = step.gates.includes('part-in-hand') ? partOf(vehicle, module) : null;
    if (part && isHere(part) && part.receivedOn !== null) inHandOn = laterDay(inHandOn, part.receivedOn);
    else if (part && isOpen) missing.set(part.id, missingPart(seen, module));
    const request = step.gates.includes('code-in-hand') ? codeRequestOf(vehicle, module) : null;
    if (request?.outcome === 'given' && request.answeredOn !== null) inHandOn = laterDay(inHandOn, request.answeredOn);
    else if (request && isOpen) missing.set(request.id, missingCode(seen, module));
  }
  return { missing: [...missing.values()], inHandOn };
}

const known = new WeakMap<NamedKinds, WeakMap<Vehicle, WeakMap<ProgrammingJob, JobProgress>>>();

/**
 * The steps of the plan with where each stands, and what the job as a whole waits for. Gates, waits and sheets ask for the same job of the
 * same record again and again; records and the shop's kinds of codes, which name what is missing, are never altered in place, so what was
 * worked out once holds.
 */
export function jobProgress(vehicle: Vehicle, job: ProgrammingJob, kinds: NamedKinds = shippedCodeKinds): JobProgress {
  const ofKinds = known.get(kinds) ?? new WeakMap<Vehicle, WeakMap<ProgrammingJob, JobProgress>>();
  known.set(kinds, ofKinds);
  const ofVehicle = ofKinds.get(vehicle) ?? new WeakMap<ProgrammingJob, JobProgress>();
  ofKinds.set(vehicle, ofVehicle);
  const before = ofVehicle.get(job);
  if (before) return before;
  const progress = workOutProgress({ vehicle, job, kinds });
  ofVehicle.set(job, progress);
  return progress;
}

function workOutProgress(seen: Seen): JobProgress {
  const { vehicle, job } = seen;
  const { plan } = job;
  const index = indexOf(plan);
  const facts = jobFacts(vehicle, job);
  const readiness = stepReadiness({ plan, modules: job.modules }, facts);
  const steps = readiness.map(({ stepId, state, reasons, notes }, at): StepProgress => {
    const step = index.stepOf.get(stepId) ?? plan.steps[at];
    if (!step) throw new Error(`The plan has no step ${stepId}.`);
    const isLater = state === 'blocked' && waitsForStep(step, reasons, index, facts.done);
    const first = reasons[0];
    return {
      step,
      number: at + 1,
      state: state === 'can-start' ? 'next' : isLater ? 'later' : state,
      reasons,
      notes,
      blockedBy: state === 'blocked' && !isLater && first ? missingFor(seen, step, first).what : '',
      attempts: facts.attempts.filter((attempt) => attempt.stepId === stepId),
      doneOn: facts.doneOn.get(stepId) ?? null,
      leftOut: state === 'left-out' ? (job.leftOut.find((one) => one.stepId === stepId) ?? null) : null,
    };
  });
  const open = steps.filter(({ state }) => state !== 'done' && state !== 'left-out');
  const isClosed = open.length === 0;
  const { missing, inHandOn } = outside(seen, steps, index);
  const next = open.filter(({ state, step }) => state === 'next' && (missing.length === 0 || step.stage === 'secure'));
  const blocked = open.find(({ state }) => state === 'blocked');
  const reason = blocked?.reasons[0];
  const blockedBy = blocked && reason ? missingFor(seen, blocked.step, reason) : null;
  return {
    job,
    steps,
    isClosed,
    closedOn: isClosed
      ? steps.reduce<Day>((last, { doneOn, leftOut }) => laterDay(last, doneOn ?? leftOut?.on ?? last), job.openedOn)
      : null,
    canStartOn: missing.length === 0 ? inHandOn : null,
    missing,
    next,
    waitsFor: isClosed || next.length > 0 ? null : (missing[0] ?? blockedBy),
  };
}
