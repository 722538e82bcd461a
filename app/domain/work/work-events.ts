// Everything that was done to a vehicle, as dated events with what each touched. Feeds held days and the staleness of sign-offs.
import type { ProgrammingJob } from '../programming/programming-job.ts';
import { compareDays, type Day } from '../shared/day.ts';
import type { Vehicle } from '../vehicle/vehicle.ts';
import { touchesOf, type WorkArea, type WorkTouch } from './work-area.ts';

export type WorkEvent = {
  readonly on: Day;
  /** Instant of entry where it tells the order within a day; null for facts that are updated later (a part fitted, a fault finished). */
  readonly enteredAt: string | null;
  readonly touches: readonly WorkTouch[];
  readonly what: string;
};

function areaOfFault(vehicle: Vehicle, faultId: string | null): WorkArea {
  return vehicle.faults.find((fault) => fault.id === faultId)?.area ?? 'other';
}

/**
 * True for a step that changes something in the vehicle: what exchanges, writes or matches a module with a tool, and what needs the supply.
 * Scanning, comparing, trying, and typing a code into a radio by hand change nothing that a later look would not see as well. A step that
 * the plan no longer has counts. Own definition ("common practice, no source").
 */
function doesStepTouch({ plan }: ProgrammingJob, stepId: string): boolean {
  const step = plan.steps.find(({ id }) => id === stepId);
  if (!step || step.stage === 'exchange' || step.gates.includes('supply-connected')) return true;
  return (step.stage === 'write' || step.stage === 'match') && step.routes.some((route) => route !== 'by-hand');
}

/** All work on the vehicle, earliest first: booked labour, programming attempts, parts fitted, sublet work back, repairs finished. */
export function workEvents(vehicle: Vehicle): readonly WorkEvent[] {
  const events: WorkEvent[] = [];
  for (const labour of vehicle.labour) {
    events.push({
      on: labour.workedOn,
      enteredAt: labour.entered.at,
      touches: touchesOf(labour.area),
      what: labour.what,
    });
  }
  for (const attempt of vehicle.attempts) {
    const job = vehicle.jobs.find((candidate) => candidate.id === attempt.jobId);
    events.push({
      on: attempt.on,
      enteredAt: attempt.entered.at,
      touches: job && doesStepTouch(job, attempt.stepId) ? touchesOf('control-module') : [],
      what: `programming attempt on ${job?.title ?? 'a module'}`,
    });
  }
  for (const part of vehicle.parts) {
    if (part.fittedOn === null) continue;
    const touches = touchesOf(areaOfFault(vehicle, part.faultId));
    events.push({ on: part.fittedOn, enteredAt: null, touches, what: `${part.what} fitted` });
  }
  for (const sublet of vehicle.sublets) {
    if (sublet.backOn === null) continue;
    events.push({ on: sublet.backOn, enteredAt: null, touches: touchesOf(sublet.area), what: `${sublet.what} back` });
  }
  for (const fault of vehicle.faults) {
    if (fault.doneOn === null) continue;
    events.push({ on: fault.doneOn, enteredAt: null, touches: touchesOf(fault.area), what: `${fault.what} finished` });
  }
  return events.sort((a, b) => compareDays(a.on, b.on));
}

/**
 * The first event that came after something signed or scanned and touched what it vouches for; null when nothing did.
 * Within the same day only events whose entry is timed are held against it: a part fitted that day was normally fitted before.
 */
export function laterTouch(
  events: readonly WorkEvent[],
  vouched: { readonly on: Day; readonly enteredAt: string },
  staleAfter: readonly WorkTouch[],
): WorkEvent | null {
  const isLater = (event: WorkEvent) =>
    event.on > vouched.on ||
    (event.on === vouched.on && event.enteredAt !== null && event.enteredAt > vouched.enteredAt);
  return events.find((event) => isLater(event) && event.touches.some((touch) => staleAfter.includes(touch))) ?? null;
}
