// A programming job with a real plan of the general pack on a vehicle, and attempts at its steps entered by the program's own rules.
import { generalPack } from '../../app/domain/programming/general-pack.ts';
import { makeKeptPlan } from '../../app/domain/programming/keep-plan.ts';
import type { MakerOrder } from '../../app/domain/programming/maker-order.ts';
import type { JobModule, ProgrammingJob } from '../../app/domain/programming/programming-job.ts';
import type { Day } from '../../app/domain/shared/day.ts';
import type { Vehicle } from '../../app/domain/vehicle/vehicle.ts';
import { makeAttempt, makeCodeRequest, makeJob, makePart, makeVehicle } from './vehicle-maker.ts';

/** Worked example of a public encyclopedia article on the VIN; its check digit holds. */
export const exampleVin = '1M8GDM9AXKP042788';
export const exampleTail = 'KP042788';

export function jobModule(
  kind: JobModule['kind'],
  origin: JobModule['origin'],
  about: Partial<JobModule> = {},
): JobModule {
  return { id: kind, kind, name: kind, origin, partId: null, codeRequestId: null, ...about };
}

export function plannedJob(
  openedOn: Day,
  modules: readonly JobModule[],
  about: Partial<ProgrammingJob> & { makerOrder?: MakerOrder | null } = {},
): ProgrammingJob {
  const makerOrder = about.makerOrder ?? null;
  const plan = makeKeptPlan({ modules, pack: generalPack, makerOrder }, openedOn);
  return { ...makeJob(openedOn), title: 'Body', modules: [...modules], plan, makerOrder, ...about };
}

/** A used body module with its keys and radio: the part is here, the immobiliser code given, the radio's code not asked for. */
export function bodyExchange(openedOn: Day): { vehicle: Vehicle; job: ProgrammingJob } {
  const part = makePart(openedOn, { what: 'body module', orderedOn: openedOn, receivedOn: openedOn });
  const code = makeCodeRequest(openedOn, {
    proof: { document: 'invoice', checkedOn: openedOn, checkedBy: 'manager-1' },
    askedOn: openedOn,
    answeredOn: openedOn,
    outcome: 'given',
  });
  const job = plannedJob(
    openedOn,
    [
      jobModule('body', 'used', { partId: part.id, codeRequestId: code.id, name: 'Body' }),
      jobModule('keys', 'kept', { codeRequestId: code.id, name: 'Keys' }),
      jobModule('radio', 'kept', { name: 'Radio' }),
    ],
    { ticks: [{ gate: 'keys-present', moduleId: null, on: openedOn, by: 'technician-1' }] },
  );
  const vehicle = makeVehicle(openedOn, {
    identity: { vin: exampleVin },
    parts: [part],
    codeRequests: [code],
    jobs: [job],
  });
  return { vehicle, job };
}

/** The vehicle with the steps before this one done on that day, those that were named left open. */
export function doneUpTo(
  vehicle: Vehicle,
  job: ProgrammingJob,
  stepId: string,
  on: Day,
  open: readonly string[] = [],
): Vehicle {
  const place = job.plan.steps.findIndex(({ id }) => id === stepId);
  if (place < 0) throw new Error(`The plan has no step ${stepId}.`);
  const attempts = job.plan.steps
    .slice(0, place)
    .filter(({ id }) => !open.includes(id))
    .map(({ id, routes }) => makeAttempt(on, job, id, { route: routes[0] ?? 'by-hand' }));
  return { ...vehicle, attempts: [...vehicle.attempts, ...attempts] };
}
