// Makes the plan of a job again, for other modules, another order of the maker or a changed rule pack. Nothing that happened is lost by it.
import type { Day } from '../shared/day.ts';
import type { Attempt } from './attempt.ts';
import { makeKeptPlan } from './keep-plan.ts';
import type { ProgrammingJobDraft } from './programming-job.ts';
import type { RulePack } from './rule-pack.ts';

export type Remade = {
  readonly job: ProgrammingJobDraft;
  /** Titles of steps that come with the new plan, and of those that go. */
  readonly added: readonly string[];
  readonly gone: readonly string[];
  /** Titles of attempted steps that the new plan does not have. Their attempts stay in the record. */
  readonly losing: readonly string[];
  /** True when the steps that stay come in another order. */
  readonly isReordered: boolean;
};

/** The job with its plan made from this pack today. Steps left out, ticks and attempts stay wherever their step or module does. */
export function remakePlan(
  job: ProgrammingJobDraft,
  attempts: readonly Pick<Attempt, 'jobId' | 'stepId'>[],
  pack: RulePack,
  today: Day,
): Remade {
  const { modules, makerOrder, plan: before } = job;
  const plan = makeKeptPlan({ modules, pack, makerOrder }, today);
  const now = new Set(plan.steps.map(({ id }) => id));
  const then = new Set(before.steps.map(({ id }) => id));
  const attempted = new Set(attempts.filter(({ jobId }) => jobId === job.id).map(({ stepId }) => stepId));
  const former = [...before.steps, ...job.formerSteps]
    .filter(({ id }) => attempted.has(id) && !now.has(id))
    .map(({ id, title }) => ({ id, title }));
  const titles = (steps: readonly { readonly title: string }[]) => steps.map(({ title }) => title);
  const stays = plan.steps.filter(({ id }) => then.has(id)).map(({ id }) => id);
  return {
    job: {
      ...job,
      plan,
      leftOut: job.leftOut.filter(({ stepId }) => now.has(stepId)),
      ticks: job.ticks.filter(({ moduleId }) => moduleId === null || modules.some(({ id }) => id === moduleId)),
      formerSteps: former,
    },
    added: titles(plan.steps.filter(({ id }) => !then.has(id))),
    gone: titles(before.steps.filter(({ id }) => !now.has(id))),
    losing: titles(former.filter(({ id }) => then.has(id))),
    isReordered: before.steps.filter(({ id }) => now.has(id)).some(({ id }, at) => id !== stays[at]),
  };
}
