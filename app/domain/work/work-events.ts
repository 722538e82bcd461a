// Everything that was done to a vehicle, as dated events with what each touched. Feeds held days and the staleness of sign-offs.
import type { ProgrammingJob } from '../programming/programming-job.ts';
import { compareDays, type Day } from '../shared/day.ts';
import type { Vehicle } from '../vehicle/vehicle.ts';
import { touchesOf, type WorkArea, type WorkTouch } from './work-area.ts';

export type WorkEvent = {
  readonly on: Day;
  /** Instant of entry where it tells the order within a day; null for facts that are updated later (a part fitted, a fault finished). */
  readonly enteredAt: string | null;
  /** How long it took, where it was booked after it was done; null for what is entered as it happens. */
  readonly minutes: number | null;
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
      minutes: labour.minutes,
      touches: touchesOf(labour.area),
      what: labour.what,
    });
  }
  for (const attempt of vehicle.attempts) {
    const job = vehicle.jobs.find((candidate) => candidate.id === attempt.jobId);
    events.push({
      on: attempt.on,
      enteredAt: attempt.entered.at,
      minutes: null,
      touches: job && doesStepTouch(job, attempt.stepId) ? touchesOf('control-module') : [],
      what: `programming attempt on ${job?.title ?? 'a module'}`,
    });
  }
  for (const part of vehicle.parts) {
    if (part.fittedOn === null) continue;
    const touches = touchesOf(areaOfFault(vehicle, part.faultId));
    events.push({ on: part.fittedOn, enteredAt: null, minutes: null, touches, what: `${part.what} fitted` });
  }
  for (const sublet of vehicle.sublets) {
    if (sublet.backOn === null) continue;
    events.push({
      on: sublet.backOn,
      enteredAt: null,
      minutes: null,
      touches: touchesOf(sublet.area),
      what: `${sublet.what} back`,
    });
  }
  for (const fault of vehicle.faults) {
    if (fault.doneOn === null) continue;
    events.push({
      on: fault.doneOn,
      enteredAt: null,
      minutes: null,
      touches: touchesOf(fault.area),
      what: `${fault.what} finished`,
    });
  }
  return events.sort((a, b) => compareDays(a.on, b.on));
}

const msPerMinute = 60_000;

/** Whole or part minutes from one instant to another. */
function minutesBetween(from: string, to: string): number {
  return (Date.parse(to) - Date.parse(from)) / msPerMinute;
}

/**
 * Whether an event came after something signed or scanned. On another day the days tell. Within a day: an attempt by the instant of its
 * entry; booked labour, which is entered when it is over, only if its time fits between the signature and the entry, because work that
 * does not fit was begun before; what carries no instant (a part fitted, a fault finished) was normally done before. What may have come
 * after counts as after: signing again costs less than a signature that vouches for nothing. Own rule ("common practice, no source").
 */
function cameAfter(event: WorkEvent, vouched: { readonly on: Day; readonly enteredAt: string }): boolean {
  if (event.on !== vouched.on) return event.on > vouched.on;
  if (event.enteredAt === null || event.enteredAt <= vouched.enteredAt) return false;
  return event.minutes === null || minutesBetween(vouched.enteredAt, event.enteredAt) >= event.minutes;
}

/** The first event that came after something signed or scanned and touched what it vouches for; null when nothing did. */
export function laterTouch(
  events: readonly WorkEvent[],
  vouched: { readonly on: Day; readonly enteredAt: string },
  staleAfter: readonly WorkTouch[],
): WorkEvent | null {
  return (
    events.find((event) => cameAfter(event, vouched) && event.touches.some((touch) => staleAfter.includes(touch))) ??
    null
  );
}
