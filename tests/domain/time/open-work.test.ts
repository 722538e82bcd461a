// What still stands between a vehicle and being ready, and in which order: by example, and on any record.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { judgeReadiness } from '../../../app/domain/readiness/gates.ts';
import { addDays } from '../../../app/domain/shared/day.ts';
import type { OpenItem } from '../../../app/domain/time/open-item.ts';
import { openWork } from '../../../app/domain/time/open-work.ts';
import { checkNetwork } from '../../../app/domain/time/task-network.ts';
import { firstTurnaroundSettings } from '../../../app/domain/time/turnaround-settings.ts';
import { arbitraryVehicle } from '../../helpers/arbitrary-vehicle.ts';
import {
  cleaned,
  makeAttempt,
  makeCodeRequest,
  makeDecision,
  makeFault,
  makeJob,
  makeLabour,
  makePart,
  makeScan,
  makeStep,
  makeSublet,
  makeVehicle,
  roadTest,
} from '../../helpers/vehicle-maker.ts';

const checklist = [roadTest, cleaned];
const calendar = { workDays: [1, 2, 3, 4, 5], minutesPerDay: 480, holidays: [] };
const day = (offset: number) => addDays('2026-01-05', offset);
const today = day(10);
const context = { today, settings: firstTurnaroundSettings, calendar };

function find(items: readonly OpenItem[], id: string): OpenItem {
  const item = items.find((one) => one.id === id);
  if (!item) throw new Error(`${id} is not among ${items.map((one) => one.id).join(', ')}`);
  return item;
}

describe('a vehicle with a dead module', () => {
  const fault = makeFault(day(1), { decision: makeDecision(day(2), { estimateMinutes: 120 }) });
  const part = makePart(day(2), { faultId: fault.id, supplier: 'Yard', orderedOn: day(3), expectedOn: day(14) });
  const request = makeCodeRequest(day(2), { askedOf: 'Desk' });
  const read = makeStep({ title: 'read the old module', typicalMinutes: 15 });
  const write = makeStep({ title: 'write the new one', needsPart: true, typicalMinutes: 40 });
  const match = makeStep({ title: 'match the keys', needsCode: true, typicalMinutes: null });
  const job = makeJob(day(2), {
    faultId: fault.id,
    partId: part.id,
    codeRequestId: request.id,
    steps: [read, write, match],
  });
  const vehicle = makeVehicle(day(0), {
    purchase: { paperReceivedOn: null, paperExpectedOn: day(20), source: 'Auction' },
    scans: [makeScan(day(1))],
    faults: [fault],
    parts: [part],
    codeRequests: [request],
    jobs: [job],
    labour: [makeLabour(day(3), { minutes: 45, faultId: fault.id })],
  });
  const items = openWork(vehicle, checklist, context);

  it('waits for its part by the promise, and for a code that must be asked for first', () => {
    expect(find(items, `part:${part.id}`).wait).toEqual({
      kind: 'part',
      groups: ['provider: yard'],
      elapsedDays: 7,
      promisedInDays: 4,
    });
    expect(find(items, `ask:${request.id}`)).toMatchObject({ cause: 'idle', wait: { kind: 'ask', elapsedDays: 6 } });
    expect(find(items, `code:${request.id}`)).toMatchObject({
      after: [`ask:${request.id}`],
      wait: { elapsedDays: 0, promisedInDays: null },
    });
  });

  it('goes through the steps in their order, each with what it needs, at its typical minutes', () => {
    const first = find(items, `step:${job.id}:${read.id}`);
    expect(first).toMatchObject({ after: [], minutes: 15, wait: null });
    const second = find(items, `step:${job.id}:${write.id}`);
    expect(second).toMatchObject({ after: [first.id, `part:${part.id}`], minutes: 40 });
    const last = find(items, `job:${job.id}`);
    expect(last.after).toEqual([second.id, `code:${request.id}`]);
    expect(last).toMatchObject({ minutes: 20, wait: { kind: 'programming', groups: ['module: body'] } });
  });

  it('is repaired at what is left of the estimate, after everything that the fault needs', () => {
    expect(find(items, `repair:${fault.id}`)).toMatchObject({
      after: [`part:${part.id}`, `job:${job.id}`],
      minutes: 75,
      wait: { kind: 'repair', elapsedDays: 0 },
    });
  });

  it('is proven after all work, presented after the proof, and its paper comes beside it all', () => {
    expect(find(items, 'verify').after).toContain(`repair:${fault.id}`);
    expect(find(items, 'present').after).toContain('verify');
    expect(find(items, 'paper')).toMatchObject({ after: [], wait: { kind: 'paper', promisedInDays: 10 } });
  });

  it('has one step less when a step has worked', () => {
    const attempts = [makeAttempt(day(4), job, read.id)];
    const left = openWork({ ...vehicle, attempts }, checklist, context);
    expect(left.map(({ id }) => id)).not.toContain(`step:${job.id}:${read.id}`);
    expect(left).toHaveLength(items.length - 1);
  });
});

describe('what is open', () => {
  it('begins with the arrival and whatever the scan will show while nobody has scanned it', () => {
    const vehicle = makeVehicle(day(8), { arrival: { arrivedOn: null, expectedOn: day(12) } });
    const items = openWork(vehicle, checklist, context);
    expect(items.map(({ id, after }) => [id, after])).toEqual([
      ['arrival', []],
      ['inspect', ['arrival']],
      ['unseen', ['inspect']],
      ['verify', ['arrival', 'inspect', 'unseen']],
      ['present', ['arrival', 'inspect', 'unseen', 'verify']],
    ]);
  });

  it('asks the whole way of a fault for which nothing is ordered yet, from its decision or after it', () => {
    const decided = makeFault(day(1), { area: 'brakes', decision: makeDecision(day(7)) });
    const undecided = makeFault(day(1), { area: 'body' });
    const items = openWork(
      makeVehicle(day(0), { scans: [makeScan(day(1))], faults: [decided, undecided] }),
      checklist,
      context,
    );
    expect(find(items, `repair:${decided.id}`).wait).toMatchObject({ kind: 'fault', elapsedDays: 3 });
    expect(find(items, `repair:${undecided.id}`)).toMatchObject({
      after: [`decide:${undecided.id}`],
      wait: { kind: 'fault', groups: ['area: body'], elapsedDays: 0 },
    });
  });

  it('asks a repair with everything in hand how long it has waited for its turn, in days of the shop', () => {
    // Decided on Wednesday the 7th, the part came on Friday the 9th, today is Thursday the 15th.
    const fault = makeFault(day(1), { decision: makeDecision(day(2)) });
    const part = makePart(day(2), { faultId: fault.id, orderedOn: day(2), receivedOn: day(4) });
    const items = openWork(
      makeVehicle(day(0), { scans: [makeScan(day(1))], faults: [fault], parts: [part] }),
      checklist,
      context,
    );
    expect(find(items, `repair:${fault.id}`).wait).toMatchObject({ kind: 'repair', elapsedDays: 4 });
  });

  it('looks for another way after a refusal, and sends out before it waits for what comes back', () => {
    const request = makeCodeRequest(day(2), {
      askedOf: 'Desk',
      askedOn: day(2),
      answeredOn: day(6),
      outcome: 'refused',
    });
    const sublet = makeSublet(day(3));
    const vehicle = makeVehicle(day(0), { scans: [makeScan(day(1))], codeRequests: [request], sublets: [sublet] });
    const items = openWork(vehicle, checklist, context);
    expect(find(items, `ask:${request.id}`)).toMatchObject({
      cause: 'decide',
      wait: { kind: 'decide', elapsedDays: 4 },
    });
    expect(find(items, `code:${request.id}`).wait?.groups).toEqual(['kind: immobiliser']);
    expect(find(items, `sublet:${sublet.id}`).after).toEqual([`send:${sublet.id}`]);
  });

  it('is a part to be fitted where neither a repair nor a job takes it', () => {
    const part = makePart(day(2), { orderedOn: day(2), receivedOn: day(4) });
    const items = openWork(makeVehicle(day(0), { scans: [makeScan(day(1))], parts: [part] }), checklist, context);
    expect(find(items, `fit:${part.id}`)).toMatchObject({ after: [], minutes: 30, cause: 'work' });
  });
});

describe('on any record', () => {
  it('something is open exactly while it is neither ready nor sold', () => {
    fc.assert(
      fc.property(arbitraryVehicle, ({ vehicle, today: on }) => {
        const items = openWork(vehicle, checklist, { ...context, today: on });
        const readiness = judgeReadiness(vehicle, checklist);
        expect(items.length === 0).toBe(readiness.isReady || vehicle.sale !== null);
      }),
    );
  });

  it('work is open exactly while its gates hold', () => {
    fc.assert(
      fc.property(arbitraryVehicle, ({ vehicle, today: on }) => {
        if (vehicle.sale !== null) return;
        const items = openWork(vehicle, checklist, { ...context, today: on });
        const work = items.filter(({ id }) => !['verify', 'present', 'paper'].includes(id));
        expect(work.length > 0).toBe(judgeReadiness(vehicle, checklist).workFinishedOn === null);
      }),
    );
  });

  it('the items make a network, each named once, none waiting for itself', () => {
    fc.assert(
      fc.property(arbitraryVehicle, ({ vehicle, today: on }) => {
        const items = openWork(vehicle, checklist, { ...context, today: on });
        expect(checkNetwork(items.map((item) => ({ ...item, duration: 0 })))).toMatchObject({ ok: true });
        for (const { minutes, wait } of items) {
          expect(minutes).toBeGreaterThanOrEqual(0);
          expect(wait?.elapsedDays ?? 0).toBeGreaterThanOrEqual(0);
        }
      }),
    );
  });
});
