// The gates that the facts of the work decide by themselves: arrival, scan, decisions, parts, codes, programming, sublet, repairs.

import { codeName, type NamedKinds } from '../codes/code-name.ts';
import { failedRuns, failsSince, promisedFor } from '../codes/request-life.ts';
import { isOpenRepair } from '../diagnosis/fault.ts';
import { type JobProgress, jobProgress } from '../programming/job-progress.ts';
import { type Day, laterDay } from '../shared/day.ts';
import { plural } from '../shared/text.ts';
import type { Vehicle } from '../vehicle/vehicle.ts';
import { type Gate, type GateItem, isHolding } from './gate.ts';
import { refusalSettledOn } from './refused-code.ts';

function latest(days: readonly (Day | null)[]): Day | null {
  return days.reduce<Day | null>(
    (last, day) => (day === null ? last : last === null ? day : laterDay(last, day)),
    null,
  );
}

function gate(key: string, title: string, items: readonly GateItem[], metOn: Day | null, isNeeded = true): Gate {
  if (items.length > 0) return { key, title, state: 'open', metOn: null, items };
  return isNeeded
    ? { key, title, state: 'met', metOn, items }
    : { key, title, state: 'not-needed', metOn: null, items };
}

function arrivedGate({ arrival, purchase }: Vehicle): Gate {
  const items: GateItem[] =
    arrival.arrivedOn === null
      ? [
          {
            text: arrival.expectedOn
              ? `In transit, expected on ${arrival.expectedOn}`
              : 'In transit, no day of arrival known',
            who: 'outside',
            since: purchase.boughtOn,
            place: { section: 'arrival' },
          },
        ]
      : [];
  return gate('arrived', 'Here', items, arrival.arrivedOn);
}

/** The day of the first scan; null before it. A vehicle that does not answer is scanned too: its modules are recorded as silent. */
export function inspectedOn(vehicle: Vehicle): Day | null {
  return vehicle.scans.reduce<Day | null>(
    (first, scan) => (first === null || scan.takenOn < first ? scan.takenOn : first),
    null,
  );
}

function inspectedGate(vehicle: Vehicle): Gate {
  const scannedOn = inspectedOn(vehicle);
  const items: GateItem[] =
    scannedOn === null
      ? [
          {
            text: 'Scan on arrival is missing',
            who: 'technician',
            since: vehicle.arrival.arrivedOn,
            place: { list: 'scans', id: null },
          },
        ]
      : [];
  return gate('inspected', 'Scanned on arrival', items, scannedOn);
}

function decidedGate({ faults }: Vehicle): Gate {
  const items = faults
    .filter((fault) => fault.decision === null)
    .map(
      (fault): GateItem => ({
        text: `Decide: ${fault.what}`,
        who: 'manager',
        since: fault.foundOn,
        place: { list: 'faults', id: fault.id },
      }),
    );
  return gate(
    'decided',
    'Every fault decided',
    items,
    latest(faults.map((fault) => fault.decision?.decidedOn ?? null)),
    faults.length > 0,
  );
}

/** A module that is here is fitted where its job says so, not before: the job's next step is the move. */
function stepBeforeFitting(vehicle: Vehicle, partId: string, kinds?: NamedKinds): string | null {
  const job = vehicle.jobs.find((candidate) => candidate.modules.some((module) => module.partId === partId));
  return job ? (jobProgress(vehicle, job, kinds).next[0]?.step.title ?? null) : null;
}

function partItem(vehicle: Vehicle, part: Vehicle['parts'][number], kinds?: NamedKinds): GateItem | null {
  const place = { list: 'parts', id: part.id } as const;
  if (part.fittedOn !== null || part.returnedOn !== null) return null;
  if (part.receivedOn !== null) {
    const next = stepBeforeFitting(vehicle, part.id, kinds);
    const text = next === null ? `Fit or send back: ${part.what}` : `Here, not fitted: ${part.what}; next: ${next}`;
    return { text, who: 'technician', since: part.receivedOn, place };
  }
  if (part.orderedOn === null) return { text: `Order: ${part.what}`, who: 'manager', since: part.neededOn, place };
  const promisedOn = promisedFor(part);
  const due = promisedOn ? `, expected on ${promisedOn}` : ', no day promised';
  return {
    text: `Part on its way: ${part.what}${part.supplier ? ` from ${part.supplier}` : ''}${due}`,
    who: 'outside',
    since: part.orderedOn,
    place,
  };
}

function partsGate(vehicle: Vehicle, kinds?: NamedKinds): Gate {
  const { parts } = vehicle;
  const items = parts.map((part) => partItem(vehicle, part, kinds)).filter((item) => item !== null);
  return gate(
    'parts',
    'Parts in and fitted',
    items,
    latest(parts.map((part) => part.fittedOn ?? part.returnedOn)),
    parts.length > 0,
  );
}

/** The day on which nothing more was wanted of it: its first right try after wrong ones, its answer, or its closing. */
function doneOn({ answeredOn, closedOn, ...life }: Vehicle['codeRequests'][number]): Day | null {
  const last = failedRuns({ ...life, closedOn }).at(-1);
  return last?.until ?? answeredOn ?? closedOn;
}

function codesGate(vehicle: Vehicle, kinds?: NamedKinds): Gate {
  const { codeRequests } = vehicle;
  const items = codeRequests.flatMap((request): GateItem[] => {
    const place = { list: 'codeRequests', id: request.id } as const;
    if (request.closedOn !== null) return [];
    const name = codeName(request, kinds);
    const failing = failsSince(request);
    if (failing !== null) return [{ text: `Does not work: ${name}`, who: 'manager', since: failing, place }];
    if (request.outcome === 'given') return [];
    if (request.outcome === 'refused') {
      if (refusalSettledOn(vehicle, request) !== null) return [];
      return [{ text: `Refused, find another way: ${name}`, who: 'manager', since: request.answeredOn, place }];
    }
    if (request.askedOn === null) return [{ text: `Ask for: ${name}`, who: 'manager', since: request.notedOn, place }];
    const expectedOn = promisedFor(request);
    const due = expectedOn ? `, expected on ${expectedOn}` : '';
    return [
      {
        text: `Asked${request.askedOf ? ` ${request.askedOf}` : ''} for: ${name}${due}`,
        who: 'outside',
        since: request.askedOn,
        place,
      },
    ];
  });
  return gate('codes', 'Codes in hand', items, latest(codeRequests.map(doneOn)), codeRequests.length > 0);
}

function jobItem({ job, steps, next, waitsFor, canStartOn }: JobProgress): GateItem {
  const left = steps.filter((step) => step.state !== 'done' && step.state !== 'left-out').length;
  const [first] = next;
  const how = first ? `, next: ${first.step.title}` : waitsFor ? ` (waits: ${waitsFor.what})` : '';
  return {
    text: `Program ${job.title}: ${plural(left, 'step', 'steps')} left${how}`,
    who: first || waitsFor === null ? 'technician' : waitsFor.who,
    since: canStartOn ?? job.openedOn,
    place: { list: 'jobs', id: job.id },
  };
}

function programmedGate(vehicle: Vehicle, kinds?: NamedKinds): Gate {
  const progress = vehicle.jobs.map((job) => jobProgress(vehicle, job, kinds));
  const items = progress.filter((job) => !job.isClosed).map(jobItem);
  return gate(
    'programmed',
    'Programming finished',
    items,
    latest(progress.map((job) => job.closedOn)),
    vehicle.jobs.length > 0,
  );
}

function subletGate({ sublets }: Vehicle): Gate {
  const items = sublets
    .filter((sublet) => sublet.backOn === null)
    .map((sublet): GateItem => {
      const place = { list: 'sublets', id: sublet.id } as const;
      if (sublet.sentOn === null)
        return { text: `Send out: ${sublet.what}`, who: 'manager', since: sublet.notedOn, place };
      const promisedOn = promisedFor(sublet);
      const due = promisedOn ? `, expected on ${promisedOn}` : '';
      return {
        text: `Out: ${sublet.what}${sublet.supplier ? ` at ${sublet.supplier}` : ''}${due}`,
        who: 'outside',
        since: sublet.sentOn,
        place,
      };
    });
  return gate('sublet', 'Sublet work back', items, latest(sublets.map((sublet) => sublet.backOn)), sublets.length > 0);
}

/** What somebody else still owes before this fault can be finished; null when the technician can go on. */
export function owedFor(vehicle: Vehicle, faultId: string, kinds?: NamedKinds): string | null {
  const part = vehicle.parts.find(
    (candidate) => candidate.faultId === faultId && candidate.receivedOn === null && candidate.returnedOn === null,
  );
  if (part) return `${part.what} is not here`;
  const sublet = vehicle.sublets.find((candidate) => candidate.faultId === faultId && candidate.backOn === null);
  if (sublet) return `${sublet.what} is not back`;
  const request = vehicle.codeRequests.find(
    (candidate) => candidate.faultId === faultId && candidate.answeredOn === null && candidate.closedOn === null,
  );
  if (request) return `${codeName(request, kinds)} has not been given`;
  const job = vehicle.jobs.find(
    (candidate) => candidate.faultId === faultId && !jobProgress(vehicle, candidate, kinds).isClosed,
  );
  return job ? `${job.title} is not programmed` : null;
}

function repairedGate(vehicle: Vehicle, kinds?: NamedKinds): Gate {
  const { faults } = vehicle;
  const items = faults.filter(isOpenRepair).map((fault): GateItem => {
    const owed = owedFor(vehicle, fault.id, kinds);
    return {
      text: `${fault.decision?.kind === 'replace' ? 'Replace' : 'Repair'}: ${fault.what}${owed ? ` (waits: ${owed})` : ''}`,
      who: owed ? 'outside' : 'technician',
      since: fault.decision?.decidedOn ?? fault.foundOn,
      place: { list: 'faults', id: fault.id },
    };
  });
  const isNeeded = faults.some((fault) => fault.decision !== null && fault.decision.kind !== 'leave');
  return gate('repaired', 'Repairs finished', items, latest(faults.map((fault) => fault.doneOn)), isNeeded);
}

/** The gates that come before the work is proven, in the order of the way. */
export function workGates(vehicle: Vehicle, kinds?: NamedKinds): readonly Gate[] {
  return [
    arrivedGate(vehicle),
    inspectedGate(vehicle),
    decidedGate(vehicle),
    partsGate(vehicle, kinds),
    codesGate(vehicle, kinds),
    programmedGate(vehicle, kinds),
    subletGate(vehicle),
    repairedGate(vehicle, kinds),
  ];
}

/** The gates that can be judged without looking at the plans of programming. */
const quickGates = [arrivedGate, inspectedGate, decidedGate, partsGate, subletGate, codesGate];

/**
 * Whether any of `workGates` holds, without working out what they say: the past asks this of every day on which something changed, and on
 * most of them a quick one holds.
 */
export function isWorkOpen(vehicle: Vehicle): boolean {
  return (
    vehicle.faults.some(isOpenRepair) ||
    quickGates.some((judge) => isHolding(judge(vehicle))) ||
    isHolding(programmedGate(vehicle))
  );
}
