// A new attempt with sensible defaults, and which steps need no more said about them than that they are done. Pure.
import type {
  Attempt,
  AttemptDraft,
  ProgrammingJob,
  ProgrammingRoute,
  ProgrammingStep,
} from '../../../../app/domain/programming/programming-job.ts';
import type { Day } from '../../../../app/domain/shared/day.ts';

/** No write, nothing permanent, no code: one press is enough to record that it was done. */
export function isSimple(step: ProgrammingStep): boolean {
  return !step.cannotBeUndone && !step.needsCode && !step.cautions.some((caution) => caution === 'never-interrupt');
}

/** A route that did not work is not offered first again; what else there is, the person knows. */
function likelyRoute(step: ProgrammingStep, attempts: readonly Attempt[]): ProgrammingRoute {
  if (isSimple(step)) return 'by-hand';
  const last = attempts[attempts.length - 1];
  if (last === undefined) return 'on-vehicle';
  const order: readonly ProgrammingRoute[] = ['on-vehicle', 'bench', 'pass-through', 'sent-out'];
  const tried = new Set(attempts.filter((attempt) => attempt.outcome !== 'worked').map((attempt) => attempt.route));
  return order.find((route) => !tried.has(route)) ?? last.route;
}

export function freshAttempt(
  id: string,
  {
    job,
    step,
    today,
    person,
    attempts,
  }: {
    readonly job: ProgrammingJob;
    readonly step: ProgrammingStep;
    readonly today: Day;
    readonly person: string;
    readonly attempts: readonly Attempt[];
  },
): AttemptDraft {
  return {
    id,
    jobId: job.id,
    stepId: step.id,
    on: today,
    person,
    route: likelyRoute(step, attempts),
    outcome: 'worked',
    voltsBefore: null,
    voltsLowest: null,
    voltsAfter: null,
    message: '',
  };
}
