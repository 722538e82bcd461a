// Takes from a vehicle's record how long each thing took that has come to its end. Judges nothing; the counting is in turnaround.ts.

import type { Check } from '../fleet/shop.ts';
import { jobProgress } from '../programming/job-progress.ts';
import type { ProgrammingJob } from '../programming/programming-job.ts';
import { judgeReadiness } from '../readiness/gates.ts';
import { inspectedOn } from '../readiness/work-gates.ts';
import { type Day, daysBetween } from '../shared/day.ts';
import type { Vehicle } from '../vehicle/vehicle.ts';
import { firstKnown } from '../work/first-known.ts';
import type { WorkArea } from '../work/work-area.ts';
import { repairInHandOn } from './repair-in-hand.ts';
import { type TurnaroundKind, timeOfKind } from './turnaround-settings.ts';
import { type WorkingCalendar, workingDaysBetween } from './working-calendar.ts';

export type TurnaroundCase = {
  readonly kind: TurnaroundKind;
  /** Narrow to wide; the widest, all cases of the kind, is left out. */
  readonly groups: readonly string[];
  /** In the kind's own time: days on which the shop works, or calendar days. */
  readonly days: number;
  /** Days after the promise, negative before it; null when nothing was promised. */
  readonly lateDays: number | null;
  /** From this day on the shop knew it. */
  readonly endedOn: Day;
};

/** The same supplier however it was typed. */
function folded(name: string): string {
  return name.trim().replace(/\s+/g, ' ').toLowerCase();
}

/** One group for a named provider, none for an unnamed one. */
export function providerGroups(provider: string): string[] {
  const name = folded(provider);
  return name === '' ? [] : [`provider: ${name}`];
}

/** For a code: this kind of this provider, then the provider, then the kind. */
export function codeGroups(provider: string, kind: string): string[] {
  const name = folded(provider);
  return name === '' ? [`kind: ${kind}`] : [`provider: ${name}, kind: ${kind}`, `provider: ${name}`, `kind: ${kind}`];
}

/** For a programming job: the kind of the first module that is exchanged, or of the first there is. */
export function moduleGroup({ modules }: Pick<ProgrammingJob, 'modules'>): string {
  const main = modules.find(({ origin }) => origin !== 'kept') ?? modules[0];
  return `module: ${main?.kind ?? 'other'}`;
}

/** For a fault whose repair is decided only others that were repaired compare; for an undecided one those that were left as well. */
export function faultGroups(area: WorkArea, decided: 'repaired' | null): string[] {
  return decided === null ? [`area: ${area}`] : [`repaired, area: ${area}`, 'repaired', `area: ${area}`];
}

/** Days from one to the other in the kind's own time, never negative. */
export function turnaroundDays(kind: TurnaroundKind, from: Day, to: Day, calendar: WorkingCalendar): number {
  return Math.max(0, timeOfKind[kind] === 'turn' ? workingDaysBetween(calendar, from, to) : daysBetween(from, to));
}

type Span = { readonly from: Day | null; readonly to: Day | null; readonly promisedOn?: Day | null };
type CaseOf = (
  kind: TurnaroundKind,
  groups: readonly string[],
  span: Span,
  /** Whole days that the work itself took, to leave the wait alone. */
  workedDays?: number,
) => TurnaroundCase[];

function caseMaker(calendar: WorkingCalendar): CaseOf {
  return (kind, groups, { from, to, promisedOn }, workedDays = 0) => {
    if (from === null || to === null) return [];
    const days = Math.max(0, turnaroundDays(kind, from, to, calendar) - workedDays);
    return [{ kind, groups, days, lateDays: promisedOn ? daysBetween(promisedOn, to) : null, endedOn: to }];
  };
}

function fromOutside(vehicle: Vehicle, caseOf: CaseOf): TurnaroundCase[] {
  const { purchase, arrival } = vehicle;
  const source = providerGroups(purchase.source);
  return [
    ...caseOf('arrival', source, { from: purchase.boughtOn, to: arrival.arrivedOn, promisedOn: arrival.expectedOn }),
    ...caseOf('paper', source, {
      from: purchase.boughtOn,
      to: purchase.paperReceivedOn,
      promisedOn: purchase.paperExpectedOn,
    }),
    ...vehicle.parts.flatMap((part) => [
      ...caseOf('order', [], { from: firstKnown(part.neededOn, part.orderedOn), to: part.orderedOn }),
      ...caseOf('part', providerGroups(part.supplier), {
        from: part.orderedOn,
        to: part.receivedOn,
        promisedOn: part.expectedOn,
      }),
    ]),
    ...vehicle.codeRequests.flatMap((request) => [
      ...caseOf('ask', [], { from: firstKnown(request.notedOn, request.askedOn), to: request.askedOn }),
      ...caseOf('code', codeGroups(request.askedOf, request.kind), {
        from: request.askedOn,
        to: request.answeredOn,
        promisedOn: request.expectedOn,
      }),
    ]),
    ...vehicle.sublets.flatMap((sublet) => [
      ...caseOf('send', [], { from: firstKnown(sublet.notedOn, sublet.sentOn), to: sublet.sentOn }),
      ...caseOf('sublet', providerGroups(sublet.supplier), {
        from: sublet.sentOn,
        to: sublet.backOn,
        promisedOn: sublet.expectedOn,
      }),
    ]),
  ];
}

/** Waiting for its turn only: whole days that the booked work itself filled are taken off. */
function inTheShop(vehicle: Vehicle, caseOf: CaseOf, minutesPerDay: number): TurnaroundCase[] {
  const repairs = vehicle.faults.flatMap((fault) => {
    const { decision, doneOn } = fault;
    const decided = caseOf('decide', [], { from: fault.foundOn, to: decision?.decidedOn ?? null });
    if (decision === null) return decided;
    if (decision.kind === 'leave')
      return [
        ...decided,
        ...caseOf('fault', faultGroups(fault.area, null), { from: decision.decidedOn, to: decision.decidedOn }),
      ];
    const minutes = vehicle.labour
      .filter(({ faultId }) => faultId === fault.id)
      .reduce((sum, labour) => sum + labour.minutes, 0);
    return [
      ...decided,
      ...caseOf('fault', faultGroups(fault.area, 'repaired'), { from: decision.decidedOn, to: doneOn }),
      ...caseOf(
        'repair',
        [`area: ${fault.area}`],
        { from: repairInHandOn(vehicle, fault), to: doneOn },
        Math.floor(minutes / minutesPerDay),
      ),
    ];
  });
  const jobs = vehicle.jobs.flatMap((job) => {
    const { canStartOn, closedOn } = jobProgress(vehicle, job);
    const leftOut = new Set(job.leftOut.map(({ stepId }) => stepId));
    const minutes = job.plan.steps.reduce(
      (sum, { id, typicalMinutes }) => sum + (leftOut.has(id) ? 0 : (typicalMinutes ?? 0)),
      0,
    );
    const workedDays = Math.floor(minutes / minutesPerDay);
    return caseOf('programming', [moduleGroup(job)], { from: canStartOn, to: closedOn }, workedDays);
  });
  return [...repairs, ...jobs];
}

function byStage(vehicle: Vehicle, caseOf: CaseOf, checklist: readonly Check[]): TurnaroundCase[] {
  const scannedOn = inspectedOn(vehicle);
  const { workFinishedOn, verifiedOn, presentedOn } = judgeReadiness(vehicle, checklist);
  return [
    ...caseOf('inspect', [], { from: vehicle.arrival.arrivedOn, to: scannedOn }),
    ...caseOf('unseen', [], { from: scannedOn, to: workFinishedOn }),
    ...caseOf('verify', [], { from: workFinishedOn, to: verifiedOn }),
    ...caseOf('present', [], { from: verifiedOn, to: presentedOn }),
  ];
}

/**
 * Every finished wait in the record of a sold or open vehicle. What is still open is not among them, so a history taken in the middle of
 * many long waits shows them too short until they end.
 */
export function turnaroundCases(
  vehicle: Vehicle,
  checklist: readonly Check[],
  calendar: WorkingCalendar,
): readonly TurnaroundCase[] {
  const caseOf = caseMaker(calendar);
  return [
    ...fromOutside(vehicle, caseOf),
    ...inTheShop(vehicle, caseOf, calendar.minutesPerDay),
    ...byStage(vehicle, caseOf, checklist),
  ];
}
