// On which days a programming job waited for somebody to go on with it: stretches between a step that could be done and its being done.
import { type Day, laterDay } from '../shared/day.ts';
import type { Vehicle } from '../vehicle/vehicle.ts';
import { codeRequestOf, partOf } from './job-facts.ts';
import type { JobProgress, StepProgress } from './job-progress.ts';
import { indexOf, type PlanIndex } from './plan-index.ts';

export type JobWait = {
  readonly from: Day;
  /** Null while a step that could be done is not. */
  readonly until: Day | null;
  /** The step that ends it. */
  readonly stepTitle: string;
};

/** The day on which the step was over, by being done or left out; null while it is open. */
function overOn({ doneOn, leftOut }: StepProgress): Day | null {
  return doneOn ?? leftOut?.on ?? null;
}

/** The day on which what the step's own module needs from outside came in; the job's own opening where it needs nothing. Null: not here. */
function inHandOn(vehicle: Vehicle, { job }: JobProgress, { step }: StepProgress): Day | null {
  const module = job.modules.find(({ id }) => id === step.moduleId);
  const days: (Day | null)[] = [];
  const part = module && step.gates.includes('part-in-hand') ? partOf(vehicle, module) : null;
  if (part) days.push(part.returnedOn === null ? part.receivedOn : null);
  const request = module && step.gates.includes('code-in-hand') ? codeRequestOf(vehicle, module) : null;
  if (request) days.push(request.outcome === 'given' ? request.answeredOn : null);
  let latest = job.openedOn;
  for (const day of days) {
    if (day === null) return null;
    latest = laterDay(latest, day);
  }
  return latest;
}

/** Since when the step could be done; null when it cannot be yet. A step that was tried could be done by then, whatever the rest says. */
function doableSince(
  vehicle: Vehicle,
  progress: JobProgress,
  one: StepProgress,
  { before }: PlanIndex,
  byId: ReadonlyMap<string, StepProgress>,
): Day | null {
  const triedOn = one.attempts.map(({ on }) => on).sort()[0] ?? null;
  const since = (() => {
    const start = progress.canStartOn;
    const own = inHandOn(vehicle, progress, one);
    if (start === null || own === null || one.state === 'later' || one.state === 'blocked') return null;
    let latest = laterDay(start, own);
    for (const { step } of before.get(one.step.id) ?? []) {
      const over = byId.get(step.id);
      const day = over ? overOn(over) : null;
      if (day !== null) latest = laterDay(latest, day);
    }
    return latest;
  })();
  if (since === null || (triedOn !== null && triedOn < since)) return triedOn;
  return since;
}

/**
 * The stretches on which a step could be done and was not, joined where they touch. They begin once everything is in hand that the job as
 * a whole waits for: before that it waits for the part or the code, though something could be prepared. Own definition ("common practice,
 * no source").
 */
export function jobWaits(vehicle: Vehicle, progress: JobProgress): readonly JobWait[] {
  const index = indexOf(progress.job.plan);
  const byId = new Map(progress.steps.map((one) => [one.step.id, one]));
  const waits = progress.steps.flatMap((one): JobWait[] => {
    const from = doableSince(vehicle, progress, one, index, byId);
    // While the job waits for something from outside, a first try is work of its day, not a wait that stays open.
    if (from === null || (progress.canStartOn === null && overOn(one) === null)) return [];
    return [{ from, until: overOn(one), stepTitle: one.step.title }];
  });
  const joined: JobWait[] = [];
  for (const wait of [...waits].sort((a, b) => (a.from < b.from ? -1 : a.from > b.from ? 1 : 0))) {
    const last = joined[joined.length - 1];
    if (!last || (last.until !== null && last.until < wait.from)) {
      joined.push(wait);
      continue;
    }
    // The step that lasts longest names the stretch; of open ones the first in the plan's order.
    const outlasts = last.until !== null && (wait.until === null || wait.until > last.until);
    if (outlasts) joined[joined.length - 1] = { ...wait, from: last.from };
  }
  return joined.filter(({ from, until }) => until === null || until > from);
}
