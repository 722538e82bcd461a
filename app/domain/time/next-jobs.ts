// What can be done now on which vehicle, in the order that keeps the money lost to holding small, and what cannot be done and why.
import { codeName, type NamedKinds } from '../codes/code-name.ts';
import { isOpenRepair } from '../diagnosis/fault.ts';
import type { Shop } from '../fleet/shop.ts';
import { furtherVehicleHolding } from '../money/vehicle-holding.ts';
import { type JobProgress, jobProgress, type StepProgress } from '../programming/job-progress.ts';
import { refusalSettledOn } from '../readiness/refused-code.ts';
import { owedFor } from '../readiness/work-gates.ts';
import { type Cents, showCents } from '../shared/cents.ts';
import type { Day } from '../shared/day.ts';
import type { Vehicle } from '../vehicle/vehicle.ts';
import type { CautionKey } from '../work/cautions.ts';
import { orderByWeightedTime } from './order-by-weighted-time.ts';

export type NextTask = {
  readonly kind: 'step' | 'repair';
  /** The job or the fault. */
  readonly factId: string;
  readonly what: string;
  readonly minutes: number;
  readonly cannotBeUndone: boolean;
  readonly cautions: readonly CautionKey[];
};

export type HeldTask = Pick<NextTask, 'kind' | 'factId' | 'what'> & { readonly why: string };

export type VehicleTasks = {
  readonly vehicle: Vehicle;
  readonly tasks: readonly NextTask[];
  readonly held: readonly HeldTask[];
};

export type NextVehicle = VehicleTasks & {
  /** Work left that nothing holds up, in minutes of one person. */
  readonly minutesLeft: number;
  /** What one more day of holding it costs. */
  readonly lossCentsPerDay: Cents;
  /** Why it stands where it stands; names amounts of money. */
  readonly why: string;
  /** The same without any amount. */
  readonly whyWithoutMoney: string;
};

export type NextJobs = { readonly order: readonly NextVehicle[]; readonly waiting: readonly VehicleTasks[] };

type Minutes = Shop['turnaround']['minutes'];

function stepTask({ job }: JobProgress, { step }: StepProgress, minutes: Minutes): NextTask {
  const { title, typicalMinutes, cannotBeUndone, cautions } = step;
  const what = `${job.title}: ${title}`;
  return { kind: 'step', factId: job.id, what, minutes: typicalMinutes ?? minutes.step, cannotBeUndone, cautions };
}

function jobTasks(progress: JobProgress, minutes: Minutes): VehicleTasks['tasks'] {
  return progress.next.map((one) => stepTask(progress, one, minutes));
}

/** What a job waits for: as a whole, or step by step where the rest can go on. */
function jobHeld({ job, steps, missing, waitsFor }: JobProgress): HeldTask[] {
  const held = { kind: 'step', factId: job.id } as const;
  if (missing.length > 0)
    return [{ ...held, what: `Program ${job.title}`, why: missing.map(({ what }) => what).join('; ') }];
  const blocked = steps
    .filter(({ state }) => state === 'blocked')
    .map(({ step, blockedBy }) => ({ ...held, what: `${job.title}: ${step.title}`, why: blockedBy }));
  return blocked.length > 0 || waitsFor === null
    ? blocked
    : [{ ...held, what: `Program ${job.title}`, why: waitsFor.what }];
}

/** A code that was refused, while nobody has found another way; null when there is none. */
function refusedFor(vehicle: Vehicle, faultId: string, kinds: NamedKinds): string | null {
  const refused = vehicle.codeRequests.find(
    (request) =>
      request.faultId === faultId && request.outcome === 'refused' && refusalSettledOn(vehicle, request) === null,
  );
  return refused ? `${codeName(refused, kinds)} was refused; another way is to be found` : null;
}

function repairs(vehicle: Vehicle, minutes: Minutes, kinds: NamedKinds): { tasks: NextTask[]; held: HeldTask[] } {
  const tasks: NextTask[] = [];
  const held: HeldTask[] = [];
  for (const fault of vehicle.faults.filter(isOpenRepair)) {
    const verb = fault.decision?.kind === 'replace' ? 'Replace' : 'Repair';
    const about = { kind: 'repair', factId: fault.id, what: `${verb}: ${fault.what}` } as const;
    const why = owedFor(vehicle, fault.id, kinds) ?? refusedFor(vehicle, fault.id, kinds);
    // Its own programming job is listed by itself, with what that waits for.
    if (vehicle.jobs.some((job) => job.faultId === fault.id && !jobProgress(vehicle, job, kinds).isClosed)) continue;
    if (why !== null) {
      held.push({ ...about, why });
      continue;
    }
    const booked = vehicle.labour
      .filter(({ faultId }) => faultId === fault.id)
      .reduce((sum, labour) => sum + labour.minutes, 0);
    const left = Math.max(0, (fault.decision?.estimateMinutes ?? minutes.repair) - booked);
    const cautions: CautionKey[] =
      fault.area === 'high-voltage' ? ['high-voltage'] : fault.area === 'airbag' ? ['airbag-battery'] : [];
    tasks.push({ ...about, minutes: left, cannotBeUndone: false, cautions });
  }
  return { tasks, held };
}

/** Work left on a job that nothing from outside holds up: all its open steps, or only those worth doing now. */
function minutesOf({ steps, next, missing }: JobProgress, minutes: Minutes): number {
  const counted = missing.length > 0 ? next : steps.filter(({ state }) => state === 'next' || state === 'later');
  return counted.reduce((sum, { step }) => sum + (step.typicalMinutes ?? minutes.step), 0);
}

function tasksOf(
  vehicle: Vehicle,
  minutes: Minutes,
  kinds: NamedKinds,
): VehicleTasks & { readonly minutesLeft: number } {
  const open = vehicle.jobs.map((job) => jobProgress(vehicle, job, kinds)).filter(({ isClosed }) => !isClosed);
  const repair = repairs(vehicle, minutes, kinds);
  const tasks = [...open.flatMap((progress) => jobTasks(progress, minutes)), ...repair.tasks];
  const held = [...open.flatMap(jobHeld), ...repair.held];
  if (vehicle.arrival.arrivedOn === null) {
    const notHere = tasks.map(({ kind, factId, what }) => ({ kind, factId, what, why: 'the vehicle is not here yet' }));
    return { vehicle, tasks: [], held: [...notHere, ...held], minutesLeft: 0 };
  }
  const going = open.filter(({ next }) => next.length > 0);
  const minutesLeft =
    going.reduce((sum, progress) => sum + minutesOf(progress, minutes), 0) +
    repair.tasks.reduce((sum, task) => sum + task.minutes, 0);
  return { vehicle, tasks, held, minutesLeft };
}

function sayWithoutMoney(place: number, count: number, next: string | null): string {
  if (count === 1) return 'The only vehicle on which something can be done now.';
  if (next === null) return 'An hour of work here saves less than on those above.';
  return place === 0
    ? 'First, because an hour of work here saves the most.'
    : `An hour of work here saves more than on ${next}.`;
}

/**
 * Open programming steps and repairs of all vehicles that are not sold. Vehicles come by money lost a day for each minute of work left
 * (see order-by-weighted-time.ts), equals in the order given.
 */
export function nextJobs(
  vehicles: readonly { readonly vehicle: Vehicle; readonly heldDays: number }[],
  shop: Pick<Shop, 'rates' | 'fundingPlans' | 'turnaround' | 'codeKinds'>,
  today: Day,
): NextJobs {
  const { minutes } = shop.turnaround;
  const all = vehicles
    .filter(({ vehicle }) => vehicle.sale === null)
    .map(({ vehicle, heldDays }) => ({
      ...tasksOf(vehicle, minutes, shop.codeKinds),
      lossCentsPerDay: furtherVehicleHolding(vehicle, shop, { today, heldDays })(1),
    }));
  const free = all.filter(({ tasks }) => tasks.length > 0);
  const byId = new Map(free.map((one) => [one.vehicle.id, one]));
  const { order } = orderByWeightedTime(
    free.map(({ vehicle, minutesLeft, lossCentsPerDay }) => ({
      id: vehicle.id,
      what: vehicle.identity.stockNumber,
      minutesLeft,
      lossCentsPerDay: Math.max(0, lossCentsPerDay),
      blockedBy: null,
    })),
    showCents,
  );
  return {
    order: order.flatMap(({ job, why }, place): NextVehicle[] => {
      const one = byId.get(job.id);
      const next = order[place + 1]?.job.what ?? null;
      return one ? [{ ...one, why, whyWithoutMoney: sayWithoutMoney(place, order.length, next) }] : [];
    }),
    waiting: all.filter(({ held }) => held.length > 0).map(({ vehicle, tasks, held }) => ({ vehicle, tasks, held })),
  };
}
