// What a programming job must keep when it is entered or changed: a plan that the shop's rules really give, steps that were tried, ticks
// that say something.
import type { ChangeProblem } from '../vehicle/change-problem.ts';
import type { Vehicle } from '../vehicle/vehicle.ts';
import { gates } from './gate-kind.ts';
import { isToldByRecord } from './job-facts.ts';
import { makeKeptPlan } from './keep-plan.ts';
import { type KeptPlan, keptPlanSchema } from './kept-plan.ts';
import { indexOf } from './plan-index.ts';
import type { ProgrammingJobDraft, Tick } from './programming-job.ts';
import type { RulePack } from './rule-pack.ts';

type Planned = Pick<ProgrammingJobDraft, 'modules' | 'makerOrder' | 'plan'>;

/** As text with the keys in the schema's order, so that equal plans are equal texts. The day it was made on does not matter. */
function asText(plan: KeptPlan): string {
  return JSON.stringify({ ...keptPlanSchema.parse(plan), madeOn: '' });
}

/** What the plan follows from; the parts and code requests linked to a module are not among it. */
function whatPlanFollowsFrom({ modules, makerOrder }: Planned): string {
  return JSON.stringify([modules.map(({ id, kind, name, origin }) => [id, kind, name, origin]), makerOrder]);
}

/** True while the plan of a job follows from its modules and its maker's order as they are; the pack it was made from may be an older one. */
export function isPlanAsKept(before: Planned | null, job: Planned): boolean {
  return (
    before !== null &&
    whatPlanFollowsFrom(before) === whatPlanFollowsFrom(job) &&
    asText(before.plan) === asText(job.plan)
  );
}

function planProblems(before: Planned | null, job: ProgrammingJobDraft, pack: RulePack): ChangeProblem[] {
  if (isPlanAsKept(before, job)) return [];
  const { modules, makerOrder, plan } = job;
  if (new Set(modules.map(({ id }) => id)).size < modules.length)
    return [{ field: 'modules', sentence: 'Two modules have the same identity. Take one out and add it again.' }];
  const made = makeKeptPlan({ modules, pack, makerOrder }, plan.madeOn);
  // A plan without steps cannot be kept, whatever was sent.
  if (made.steps.length === 0 || asText(made) !== asText(plan))
    return [
      {
        field: 'plan',
        sentence:
          'This plan is not what the shop’s rules give for these modules now; they may have been changed meanwhile. Make the plan again and look at it.',
      },
    ];
  return [];
}

function tickProblem(job: ProgrammingJobDraft, tick: Tick, at: number): ChangeProblem[] {
  const { gate, moduleId } = tick;
  const field = `ticks.${at}`;
  const isOfModule = gates[gate].scope === 'module';
  if (isOfModule !== (moduleId !== null) || (isOfModule && !job.modules.some(({ id }) => id === moduleId)))
    return [{ field, sentence: 'This can only be vouched for where a step of the job asks for it.' }];
  if (isToldByRecord(tick, job))
    return [
      {
        field,
        sentence:
          gate === 'part-in-hand'
            ? 'A part is linked to this module. Note the part as received instead.'
            : 'A code request is linked to this module. Note its answer there instead.',
      },
    ];
  const index = indexOf(job.plan);
  const asked = job.plan.steps
    .filter((step) => !isOfModule || step.moduleId === moduleId)
    .flatMap(({ id }) => index.gatesOf.get(id) ?? [])
    .filter((one) => one.gate === gate);
  const provider = asked.flatMap(({ providers }) => providers)[0];
  if (provider)
    return [
      { field, sentence: `“${provider.title}” brings this about. Do that step, and write down that it was done.` },
    ];
  // Without a step that brings it about such a gate is not asked at all.
  return asked.length > 0 && !gates[gate].onlyWithStep
    ? []
    : [{ field, sentence: 'This can only be vouched for where a step of the job asks for it.' }];
}

function leftOutProblems(vehicle: Vehicle, job: ProgrammingJobDraft): ChangeProblem[] {
  const done = new Set(
    vehicle.attempts
      .filter(({ jobId, outcome }) => jobId === job.id && outcome === 'worked')
      .map(({ stepId }) => stepId),
  );
  return job.leftOut.flatMap(({ stepId }, at): ChangeProblem[] => {
    const step = job.plan.steps.find(({ id }) => id === stepId);
    if (!step) return [{ field: `leftOut.${at}`, sentence: 'This step is not in the plan, so it cannot be left out.' }];
    if (job.leftOut.findIndex((other) => other.stepId === stepId) !== at)
      return [{ field: `leftOut.${at}`, sentence: `“${step.title}” is left out already.` }];
    return done.has(stepId) ? [{ field: `leftOut.${at}`, sentence: `“${step.title}” is done already.` }] : [];
  });
}

/** Steps that were attempted stay in the plan, or are named as steps of an earlier one: else what happened would hang in the air. */
function lostStepProblems(vehicle: Vehicle, { id, plan, formerSteps }: ProgrammingJobDraft): ChangeProblem[] {
  const known = new Set([...plan.steps, ...formerSteps].map((step) => step.id));
  const before = vehicle.jobs.find((job) => job.id === id);
  const attempted = new Set(vehicle.attempts.filter(({ jobId }) => jobId === id).map(({ stepId }) => stepId));
  return [...attempted]
    .filter((stepId) => !known.has(stepId))
    .map((stepId) => {
      const title = [...(before?.plan.steps ?? []), ...(before?.formerSteps ?? [])].find(
        (step) => step.id === stepId,
      )?.title;
      return {
        field: 'plan',
        sentence: `“${title ?? stepId}” was attempted already and stays in the job. Make the plan again, which keeps it.`,
      };
    });
}

/** What stands against keeping the job as it is entered; empty when nothing does. */
export function jobProblems(vehicle: Vehicle, job: ProgrammingJobDraft, pack: RulePack): readonly ChangeProblem[] {
  const before = vehicle.jobs.find(({ id }) => id === job.id) ?? null;
  const problems = planProblems(before, job, pack);
  if (problems.length > 0) return problems;
  const isTickKnown = (tick: Tick) =>
    before?.ticks.some((one) => JSON.stringify(one) === JSON.stringify(tick)) ?? false;
  return [
    ...job.ticks.flatMap((tick, at) => (isTickKnown(tick) ? [] : tickProblem(job, tick, at))),
    ...leftOutProblems(vehicle, job),
    ...lostStepProblems(vehicle, job),
  ];
}
