// The record as it stood at the end of an earlier day: later facts left out, later dates blanked. Nothing is judged here.
import type { RequestLife } from '../codes/request-facts.ts';
import type { ProgrammingJob } from '../programming/programming-job.ts';
import type { Day } from '../shared/day.ts';
import type { Vehicle } from '../vehicle/vehicle.ts';
import { firstKnown } from '../work/first-known.ts';

/** The job itself where nothing in it is later, so that what is known of its plan is not worked out again for each day. */
function jobAsOf(job: ProgrammingJob, day: Day): ProgrammingJob {
  const isPast = ({ on }: { readonly on: Day }) => on <= day;
  if (job.ticks.every(isPast) && job.leftOut.every(isPast)) return job;
  return { ...job, ticks: job.ticks.filter(isPast), leftOut: job.leftOut.filter(isPast) };
}

/** Chases, tries, forms filed, warnings kept and the closing of a request, as far as they had happened. */
function lifeAsOf({ chases, tries, filing, keptWarnings, closedOn, closedWhy }: RequestLife, day: Day) {
  const isClosed = closedOn !== null && closedOn <= day;
  const upTo = (other: Day | null): Day | null => (other !== null && other <= day ? other : null);
  return {
    chases: chases.filter(({ chasedOn }) => chasedOn <= day),
    tries: tries.filter(({ triedOn }) => triedOn <= day),
    filing:
      filing === null
        ? null
        : {
            ...filing,
            transactionOn: upTo(filing.transactionOn),
            filedOn: upTo(filing.filedOn),
            reference: upTo(filing.filedOn) === null ? '' : filing.reference,
          },
    keptWarnings: keptWarnings.filter(({ keptOn }) => keptOn <= day),
    closedOn: isClosed ? closedOn : null,
    closedWhy: isClosed ? closedWhy : '',
  };
}

/**
 * What the record said at the end of `day`. Facts without a date of their own (budgets, what a job is linked to, which plan it
 * follows) are taken as they are now: the record does not say when they were set. The asking price is the present one from its first day.
 */
export function recordAsOf(vehicle: Vehicle, day: Day): Vehicle {
  const past = (other: Day | null): Day | null => (other !== null && other <= day ? other : null);
  const { pricedOn } = vehicle.targets;
  const isPricedLater = pricedOn !== null && pricedOn > day;
  return {
    ...vehicle,
    purchase: { ...vehicle.purchase, paperReceivedOn: past(vehicle.purchase.paperReceivedOn) },
    arrival: { ...vehicle.arrival, arrivedOn: past(vehicle.arrival.arrivedOn) },
    targets: isPricedLater ? { ...vehicle.targets, askingCents: null, pricedOn: null } : vehicle.targets,
    scans: vehicle.scans.filter((scan) => scan.takenOn <= day),
    batteryReadings: vehicle.batteryReadings.filter((reading) => reading.measuredOn <= day),
    faults: vehicle.faults
      .filter((fault) => fault.foundOn <= day)
      .map((fault) => ({
        ...fault,
        decision: fault.decision !== null && fault.decision.decidedOn <= day ? fault.decision : null,
        doneOn: past(fault.doneOn),
      })),
    jobs: vehicle.jobs.filter((job) => job.openedOn <= day).map((job) => jobAsOf(job, day)),
    attempts: vehicle.attempts.filter((attempt) => attempt.on <= day),
    parts: vehicle.parts
      .filter((part) => firstKnown(part.neededOn, part.orderedOn) <= day)
      .map((part) => ({
        ...part,
        orderedOn: past(part.orderedOn),
        receivedOn: past(part.receivedOn),
        fittedOn: past(part.fittedOn),
        returnedOn: past(part.returnedOn),
        coreReturnedOn: past(part.coreReturnedOn),
        chases: part.chases.filter(({ chasedOn }) => chasedOn <= day),
      })),
    codeRequests: vehicle.codeRequests
      .filter((request) => firstKnown(request.notedOn, request.askedOn) <= day)
      .map((request) => ({
        ...request,
        askedOn: past(request.askedOn),
        answeredOn: past(request.answeredOn),
        outcome: past(request.answeredOn) === null ? null : request.outcome,
        askedHow: past(request.askedOn) === null ? null : request.askedHow,
        ...lifeAsOf(request, day),
      })),
    labour: vehicle.labour.filter((labour) => labour.workedOn <= day),
    sublets: vehicle.sublets
      .filter((sublet) => firstKnown(sublet.notedOn, sublet.sentOn) <= day)
      .map((sublet) => ({
        ...sublet,
        sentOn: past(sublet.sentOn),
        backOn: past(sublet.backOn),
        chases: sublet.chases.filter(({ chasedOn }) => chasedOn <= day),
      })),
    otherCosts: vehicle.otherCosts.filter((cost) => cost.spentOn <= day),
    signOffs: vehicle.signOffs.filter((signOff) => signOff.signedOn <= day),
    notes: vehicle.notes.filter((note) => note.on <= day),
    attachments: vehicle.attachments.filter((attachment) => attachment.on <= day),
    sale: vehicle.sale !== null && vehicle.sale.soldOn <= day ? vehicle.sale : null,
  };
}

/** The days on which anything in the record that a gate looks at may have changed, in order, each once. */
export function changeDays(vehicle: Vehicle): readonly Day[] {
  const days = new Set<Day>();
  const add = (...found: readonly (Day | null)[]) => {
    for (const day of found) if (day !== null) days.add(day);
  };
  add(vehicle.purchase.paperReceivedOn, vehicle.arrival.arrivedOn, vehicle.targets.pricedOn);
  for (const scan of vehicle.scans) add(scan.takenOn);
  for (const fault of vehicle.faults) add(fault.foundOn, fault.decision?.decidedOn ?? null, fault.doneOn);
  for (const job of vehicle.jobs)
    add(job.openedOn, ...job.ticks.map(({ on }) => on), ...job.leftOut.map(({ on }) => on));
  for (const attempt of vehicle.attempts) add(attempt.on);
  for (const part of vehicle.parts) add(part.neededOn, part.orderedOn, part.receivedOn, part.fittedOn, part.returnedOn);
  for (const request of vehicle.codeRequests)
    add(
      request.notedOn,
      request.askedOn,
      request.answeredOn,
      request.closedOn,
      ...request.tries.map(({ triedOn }) => triedOn),
    );
  for (const labour of vehicle.labour) add(labour.workedOn);
  for (const sublet of vehicle.sublets) add(sublet.notedOn, sublet.sentOn, sublet.backOn);
  for (const signOff of vehicle.signOffs) add(signOff.signedOn);
  return [...days].sort();
}
