// What the record of a vehicle says about one programming job: steps done and left out, routes that failed, what is in hand. Judges nothing.
import type { CodeRequest } from '../codes/code-request.ts';
import type { Part } from '../parts/part.ts';
import type { Day } from '../shared/day.ts';
import type { Vehicle } from '../vehicle/vehicle.ts';
import type { Attempt } from './attempt.ts';
import type { PlanFacts } from './plan-gates.ts';
import type { JobModule, ProgrammingJob, ProgrammingJobDraft, Tick } from './programming-job.ts';
import type { ProgrammingRoute } from './programming-route.ts';

export type JobFacts = PlanFacts & {
  readonly attempts: readonly Attempt[];
  readonly doneOn: ReadonlyMap<string, Day>;
};

/** Received and not sent back. */
export function isHere(part: Part): boolean {
  return part.receivedOn !== null && part.returnedOn === null;
}

export function partOf(vehicle: Pick<Vehicle, 'parts'>, module: JobModule): Part | null {
  return vehicle.parts.find(({ id }) => id === module.partId) ?? null;
}

export function codeRequestOf(vehicle: Pick<Vehicle, 'codeRequests'>, module: JobModule): CodeRequest | null {
  return vehicle.codeRequests.find(({ id }) => id === module.codeRequestId) ?? null;
}

/** True where the record itself tells whether the gate is met: a part or a code request is linked. A tick says nothing there. */
export function isToldByRecord({ gate, moduleId }: Pick<Tick, 'gate' | 'moduleId'>, job: ProgrammingJobDraft): boolean {
  const module = job.modules.find(({ id }) => id === moduleId);
  if (gate === 'part-in-hand') return module !== undefined && module.partId !== null;
  return gate === 'code-in-hand' && module !== undefined && module.codeRequestId !== null;
}

function gatesMet(vehicle: Vehicle, job: ProgrammingJob): PlanFacts['gatesMet'] {
  const met: PlanFacts['gatesMet'][number][] = job.ticks.filter((tick) => !isToldByRecord(tick, job));
  if (vehicle.scans.some(({ kind }) => kind === 'pre-repair')) met.push({ gate: 'codes-recorded', moduleId: null });
  if (vehicle.codeRequests.some(({ proof }) => proof !== null)) met.push({ gate: 'ownership-proven', moduleId: null });
  for (const module of job.modules) {
    const part = partOf(vehicle, module);
    if (part && isHere(part)) met.push({ gate: 'part-in-hand', moduleId: module.id });
    if (codeRequestOf(vehicle, module)?.outcome === 'given') met.push({ gate: 'code-in-hand', moduleId: module.id });
  }
  return met;
}

/** The facts as the record stands; hand in the record of an earlier day for how they stood then. */
export function jobFacts(vehicle: Vehicle, job: ProgrammingJob): JobFacts {
  const attempts = vehicle.attempts.filter(({ jobId }) => jobId === job.id);
  const doneOn = new Map<string, Day>();
  const failedRoutes = new Map<string, ProgrammingRoute[]>();
  for (const { stepId, outcome, on, route } of attempts) {
    if (outcome === 'worked' && on > (doneOn.get(stepId) ?? '')) doneOn.set(stepId, on);
    if (outcome === 'failed') failedRoutes.set(stepId, [...(failedRoutes.get(stepId) ?? []), route]);
  }
  return {
    attempts,
    doneOn,
    done: new Set(doneOn.keys()),
    leftOut: new Set(job.leftOut.map(({ stepId }) => stepId)),
    failedRoutes,
    gatesMet: gatesMet(vehicle, job),
  };
}
