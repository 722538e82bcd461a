// Random valid vehicle records for property tests: every kind of fact, days in order and never after today, links that exist.
import fc from 'fast-check';
import { plainCode } from '../../app/domain/diagnosis/scan.ts';
import { addDays, type Day } from '../../app/domain/shared/day.ts';
import type { Vehicle } from '../../app/domain/vehicle/vehicle.ts';
import { workAreaSchema } from '../../app/domain/work/work-area.ts';
import {
  cleaned,
  makeAttempt,
  makeBatteryReading,
  makeCodeRequest,
  makeDecision,
  makeFault,
  makeJob,
  makeLabour,
  makeNote,
  makeOtherCost,
  makePart,
  makeScan,
  makeSignOff,
  makeStep,
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
    requests: few(fc.tuple(daysInOrder(3, heldDays), chance, promise, fc.constantFrom('given', 'refused'), cents)),
    sublets: few(fc.tuple(daysInOrder(3, heldDays), chance, promise, fc.option(cents), area)),
    jobs: few(fc.tuple(day, chance, fc.integer({ min: 0, max: 3 }), fc.boolean())),
    attempts: few(fc.tuple(day, chance, fc.constantFrom('worked', 'failed', 'stopped'), hour), 8),
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

type Facts = typeof someFacts extends (heldDays: number) => fc.Arbitrary<infer Value> ? Value : never;

function promised(from: Day | null, days: number | null): Day | null {
  return from === null || days === null ? null : addDays(from, days);
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
  const codeRequests = facts.requests.map(([[notedOn, askedOn, answeredOn], where, promise, outcome, feeCents]) =>
    makeCodeRequest(notedOn ?? firstDay, {
      faultId: pick(faultIds, where),
      askedOn: askedOn ?? null,
      expectedOn: promised(askedOn ?? null, promise),
      answeredOn: answeredOn ?? null,
      outcome: answeredOn ? outcome : null,
      feeCents,
    }),
  );
  const jobs = facts.jobs.map(([openedOn, where, stepCount, needs]) =>
    makeJob(openedOn, {
      faultId: pick(faultIds, where),
      partId: pick(
        parts.map((part) => part.id),
        where,
      ),
      codeRequestId: pick(
        codeRequests.map((request) => request.id),
        1 - where,
      ),
      steps: Array.from({ length: stepCount }, (_, at) =>
        makeStep({ needsPart: needs, needsCode: !needs && at > 0, leftOutReason: at === 2 ? 'not on this one' : '' }),
      ),
    }),
  );
  const jobsWithSteps = jobs.filter((job) => job.steps.length > 0);
  const attempts = facts.attempts.flatMap(([on, where, outcome, hour]) => {
    const job = jobsWithSteps[Math.floor(where * jobsWithSteps.length * 0.999)];
    const step = job?.steps[Math.floor((where * 97) % job.steps.length)];
    return job && step ? [makeAttempt(on, job, step.id, { outcome, entered: stampAt(on, hour) })] : [];
  });
  return makeVehicle(firstDay, {
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
    attempts,
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
        : { soldOn: addDays(firstDay, facts.soldAfter), priceCents: 990_000, buyer: 'a buyer' },
  });
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
  const jobs = vehicle.jobs.filter((job) => job.steps.length > 0);
  const attempts = jobs.flatMap((job) => job.steps.map((step) => makeAttempt(finishedOn, job, step.id)));
  const scan = makeScan(readyOn, { kind: 'post-repair', entered: stampAt(readyOn, 23) });
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
    attempts: [...vehicle.attempts.filter(({ jobId }) => jobs.some(({ id }) => id === jobId)), ...attempts],
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
