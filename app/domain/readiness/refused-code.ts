// When a refused code request stops mattering: asked again elsewhere, or what needed the code was settled without it.
import type { CodeRequest } from '../codes/code-request.ts';
import { isOpenRepair } from '../diagnosis/fault.ts';
import { jobProgress } from '../programming/job-progress.ts';
import { type Day, laterDay } from '../shared/day.ts';
import type { Vehicle } from '../vehicle/vehicle.ts';
import { firstKnown } from '../work/first-known.ts';

function sameModule(a: CodeRequest, b: CodeRequest): boolean {
  return a.kind === b.kind && a.module.trim().toLowerCase() === b.module.trim().toLowerCase();
}

/** The first day on which another request for the same code was known after the refusal, or was given at any time. */
function replacedOn(vehicle: Vehicle, refused: CodeRequest, refusedOn: Day): Day | null {
  const days = vehicle.codeRequests.flatMap((other): Day[] => {
    if (other.id === refused.id || !sameModule(other, refused)) return [];
    if (other.outcome === 'given' && other.answeredOn !== null && other.answeredOn <= refusedOn) return [refusedOn];
    const known = firstKnown(other.notedOn, other.askedOn);
    return known >= refusedOn ? [known] : [];
  });
  return days.sort()[0] ?? null;
}

/**
 * The day the fault that needed the code was finished, left as it is, decided again, or a part was ordered for it after the refusal:
 * that is another way. Null while none of this happened, or when there is no fault.
 */
function faultSettledOn(vehicle: Vehicle, faultId: string | null, refusedOn: Day): Day | null {
  const fault = vehicle.faults.find((candidate) => candidate.id === faultId);
  if (!fault || fault.decision === null) return null;
  const { decidedOn } = fault.decision;
  const days = vehicle.parts.flatMap((part) =>
    part.faultId === faultId && part.orderedOn !== null && part.orderedOn >= refusedOn ? [part.orderedOn] : [],
  );
  if (decidedOn >= refusedOn || !isOpenRepair(fault)) days.push(fault.doneOn ?? decidedOn);
  return days.sort()[0] ?? null;
}

/** The day on which the last job that counted on the code was finished; null while one is open, or when none did. */
function jobsClosedOn(vehicle: Vehicle, requestId: string): Day | null {
  const closed = vehicle.jobs
    .filter((job) => job.modules.some((module) => module.codeRequestId === requestId))
    .map((job) => jobProgress(vehicle, job).closedOn);
  let latest: Day | null = null;
  for (const day of closed) {
    if (day === null) return null;
    latest = latest === null ? day : laterDay(latest, day);
  }
  return latest;
}

/**
 * The day from which a refused request needs nobody's decision any more; null while somebody has to find another way, and for a request
 * that was not refused. Own definition ("common practice, no source").
 */
export function refusalSettledOn(vehicle: Vehicle, request: CodeRequest): Day | null {
  if (request.outcome !== 'refused' || request.answeredOn === null) return null;
  const settled =
    request.closedOn ??
    replacedOn(vehicle, request, request.answeredOn) ??
    faultSettledOn(vehicle, request.faultId, request.answeredOn) ??
    jobsClosedOn(vehicle, request.id);
  return settled === null ? null : laterDay(settled, request.answeredOn);
}
