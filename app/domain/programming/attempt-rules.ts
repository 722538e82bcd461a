// Whether an attempt may be entered: its step must be one that could be begun on that day, by this person, on this vehicle.
import type { Day } from '../shared/day.ts';
import { recordAsOf } from '../time/record-as-of.ts';
import type { ChangeProblem } from '../vehicle/change-problem.ts';
import type { Vehicle } from '../vehicle/vehicle.ts';
import type { Attempt, AttemptDraft } from './attempt.ts';
import { jobFacts } from './job-facts.ts';
import { stepReadiness } from './plan-gates.ts';
import { mayStart, type StartRefusal } from './start-step.ts';

const fieldOf: Readonly<Record<StartRefusal['code'], string>> = {
  'already-done': 'stepId',
  'left-out': 'stepId',
  blocked: 'override',
  'never-overridden': 'stepId',
  'override-unnamed': 'override.by',
  'override-without-reason': 'override.reason',
  vin: 'vinRead',
};

/** What was decided when it was begun; a correction of anything else is not judged again. */
function isBegunAsBefore(before: Attempt, { jobId, stepId, vinRead, override }: AttemptDraft): boolean {
  return (
    before.jobId === jobId &&
    before.stepId === stepId &&
    before.vinRead === vinRead &&
    JSON.stringify(before.override) === JSON.stringify(override)
  );
}

/**
 * What stands against the attempt; empty when nothing does. A new one is judged by the record as it stood at the end of its day, so that
 * work may be written down later than it was done. The last eight of the VIN are asked wherever a step cannot be undone.
 */
export function attemptProblems(vehicle: Vehicle, attempt: AttemptDraft, today: Day): readonly ChangeProblem[] {
  const job = vehicle.jobs.find(({ id }) => id === attempt.jobId);
  if (!job || attempt.on > today) return [];
  const before = vehicle.attempts.find(({ id }) => id === attempt.id);
  if (before && isBegunAsBefore(before, attempt)) return [];
  const step = job.plan.steps.find(({ id }) => id === attempt.stepId);
  if (!step)
    return [{ field: 'stepId', sentence: `The plan of “${job.title}” has no such step. Choose one of its steps.` }];
  if (!step.routes.includes(attempt.route))
    return [{ field: 'route', sentence: 'This step is not done by this route. Choose one of those given.' }];
  const others = vehicle.attempts.filter(({ id }) => id !== attempt.id);
  const then = recordAsOf({ ...vehicle, attempts: others }, attempt.on);
  const jobThen = then.jobs.find(({ id }) => id === job.id);
  if (!jobThen)
    return [
      { field: 'on', sentence: `The job was opened on ${job.openedOn}, after this day. Correct one of the two days.` },
    ];
  const facts = jobFacts(then, jobThen);
  const readiness = stepReadiness({ plan: job.plan, modules: job.modules }, facts).find(
    ({ stepId }) => stepId === step.id,
  );
  if (!readiness) return [];
  const { override, vinRead } = attempt;
  const started = mayStart({ step, readiness, override, vinOnRecord: vehicle.identity.vin, vinTyped: vinRead });
  if (!started.ok) return [{ field: fieldOf[started.error.code], sentence: started.error.sentence }];
  if (override !== null && started.value === null)
    return [
      { field: 'override', sentence: 'Nothing blocks this step, so there is nothing to go past. Take the reason out.' },
    ];
  return [];
}
