// Every day held is charged to one cause: each rule by an example whose strip was written out by hand on a calendar, 2026.
import { describe, expect, it } from 'vitest';
import { addDays } from '../../../app/domain/shared/day.ts';
import { chargeHeldDays, type HeldDays } from '../../../app/domain/time/held-days.ts';
import type { Vehicle } from '../../../app/domain/vehicle/vehicle.ts';
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
  makeSignOff,
  makeStep,
  makeSublet,
  makeVehicle,
  roadTest,
} from '../../helpers/vehicle-maker.ts';
import { makeTry } from '../codes/request-maker.ts';

/** Day 1 is 1 March 2026; day 32 is 1 April. */
const march = (dayOfMonth: number) => addDays('2026-03-01', dayOfMonth - 1);

function held(vehicle: Vehicle, todayInMarch: number, countsFirstDay = false): HeldDays {
  return chargeHeldDays(vehicle, [roadTest, cleaned], { today: march(todayInMarch), countsFirstDay });
}

/** 'transit 3, work 1': the strip in words. */
function strip({ stretches }: HeldDays): string {
  return stretches.map(({ cause, days }) => `${cause} ${days}`).join(', ');
}

const scanned = (dayOfMonth: number) => makeScan(march(dayOfMonth));
const proven = (dayOfMonth: number) => [
  makeScan(march(dayOfMonth), { kind: 'post-repair' }),
  makeScan(march(1), { kind: 'pre-repair' }),
];
/** Scanned on the first, a fault found and finished on `doneOn`. */
const repaired = (doneOn: number) =>
  makeFault(march(1), { decision: makeDecision(march(1)), doneOn: march(doneOn), what: 'lamp out' });

describe('a day is charged to', () => {
  it('transit until the vehicle is here', () => {
    const vehicle = makeVehicle(march(1), { arrival: { arrivedOn: march(4), expectedOn: march(3) } });
    expect(strip(held(vehicle, 4))).toBe('transit 3');
    expect(held(vehicle, 4).now.standing).toBe('inspect');
  });

  it('transit for as long as nobody has entered an arrival, with the day it was expected', () => {
    const vehicle = makeVehicle(march(1), { arrival: { arrivedOn: null, expectedOn: march(3) } });
    const { now, ...rest } = held(vehicle, 6);
    expect(strip({ now, ...rest })).toBe('transit 5');
    expect(now).toEqual({ standing: 'transit', since: march(1), what: 'an auction', expectedOn: march(3) });
  });

  it('inspect from the arrival to the first scan', () => {
    const vehicle = makeVehicle(march(1), { arrival: { arrivedOn: march(2) }, scans: [scanned(5)] });
    expect(strip(held(vehicle, 6))).toBe('transit 1, inspect 3, work 1');
  });

  it('decide from finding a fault to deciding about it', () => {
    const fault = makeFault(march(2), { decision: makeDecision(march(6)) });
    const vehicle = makeVehicle(march(1), { scans: [scanned(2)], faults: [fault] });
    expect(strip(held(vehicle, 8))).toBe('inspect 1, work 1, decide 3, idle 2');
  });

  it('part from the order to the receipt, and says which from whom', () => {
    const part = makePart(march(2), { orderedOn: march(3), receivedOn: march(9), expectedOn: march(8) });
    const vehicle = makeVehicle(march(1), { scans: [scanned(1)], parts: [part] });
    const result = held(vehicle, 10);
    expect(strip(result)).toBe('work 1, idle 1, part 6, idle 1');
    expect(result.stretches.map(({ what }) => what)).toEqual([
      'scan',
      'Order: body module',
      'body module from Yard',
      'Fit or send back: body module',
    ]);
  });

  it('part until the day it was given up where it never came', () => {
    const part = makePart(march(1), { orderedOn: march(2), returnedOn: march(5) });
    const vehicle = makeVehicle(march(1), { scans: [scanned(1)], parts: [part] });
    expect(strip(held(vehicle, 7))).toBe('work 1, part 3, verify 2');
  });

  it('code from asking to the answer', () => {
    const request = makeCodeRequest(march(1), { askedOn: march(2), answeredOn: march(5), outcome: 'given' });
    const vehicle = makeVehicle(march(1), { scans: [scanned(1)], codeRequests: [request] });
    expect(strip(held(vehicle, 6))).toBe('work 1, code 3, verify 1');
  });

  it('code up to the closing of a request that was never answered', () => {
    const request = makeCodeRequest(march(1), {
      askedOn: march(2),
      closedOn: march(4),
      closedWhy: 'sold with the fault',
    });
    const vehicle = makeVehicle(march(1), { scans: [scanned(1)], codeRequests: [request] });
    expect(strip(held(vehicle, 6))).toBe('work 1, code 2, verify 2');
  });

  it('decide while a code that was given does not work', () => {
    const given = { askedOn: march(2), answeredOn: march(3), outcome: 'given' as const };
    const tries = [makeTry(march(3), 'wrong'), makeTry(march(6), 'right')];
    const request = makeCodeRequest(march(1), { ...given, tries });
    const vehicle = makeVehicle(march(1), { scans: [scanned(1)], codeRequests: [request] });
    expect(strip(held(vehicle, 5))).toBe('work 1, code 1, decide 2');
    expect(held(vehicle, 5).now.what).toBe('another way: immobiliser code does not work');
    expect(strip(held(vehicle, 8))).toBe('work 1, code 1, decide 3, verify 2');
  });

  it('decide from a refusal until the code is asked for elsewhere', () => {
    const fault = makeFault(march(1), { decision: makeDecision(march(1)) });
    const refused = makeCodeRequest(march(1), {
      askedOn: march(2),
      answeredOn: march(4),
      outcome: 'refused',
      faultId: fault.id,
    });
    const again = makeCodeRequest(march(7), { askedOn: march(7), askedOf: 'Another desk', faultId: fault.id });
    const first = makeVehicle(march(1), { scans: [scanned(1)], faults: [fault], codeRequests: [refused] });
    expect(strip(held(first, 7))).toBe('work 1, code 2, decide 3');
    expect(held(first, 7).now).toMatchObject({ standing: 'decide', since: march(4) });
    const second = { ...first, codeRequests: [refused, again] };
    expect(strip(held(second, 9))).toBe('work 1, code 2, decide 3, code 2');
    expect(held(second, 9).now.what).toBe('immobiliser code from Another desk');
  });

  it('programming from the day everything is in hand to the last step', () => {
    const part = makePart(march(1), { orderedOn: march(1), receivedOn: march(4), fittedOn: march(4) });
    const step = makeStep({ title: 'write the module', needsPart: true });
    const last = makeStep({ title: 'teach the keys' });
    const job = makeJob(march(1), { partId: part.id, steps: [step, last] });
    const attempts = [
      makeAttempt(march(6), job, step.id, { outcome: 'failed' }),
      makeAttempt(march(8), job, step.id),
      makeAttempt(march(10), job, last.id),
    ];
    const vehicle = makeVehicle(march(1), { scans: [scanned(1)], parts: [part], jobs: [job], attempts });
    const result = held(vehicle, 12);
    expect(strip(result)).toBe(
      'work 1, part 2, programming 2, work 1, programming 1, work 1, programming 1, work 1, verify 1',
    );
    const half = { ...vehicle, attempts: attempts.slice(0, 2) };
    expect(held(half, 12).now).toEqual({
      standing: 'programming',
      since: march(4),
      what: 'Body: teach the keys',
      expectedOn: null,
    });
  });

  it('sublet while it is with somebody else, but to nobody before it was sent', () => {
    const sublet = makeSublet(march(2), { sentOn: march(4), backOn: march(7) });
    const vehicle = makeVehicle(march(1), { scans: [scanned(1)], sublets: [sublet] });
    const result = held(vehicle, 8);
    expect(strip(result)).toBe('work 1, idle 2, sublet 3, verify 1');
    expect(result.stretches[1]?.what).toBe('Send out: windscreen');
  });

  it('work on a day with booked labour, a scan or an attempt, whatever was waited for', () => {
    const part = makePart(march(1), { orderedOn: march(1), receivedOn: null });
    const vehicle = makeVehicle(march(1), {
      scans: [scanned(2)],
      parts: [part],
      labour: [makeLabour(march(4), { what: 'took the dash out' })],
    });
    const result = held(vehicle, 6);
    expect(strip(result)).toBe('part 1, work 1, part 1, work 1, part 1');
    expect(result.stretches[3]?.what).toBe('took the dash out');
  });

  it('work even before the arrival, where a scan was taken at the auction', () => {
    const vehicle = makeVehicle(march(1), { arrival: { arrivedOn: march(4) }, scans: [scanned(2)] });
    expect(strip(held(vehicle, 4))).toBe('transit 1, work 1, transit 1');
  });

  it('transit before the arrival, though a part is on its way and the paper has not come', () => {
    const vehicle = makeVehicle(march(1), {
      arrival: { arrivedOn: march(5) },
      purchase: { paperReceivedOn: null },
      parts: [makePart(march(1), { orderedOn: march(1) })],
    });
    expect(strip(held(vehicle, 5))).toBe('transit 4');
  });

  it('verify once the work is done, present once it is proven, ready from the day of the last signature', () => {
    const vehicle = makeVehicle(march(1), {
      scans: proven(6),
      faults: [repaired(4)],
      labour: [makeLabour(march(4))],
      signOffs: [makeSignOff(march(8), roadTest.id), makeSignOff(march(10), cleaned.id)],
    });
    const result = held(vehicle, 13);
    expect(strip(result)).toBe('work 1, idle 2, work 1, verify 1, work 1, verify 1, present 2, ready 3');
    expect(result.stretches.map(({ what }) => what)).toEqual([
      'scan',
      'Repair: lamp out',
      'fitted it',
      'Not signed: Road test',
      'scan',
      'Not signed: Road test',
      'Not signed: Cleaned',
      '',
    ]);
    expect(result.now).toEqual({ standing: 'ready', since: march(10), what: '', expectedOn: null });
  });

  it('paper when nothing but the title is missing, with the day it is expected', () => {
    const vehicle = makeVehicle(march(1), {
      purchase: { paperReceivedOn: null, paperExpectedOn: march(20) },
      scans: [scanned(1)],
      signOffs: [makeSignOff(march(2), roadTest.id), makeSignOff(march(2), cleaned.id)],
    });
    expect(strip(held(vehicle, 6))).toBe('work 1, paper 4');
    expect(held(vehicle, 6).now).toEqual({
      standing: 'paper',
      since: march(1),
      what: 'Title',
      expectedOn: march(20),
    });
  });

  it('idle when nothing is waited for and nothing happened, with what could have been done', () => {
    const fault = makeFault(march(1), { decision: makeDecision(march(1), { kind: 'replace' }), what: 'cracked lamp' });
    const vehicle = makeVehicle(march(1), { scans: [scanned(1)], faults: [fault] });
    const result = held(vehicle, 5);
    expect(strip(result)).toBe('work 1, idle 3');
    expect(result.now).toEqual({ standing: 'idle', since: march(2), what: 'Replace: cracked lamp', expectedOn: null });
  });
});

describe('when several things are waited for', () => {
  const scans = [makeScan(march(1))];

  it('the one that ended last is charged', () => {
    const vehicle = makeVehicle(march(1), {
      scans,
      parts: [makePart(march(1), { orderedOn: march(2), receivedOn: march(9), fittedOn: march(9) })],
      codeRequests: [makeCodeRequest(march(1), { askedOn: march(2), answeredOn: march(5), outcome: 'given' })],
    });
    expect(strip(held(vehicle, 9))).toBe('work 1, part 7');
  });

  it('a paper that came after the parts hides the days that the parts took', () => {
    const vehicle = makeVehicle(march(1), {
      scans,
      purchase: { paperReceivedOn: march(12) },
      parts: [makePart(march(1), { orderedOn: march(2), receivedOn: march(9), fittedOn: march(9) })],
    });
    // From the ninth on the proof is missing and nobody knows until when: that outlasts the paper.
    expect(strip(held(vehicle, 12))).toBe('work 1, paper 7, verify 3');
  });

  it('an open one without a promise counts as the latest', () => {
    const promisedLate = makePart(march(1), { orderedOn: march(2), expectedOn: march(30) });
    const nobodyKnows = makeSublet(march(1), { sentOn: march(2) });
    const vehicle = makeVehicle(march(1), { scans, parts: [promisedLate], sublets: [nobodyKnows] });
    expect(held(vehicle, 5).now.standing).toBe('sublet');
  });

  it('a promise that passed unkept counts as none; on its day it still stands', () => {
    const passed = makePart(march(1), { orderedOn: march(2), expectedOn: march(6) });
    const stands = makeSublet(march(1), { sentOn: march(2), expectedOn: march(20) });
    const vehicle = makeVehicle(march(1), { scans, parts: [passed], sublets: [stands] });
    expect(held(vehicle, 6).now.standing).toBe('sublet');
    expect(held(vehicle, 7).now).toMatchObject({ standing: 'part', expectedOn: march(6) });
  });

  it('a tie goes by the fixed order: code, part, sublet, programming, decide, inspect, verify, present, paper', () => {
    const job = makeJob(march(2), { steps: [makeStep()] });
    const everything = makeVehicle(march(1), {
      purchase: { paperReceivedOn: null },
      codeRequests: [makeCodeRequest(march(2), { askedOn: march(2) })],
      parts: [makePart(march(2), { orderedOn: march(2) })],
      sublets: [makeSublet(march(2), { sentOn: march(2) })],
      jobs: [job],
      faults: [makeFault(march(2))],
    });
    const standings: string[] = [];
    const takeAway: readonly Partial<Vehicle>[] = [
      { codeRequests: [] },
      { parts: [] },
      { sublets: [] },
      { jobs: [] },
      { faults: [] },
      { scans: [makeScan(march(1))] },
    ];
    let vehicle = everything;
    standings.push(held(vehicle, 4).now.standing);
    for (const without of takeAway) {
      vehicle = { ...vehicle, ...without };
      standings.push(held(vehicle, 4).now.standing);
    }
    // With the scan clean and nothing worked, only the road test is missing: to verify; signed, the cleaning; signed, the paper.
    vehicle = { ...vehicle, signOffs: [makeSignOff(march(2), roadTest.id)] };
    standings.push(held(vehicle, 4).now.standing);
    vehicle = { ...vehicle, signOffs: [...vehicle.signOffs, makeSignOff(march(3), cleaned.id)] };
    standings.push(held(vehicle, 4).now.standing);
    expect(standings).toEqual([
      'code',
      'part',
      'sublet',
      'programming',
      'decide',
      'inspect',
      'verify',
      'present',
      'paper',
    ]);
  });

  it('of two parts that end together the one ordered first is named', () => {
    const early = makePart(march(2), { what: 'lamp', orderedOn: march(2) });
    const late = makePart(march(3), { what: 'switch', orderedOn: march(3) });
    const vehicle = makeVehicle(march(1), { scans, parts: [late, early] });
    expect(held(vehicle, 5).now).toMatchObject({ what: 'lamp from Yard', since: march(2) });
  });
});

describe('days gone by', () => {
  const ready = makeVehicle(march(1), {
    scans: proven(3),
    faults: [repaired(2)],
    signOffs: [makeSignOff(march(4), roadTest.id), makeSignOff(march(5), cleaned.id)],
  });

  it('stay ready when later work makes a signature stale', () => {
    const brakes = makeLabour(march(10), { area: 'brakes', what: 'brake pads' });
    const result = held({ ...ready, labour: [brakes] }, 13);
    expect(strip(held(ready, 10))).toBe('work 1, verify 1, work 1, present 1, ready 5');
    expect(strip(result)).toBe('work 1, verify 1, work 1, present 1, ready 5, work 1, verify 2');
    expect(result.now.what).toContain('Scan again: brake pads');
  });

  it('stay ready when a fault is found later', () => {
    const found = makeFault(march(9), { what: 'boot leaks' });
    expect(strip(held({ ...ready, faults: [...ready.faults, found] }, 11))).toBe(
      'work 1, verify 1, work 1, present 1, ready 4, decide 2',
    );
  });

  it('run from the start of the wait, although work on something else came in between', () => {
    const vehicle = makeVehicle(march(1), {
      scans: [makeScan(march(1))],
      parts: [makePart(march(2), { orderedOn: march(2) })],
      labour: [makeLabour(march(7))],
    });
    expect(held(vehicle, 9).now.since).toBe(march(2));
  });
});

describe('the count of days', () => {
  it('is none on the day of purchase, and one where the shop counts that day', () => {
    const vehicle = makeVehicle(march(1));
    expect(held(vehicle, 1)).toMatchObject({ heldDays: 0, stretches: [], byCause: {} });
    expect(held(vehicle, 1, true)).toMatchObject({ heldDays: 1, byCause: { inspect: 1 } });
  });

  it('takes today in where the shop counts the first day', () => {
    const vehicle = makeVehicle(march(1), { arrival: { arrivedOn: march(3) }, scans: [scanned(5)] });
    expect(strip(held(vehicle, 5))).toBe('transit 2, inspect 2');
    expect(strip(held(vehicle, 5, true))).toBe('transit 2, inspect 2, work 1');
  });

  it('stops at the sale and does not change as the days go on', () => {
    const vehicle = makeVehicle(march(1), {
      scans: [makeScan(march(1))],
      parts: [makePart(march(1), { orderedOn: march(1), expectedOn: march(20) })],
      sublets: [makeSublet(march(1), { sentOn: march(2) })],
      sale: { soldOn: march(5), priceCents: 900_000, buyer: 'the trade', paidOffOn: null },
    });
    expect(strip(held(vehicle, 6))).toBe('work 1, sublet 3');
    expect(held(vehicle, 6).now).toEqual({
      standing: 'sold',
      since: march(5),
      what: 'the trade',
      expectedOn: null,
    });
    expect(held(vehicle, 30)).toEqual(held(vehicle, 6));
  });

  it('is never negative, even for a purchase entered with tomorrow’s day', () => {
    expect(held(makeVehicle(march(9)), 8)).toMatchObject({ heldDays: 0, stretches: [] });
  });
});
