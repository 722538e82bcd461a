// Tells the programming of an invented vehicle: jobs with plans of the general pack, and attempts at their steps. What may be told is
// decided in ruled-record.ts.
import type { AttemptOutcome } from '../../domain/programming/attempt.ts';
import { generalPack } from '../../domain/programming/general-pack.ts';
import { jobProgress } from '../../domain/programming/job-progress.ts';
import { makeKeptPlan } from '../../domain/programming/keep-plan.ts';
import type { KeptStep } from '../../domain/programming/kept-plan.ts';
import type { ModuleKind } from '../../domain/programming/module-kind.ts';
import type { ModuleOrigin } from '../../domain/programming/module-origin.ts';
import { partsOfStepId } from '../../domain/programming/plan-step-id.ts';
import type { JobModule, ProgrammingJob, Tick } from '../../domain/programming/programming-job.ts';
import type { ProgrammingRoute } from '../../domain/programming/programming-route.ts';
import { remakePlan } from '../../domain/programming/remake-plan.ts';
import { vinTail } from '../../domain/vehicle/vin.ts';
import { RuledRecord } from './ruled-record.ts';
import { people } from './sample-shop.ts';

type Person = (typeof people)[keyof typeof people];

/** A module of a job, and what it is linked to. */
export type ToldModule = readonly [
  kind: ModuleKind,
  name: string,
  origin: ModuleOrigin,
  links?: { readonly part?: string; readonly code?: string },
];

type Told = {
  readonly message?: string;
  readonly volts?: readonly [number, number, number];
  readonly by?: Person;
  readonly evidence?: string;
  /** Why it was begun although something blocked it. */
  readonly regardless?: string;
};

type Doing = {
  readonly by?: Person;
  /** A step that is left for later. */
  readonly skip?: string;
};

export class ProgrammingStory extends RuledRecord {
  #jobOf(id: string): ProgrammingJob {
    const job = this.told().data.jobs.find((one) => one.id === id);
    if (!job) throw new Error(`No job ${id}.`);
    return job;
  }

  /** The step of this template; with several modules the first that has it. */
  #stepOf(job: string, template: string): KeptStep {
    const step = this.#jobOf(job).plan.steps.find(
      ({ id }) => id === template || partsOfStepId(id).templateId === template,
    );
    if (!step) throw new Error(`The plan of ${job} has no step ${template}.`);
    return step;
  }

  openJob(title: string, told: readonly ToldModule[], fault: string | null = null): string {
    const modules = told.map(
      ([kind, name, origin, links = {}], at): JobModule => ({
        id: `mod${at + 1}`,
        kind,
        name,
        origin,
        partId: links.part ?? null,
        codeRequestId: links.code ?? null,
      }),
    );
    const item = {
      openedOn: this.day,
      title,
      faultId: fault,
      modules,
      plan: makeKeptPlan({ modules, pack: generalPack, makerOrder: null }, this.day),
      makerOrder: null,
      ticks: [],
      leftOut: [],
      formerSteps: [],
      note: '',
    };
    return this.put('jobs', item, people.technician);
  }

  /** Another part or code request for the first module, or another origin; then the plan is made again. */
  relink(job: string, links: { partId?: string; codeRequestId?: string; origin?: ModuleOrigin }): void {
    const { entered: _entered, ...before } = this.#jobOf(job);
    const modules = before.modules.map((module, at) => (at === 0 ? { ...module, ...links } : module));
    const changed = { ...before, modules };
    const { attempts } = this.told().data;
    const next = links.origin ? remakePlan(changed, attempts, generalPack, this.day).job : changed;
    this.amend(
      'jobs',
      job,
      { modules, plan: next.plan, formerSteps: next.formerSteps, leftOut: next.leftOut },
      people.technician,
    );
  }

  vouch(job: string, gate: Tick['gate'], moduleId: string | null = null, by: Person = people.technician): void {
    const ticks = [...this.#jobOf(job).ticks, { gate, moduleId, on: this.day, by }];
    this.amend('jobs', job, { ticks }, by);
  }

  leaveOut(job: string, template: string, reason: string, by: Person = people.technician): void {
    const { id } = this.#stepOf(job, template);
    const leftOut = [...this.#jobOf(job).leftOut, { stepId: id, reason, by, on: this.day }];
    this.amend('jobs', job, { leftOut }, by);
  }

  /** One attempt at a step. The last eight of the VIN are read wherever the step asks for them. */
  attempt(job: string, template: string, outcome: AttemptOutcome, route: ProgrammingRoute, more: Told = {}): void {
    const step = this.#stepOf(job, template);
    this.#try(job, step, outcome, route, more);
  }

  #try(job: string, step: KeptStep, outcome: AttemptOutcome, route: ProgrammingRoute, more: Told): void {
    const [voltsBefore, voltsLowest, voltsAfter] = more.volts ?? [null, null, null];
    const by = more.by ?? people.technician;
    const item = {
      jobId: job,
      stepId: step.id,
      on: this.day,
      person: by,
      route,
      outcome,
      vinRead: step.cannotBeUndone ? vinTail(this.told().data.identity.vin) : '',
      override: more.regardless === undefined ? null : { by, reason: more.regardless },
      voltsBefore,
      voltsLowest,
      voltsAfter,
      message: more.message ?? '',
      evidence: more.evidence ?? '',
    };
    this.put('attempts', item, by);
  }

  /** Does every step that can be done, in the plan's order and each by its first route, up to this one or to the end. */
  workUpTo(job: string, template: string | null, { by = people.technician, skip = '' }: Doing = {}): void {
    const end = template === null ? null : this.#stepOf(job, template).id;
    for (let left = 60; left > 0; left -= 1) {
      const kept = this.#jobOf(job);
      const steps = jobProgress(this.told().data, kept).steps;
      const before =
        end === null
          ? steps
          : steps.slice(
              0,
              steps.findIndex(({ step }) => step.id === end),
            );
      const next = before.find(({ state, step }) => state === 'next' && partsOfStepId(step.id).templateId !== skip);
      if (!next) return;
      this.#try(job, next.step, 'worked', next.step.routes[0] ?? 'by-hand', { by });
    }
  }

  isFinished(job: string): boolean {
    return jobProgress(this.told().data, this.#jobOf(job)).isClosed;
  }
}
