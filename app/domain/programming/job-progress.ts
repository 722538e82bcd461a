// How far a programming job has come, derived from its attempts. The order rules of a full plan are not here.
import type { Day } from '../shared/day.ts';
import { laterDay } from '../shared/day.ts';
import type { Vehicle } from '../vehicle/vehicle.ts';
import type { Attempt, ProgrammingJob, ProgrammingStep } from './programming-job.ts';

export type StepProgress = {
  readonly step: ProgrammingStep;
  readonly state: 'done' | 'left-out' | 'next' | 'later' | 'blocked';
  /** Why a blocked step cannot be started now. */
  readonly blockedBy: string;
  readonly attempts: readonly Attempt[];
  readonly doneOn: Day | null;
};

export type JobProgress = {
  readonly job: ProgrammingJob;
  readonly steps: readonly StepProgress[];
  readonly isClosed: boolean;
  /** The day of the attempt that finished the last step; null while open, or when every step was left out. */
  readonly closedOn: Day | null;
  /** The day on which everything needed was in hand; null while something is missing. */
  readonly canStartOn: Day | null;
  readonly missing: readonly string[];
};

/** Received and not sent back. */
function isHere(part: Vehicle['parts'][number]): boolean {
  return part.receivedOn !== null && part.returnedOn === null;
}

function missingForJob(vehicle: Vehicle, job: ProgrammingJob): { missing: string[]; inHandOn: Day } {
  const missing: string[] = [];
  let inHandOn = job.openedOn;
  const part = vehicle.parts.find((candidate) => candidate.id === job.partId);
  if (part) {
    if (!isHere(part)) missing.push(`${part.what} is not here`);
    else inHandOn = laterDay(inHandOn, part.receivedOn ?? inHandOn);
  }
  const request = vehicle.codeRequests.find((candidate) => candidate.id === job.codeRequestId);
  if (request) {
    if (request.answeredOn === null) missing.push('the code has not been given');
    else if (request.outcome === 'refused') missing.push('the code was refused');
    else inHandOn = laterDay(inHandOn, request.answeredOn);
  }
  return { missing, inHandOn };
}

function blockedBy(vehicle: Vehicle, job: ProgrammingJob, step: ProgrammingStep): string {
  const part = vehicle.parts.find((candidate) => candidate.id === job.partId);
  if (step.needsPart && part && !isHere(part)) return `${part.what} is not here`;
  const request = vehicle.codeRequests.find((candidate) => candidate.id === job.codeRequestId);
  if (step.needsCode && request && request.outcome !== 'given')
    return request.outcome === 'refused' ? 'the code was refused' : 'the code has not been given';
  if (step.needsCode && job.codeRequestId === null) return 'no code request is linked to this job';
  return '';
}

/** Steps in the job's order; the first that is neither done nor left out is next, unless what it needs is missing. */
export function jobProgress(vehicle: Vehicle, job: ProgrammingJob): JobProgress {
  const attemptsOfJob = vehicle.attempts.filter((attempt) => attempt.jobId === job.id);
  let isNextTaken = false;
  const steps = job.steps.map((step): StepProgress => {
    const attempts = attemptsOfJob.filter((attempt) => attempt.stepId === step.id);
    const doneOn = attempts
      .filter((attempt) => attempt.outcome === 'worked')
      .reduce<Day | null>((latest, attempt) => (latest === null ? attempt.on : laterDay(latest, attempt.on)), null);
    if (doneOn !== null) return { step, state: 'done', blockedBy: '', attempts, doneOn };
    if (step.leftOutReason !== '') return { step, state: 'left-out', blockedBy: '', attempts, doneOn: null };
    if (isNextTaken) return { step, state: 'later', blockedBy: '', attempts, doneOn: null };
    isNextTaken = true;
    const reason = blockedBy(vehicle, job, step);
    return { step, state: reason === '' ? 'next' : 'blocked', blockedBy: reason, attempts, doneOn: null };
  });
  const isClosed = steps.length > 0 && !isNextTaken;
  const closedOn = isClosed
    ? steps.reduce<Day>((latest, step) => (step.doneOn ? laterDay(latest, step.doneOn) : latest), job.openedOn)
    : null;
  const { missing, inHandOn } = missingForJob(vehicle, job);
  return { job, steps, isClosed, closedOn, canStartOn: missing.length === 0 ? inHandOn : null, missing };
}
