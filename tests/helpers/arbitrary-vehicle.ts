// Random valid vehicle records for property tests: every kind of fact, days in order and never after today, links that exist.

import fc from 'fast-check';
import type { Chase, CodeTry } from '../../app/domain/codes/request-facts.ts';
import { plainCode } from '../../app/domain/diagnosis/scan.ts';
import type { Attempt } from '../../app/domain/programming/attempt.ts';
import { attemptProblems } from '../../app/domain/programming/attempt-rules.ts';
import { jobProgress } from '../../app/domain/programming/job-progress.ts';
import type { JobModule } from '../../app/domain/programming/programming-job.ts';
import { addDays, type Day } from '../../app/domain/shared/day.ts';
import type { Vehicle } from '../../app/domain/vehicle/vehicle.ts';
import { vinTail } from '../../app/domain/vehicle/vin.ts';
import { workAreaSchema } from '../../app/domain/work/work-area.ts';
import { jobModule, plannedJob } from './planned-job.ts';
import {
  cleaned,
  makeAttempt,
  makeBatteryReading,
  makeCodeRequest,
  makeDecision,
  makeFault,
  makeLabour,
  makeNote,
  makeOtherCost,
  makePart,
  makeScan,
  makeSignOff,
  makeSublet,
  makeVehicle,
  roadTest,
  stampAt,
} from './vehicle-maker.ts';

export type VehicleAndToday = { readonly vehicle: Vehicle; readonly today: Day };

const firstDay = '2026-01-05';
const area = fc.constantFrom(...workAreaSchema.options);
const cents = fc.integer({ min: 0, max: 400_000 });
const minutes = fc.integer({ min: 0, max: 900 });
const chance = fc.double({ min: 0, max: 1, noNaN: true });

function few<Value>(value: fc.Arbitrary<Value>, maxLength = 4): fc.Arbitrary<Value[]> {
  return fc.array(value, { maxLength });
}

/** Up to `count` days in order; the ones that never came are null and stand last. */
function daysInOrder(count: number, heldDays: number): fc.Arbitrary<(Day | null)[]> {
  return fc
    .array(fc.integer({ min: 0, max: heldDays }), { minLength: 1, maxLength: count })
    .map((offsets) => offsets.sort((a, b) => a - b))
    .map((offsets) => Array.from({ length: count }, (_, index) => dayAt(offsets[index])));
}

function dayAt(offset: number | undefined): Day | null {
  return offset === undefined ? null : addDays(firstDay, offset);
}

/** One of the ids, or none; `where` picks it. */
function pick(ids: readonly string[], where: number): string | null {
  return where < 0.3 ? null : (ids[Math.floor(((where - 0.3) / 0.7) * ids.length)] ?? null);
}

function someFacts(heldDays: number) {
  const day = fc.integer({ min: 0, max: heldDays }).map((offset) => addDays(firstDay, offset));
  const promise = fc.option(fc.integer({ min: 0, max: 40 }));
  const hour = fc.integer({ min: 0, max: 23 });
  return fc.record({
    arrival: fc.option(day, { freq: 8 }),
    paper: fc.option(day),
    paperPromise: promise,
    scans: few(fc.tuple(day, fc.constantFrom('pre-repair', 'post-repair', 'in-between'), fc.boolean(), hour)),
    batteryReadings: few(fc.tuple(day, fc.double({ min: 5, max: 16, noNaN: true }), fc.boolean()), 2),
    faults: few(
      fc.tuple(daysInOrder(3, heldDays), area, fc.constantFrom('repair', 'replace', 'leave'), fc.option(minutes)),
    ),
    parts: few(fc.tuple(daysInOrder(4, heldDays), chance, promise, cents, fc.boolean(), fc.constantFrom(0, 5_000))),
    requests: few(
      fc.tuple(daysInOrder(6, heldDays), chance, promise, fc.constantFrom('given', 'refused'), cents, fc.boolean()),
    ),
    sublets: few(fc.tuple(daysInOrder(3, heldDays), chance, promise, fc.option(cents), area)),
    jobs: few(fc.tuple(day, chance, fc.integer({ min: 0, max: 3 }), fc.boolean()), 2),
    attempts: few(fc.tuple(day, chance, fc.constantFrom('worked', 'worked', 'failed', 'stopped'), hour), 12),
    labour: few(fc.tuple(day, fc.integer({ min: 1, max: 600 }), area, chance, hour), 6),
    otherCosts: few(fc.tuple(day, fc.integer({ min: -20_000, max: 20_000 }))),
    signOffs: few(
      fc.tuple(day, fc.constantFrom(roadTest.id, cleaned.id), fc.constantFrom('passed', 'failed', 'not-needed'), hour),
      6,
    ),
    notes: few(day, 2),
    asking: fc.option(fc.integer({ min: 700_000, max: 1_500_000 })),
    soldAfter: fc.option(fc.integer({ min: 0, max: heldDays }), { freq: 2 }),
  });
}

const moduleChoices: readonly (readonly JobModule[])[] = [
  [jobModule('radio', 'kept')],
  [jobModule('keys', 'new'), jobModule('body', 'kept')],
  [jobModule('instrument-cluster', 'repaired')],
  [jobModule('body', 'used'), jobModule('keys', 'kept'), jobModule('radio', 'kept')],
];

type AboutJob = Pick<JobModule, 'partId' | 'codeRequestId'> & {
  readonly isTicked: boolean;
  readonly faultId: string | null;
};

/** A job with a real plan; its first module is linked to the part and the code request. */
function someJob(openedOn: Day, choice: number, { isTicked, faultId, partId, codeRequestId }: AboutJob) {
  const [first, ...rest] = moduleChoices[choice] ?? [];
  const modules = [...(first ? [{ ...first, partId, codeRequestId }] : []), ...rest];
  const tick = { gate: 'keys-present' as const, moduleId: null, on: openedOn, by: 'technician-1' };
  const job = plannedJob(openedOn, modules, { faultId });
  const asks = job.plan.steps.some(({ gates }) => gates.includes('keys-present'));
  return isTicked && asks ? { ...job, ticks: [tick] } : job;
}

/** The attempt as the rules let it be entered, with a reason to go on regardless where they ask for one; null where they refuse it. */
function allowed(vehicle: Vehicle, attempt: Attempt): Attempt | null {
  const override = { by: 'technician-1', reason: 'Went on regardless, in a test.' };
  const refusals = (one: Attempt) => attemptProblems(vehicle, one, '2199-12-31');
  if (refusals(attempt).length === 0) return attempt;
  const regardless = { ...attempt, override };
  return refusals(regardless).length === 0 ? regardless : null;
}

function attemptAt(vehicle: Vehicle, on: Day, jobId: string, stepId: string, about: Partial<Attempt>): Attempt | null {
  const job = vehicle.jobs.find(({ id }) => id === jobId);
  const step = job?.plan.steps.find(({ id }) => id === stepId);
  if (!job || !step || on < job.openedOn) return null;
  const vinRead = step.cannotBeUndone ? vinTail(vehicle.identity.vin) : '';
  return allowed(vehicle, makeAttempt(on, job, stepId, { route: step.routes[0] ?? 'by-hand', vinRead, ...about }));
}

type Try = { readonly where: number; readonly outcome: Attempt['outcome']; readonly hour: number };

/** Tries a step of one of the jobs, mostly one that is next, now and then any. Without a job, or where it is refused: as it was. */
function tryNext(vehicle: Vehicle, on: Day, { where, outcome, hour }: Try): Vehicle {
  const open = vehicle.jobs.filter(({ openedOn }) => openedOn <= on);
  const job = open[Math.floor(where * open.length * 0.999)];
  if (!job) return vehicle;
  const steps = jobProgress(vehicle, job).steps.filter(({ state }) => state !== 'done' && state !== 'left-out');
  const next = steps.filter(({ state }) => state === 'next');
  const among = next.length > 0 && (where * 10) % 1 < 0.8 ? next : steps;
  const step = among[Math.floor((where * 97) % Math.max(1, among.length))];
  const attempt = step && attemptAt(vehicle, on, job.id, step.step.id, { outcome, entered: stampAt(on, hour) });
  return attempt ? { ...vehicle, attempts: [...vehicle.attempts, attempt] } : vehicle;
}

/** Every open step done in the plan's order; what the rules refuse is left out with a reason. */
function workThrough(vehicle: Vehicle, on: Day): Vehicle {
  let record = vehicle;
  for (const { id: jobId, plan } of vehicle.jobs)
    for (const { id: stepId } of plan.steps) {
      const job = record.jobs.find(({ id }) => id === jobId);
      const state = job && jobProgress(record, job).steps.find(({ step }) => step.id === stepId)?.state;
      if (!job || state === 'done' || state === 'left-out') continue;
      const attempt = attemptAt(record, on, jobId, stepId, {});
      if (attempt) {
        record = { ...record, attempts: [...record.attempts, attempt] };
        continue;
      }
      const out = { stepId, reason: 'not on this one', by: 'technician-1', on };
      const jobs = record.jobs.map((one) => (one.id === jobId ? { ...one, leftOut: [...one.leftOut, out] } : one));
      record = { ...record, jobs };
    }
  return record;
}

type Facts = typeof someFacts extends (heldDays: number) => fc.Arbitrary<infer Value> ? Value : never;

function promised(from: Day | null, days: number | null): Day | null {
  return from === null || days === null ? null : addDays(from, days);
}

function chaseAt(chasedOn: Day, promisedOn: Day | null): Chase {
  return { id: 'chase-1', chasedOn, by: 'manager-1', how: 'phone', promisedOn, note: '' };
}

/** A wrong try, and on a later day a right one. */
function triesAt(wrongOn: Day | null, rightOn: Day | null): CodeTry[] {
  const attempt = { by: 'technician-1', triesLeft: null, lockedUntil: null, note: '' };
  return [
    ...(wrongOn ? [{ ...attempt, id: 'try-1', triedOn: wrongOn, result: 'wrong' as const }] : []),
    ...(rightOn ? [{ ...attempt, id: 'try-2', triedOn: rightOn, result: 'right' as const }] : []),
  ];
}

function assemble(facts: Facts): Vehicle {
  const faults = facts.faults.map(([[foundOn, decidedOn, doneOn], where, kind, estimate]) =>
    makeFault(foundOn ?? firstDay, {
      area: where,
      decision: decidedOn ? makeDecision(decidedOn, { kind, reason: 'old', estimateMinutes: estimate }) : null,
      doneOn: kind === 'leave' ? null : (doneOn ?? null),
    }),
  );
  const faultIds = faults.map((fault) => fault.id);
  const parts = facts.parts.map(([[neededOn, orderedOn, receivedOn, last], where, promise, priceCents, isBack, core]) =>
    makePart(neededOn ?? firstDay, {
      faultId: pick(faultIds, where),
      orderedOn: orderedOn ?? null,
      expectedOn: promised(orderedOn ?? null, promise),
      receivedOn: receivedOn ?? null,
      fittedOn: isBack ? null : (last ?? null),
      returnedOn: isBack ? (last ?? null) : null,
      priceCents,
      coreChargeCents: core,
    }),
  );
  const codeRequests = facts.requests.map(([days, where, promise, outcome, feeCents, isChased]) => {
    const [notedOn, askedOn, answeredOn, triedOn, againOn, closedOn] = days;
    return makeCodeRequest(notedOn ?? firstDay, {
      faultId: pick(faultIds, where),
      askedOn: askedOn ?? null,
      expectedOn: promised(askedOn ?? null, promise),
      answeredOn: answeredOn ?? null,
      outcome: answeredOn ? outcome : null,
      feeCents,
      chases: isChased && askedOn ? [chaseAt(askedOn, promised(askedOn, promise))] : [],
      tries: outcome === 'given' ? triesAt(triedOn ?? null, againOn ?? null) : [],
      closedOn: closedOn ?? null,
      closedWhy: closedOn ? 'settled' : '',
    });
  });
  const jobs = facts.jobs.map(([openedOn, where, moduleChoice, isTicked]) =>
    someJob(openedOn, moduleChoice, {
      isTicked,
      faultId: pick(faultIds, where),
      partId: pick(
        parts.map((part) => part.id),
        where,
      ),
      codeRequestId: pick(
        codeRequests.map((request) => request.id),
        1 - where,
      ),
    }),
  );
  const vehicle = makeVehicle(firstDay, {
    purchase: { paperReceivedOn: facts.paper, paperExpectedOn: promised(firstDay, facts.paperPromise) },
    arrival: { arrivedOn: facts.arrival },
    targets: { askingCents: facts.asking },
    batteryReadings: facts.batteryReadings.map(([on, volts, isRested]) => makeBatteryReading(on, { volts, isRested })),
    scans: facts.scans.map(([on, kind, isLive, hour]) =>
      makeScan(on, {
        kind,
        modules: [{ name: 'Engine', answered: true, codes: isLive ? [plainCode('P0171', 'present')] : [] }],
        entered: stampAt(on, hour),
      }),
    ),
    faults,
    jobs,
    parts,
    codeRequests,
    labour: facts.labour.map(([on, minutes, where, which, hour]) =>
      makeLabour(on, { minutes, area: where, faultId: pick(faultIds, which), entered: stampAt(on, hour) }),
    ),
    sublets: facts.sublets.map(([[notedOn, sentOn, backOn], where, promise, invoicedCents, touched]) =>
      makeSublet(notedOn ?? firstDay, {
        faultId: pick(faultIds, where),
        sentOn: sentOn ?? null,
        expectedOn: promised(sentOn ?? null, promise),
        backOn: backOn ?? null,
        area: touched,
        invoicedCents,
      }),
    ),
    otherCosts: facts.otherCosts.map(([on, amount]) => makeOtherCost(on, amount)),
    signOffs: facts.signOffs.map(([on, checkId, result, hour]) =>
      makeSignOff(on, checkId, { result, entered: stampAt(on, hour) }),
    ),
    notes: facts.notes.map((on) => makeNote(on)),
    sale:
      facts.soldAfter === null
        ? null
        : { soldOn: addDays(firstDay, facts.soldAfter), priceCents: 990_000, buyer: 'a buyer', paidOffOn: null },
  });
  const tries = [...facts.attempts].sort(([a], [b]) => (a < b ? -1 : a > b ? 1 : 0));
  return tries.reduce((so, [on, where, outcome, hour]) => tryNext(so, on, { where, outcome, hour }), vehicle);
}

/** Everything open brought to its end, then scanned, signed and presented between `finishedOn` and `readyOn`. */
function followThrough(vehicle: Vehicle, finishedOn: Day, readyOn: Day): Vehicle {
  const faults = vehicle.faults.map((fault) => {
    const decision = fault.decision ?? makeDecision(finishedOn);
    return { ...fault, decision, doneOn: decision.kind === 'leave' ? null : (fault.doneOn ?? finishedOn) };
  });
  const parts = vehicle.parts.map((part) => {
    const received = { orderedOn: part.orderedOn ?? finishedOn, receivedOn: part.receivedOn ?? finishedOn };
    return { ...part, ...received, fittedOn: part.returnedOn === null ? (part.fittedOn ?? finishedOn) : null };
  });
  const codeRequests = vehicle.codeRequests.map((request) => ({
    ...request,
    askedOn: request.askedOn ?? finishedOn,
    answeredOn: request.answeredOn ?? finishedOn,
    outcome: 'given' as const,
  }));
  const scan = makeScan(readyOn, { kind: 'post-repair', entered: stampAt(readyOn, 23) });
  const again: Attempt[] = [];
  for (const attempt of vehicle.attempts) {
    const known = { ...vehicle, parts, codeRequests, attempts: again };
    const entered = allowed(known, { ...attempt, override: null });
    if (entered) again.push(entered);
  }
  const { jobs, attempts } = workThrough({ ...vehicle, parts, codeRequests, attempts: again }, finishedOn);
  return {
    ...vehicle,
    purchase: { ...vehicle.purchase, paperReceivedOn: vehicle.purchase.paperReceivedOn ?? readyOn },
    arrival: { ...vehicle.arrival, arrivedOn: vehicle.arrival.arrivedOn ?? finishedOn },
    targets: { ...vehicle.targets, askingCents: vehicle.targets.askingCents ?? 900_000 },
    scans: [...vehicle.scans, scan],
    faults,
    parts,
    codeRequests,
    jobs,
    attempts,
    sublets: vehicle.sublets.map((sublet) => ({
      ...sublet,
      sentOn: sublet.sentOn ?? finishedOn,
      backOn: sublet.backOn ?? finishedOn,
    })),
    signOffs: [
      ...vehicle.signOffs,
      makeSignOff(readyOn, roadTest.id, { entered: stampAt(readyOn, 23) }),
      makeSignOff(addDays(readyOn, 2), cleaned.id, { entered: stampAt(addDays(readyOn, 2), 23) }),
    ],
    sale: null,
  };
}

/** A record left in the middle of things, and the day it is looked at, from 0 to 110 days after the purchase. */
const leftOpen: fc.Arbitrary<VehicleAndToday> = fc
  .integer({ min: 0, max: 110 })
  .chain((heldDays) =>
    someFacts(heldDays).map((facts) => ({ vehicle: assemble(facts), today: addDays(firstDay, heldDays) })),
  );

/** A record that got as far as being ready, and a day from then on. */
const broughtToReady: fc.Arbitrary<VehicleAndToday> = fc
  .tuple(fc.integer({ min: 0, max: 60 }), fc.integer({ min: 0, max: 9 }), fc.integer({ min: 2, max: 20 }))
  .chain(([workDays, proofDays, afterDays]) =>
    someFacts(workDays).map((facts) => {
      const finishedOn = addDays(firstDay, workDays);
      const readyOn = addDays(finishedOn, proofDays);
      return { vehicle: followThrough(assemble(facts), finishedOn, readyOn), today: addDays(readyOn, afterDays) };
    }),
  );

export const arbitraryVehicle: fc.Arbitrary<VehicleAndToday> = fc.oneof(
  { arbitrary: leftOpen, weight: 3 },
  { arbitrary: broughtToReady, weight: 1 },
);
