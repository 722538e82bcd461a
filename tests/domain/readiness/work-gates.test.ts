// The gates that the facts of the work decide: each open, met and not needed, whose move an open one is, and since when.
import { describe, expect, it } from 'vitest';
import type { Gate } from '../../../app/domain/readiness/gate.ts';
import { judgeReadiness } from '../../../app/domain/readiness/gates.ts';
import type { Vehicle } from '../../../app/domain/vehicle/vehicle.ts';
import {
  makeAttempt,
  makeCodeRequest,
  makeDecision,
  makeFault,
  makeJob,
  makePart,
  makeScan,
  makeStep,
  makeSublet,
  makeVehicle,
} from '../../helpers/vehicle-maker.ts';
import { makeChase, makeTry } from '../codes/request-maker.ts';

const first = '2026-02-02';
const second = '2026-02-03';
const third = '2026-02-04';

function gateOf(vehicle: Vehicle, key: string): Gate {
  const gate = judgeReadiness(vehicle, []).gates.find((candidate) => candidate.key === key);
  if (!gate) throw new Error(`No gate ${key}`);
  return gate;
}

/** What an open gate asks for, of whom, since when. */
function asks(vehicle: Vehicle, key: string) {
  const gate = gateOf(vehicle, key);
  expect(gate.state).toBe('open');
  expect(gate.metOn).toBeNull();
  return gate.items.map((item) => [item.who, item.text, item.since]);
}

describe('the gates stand in the order of the way', () => {
  it('and are always all there', () => {
    const keys = judgeReadiness(makeVehicle(first), []).gates.map((gate) => gate.key);
    expect(keys).toEqual([
      'arrived',
      'inspected',
      'decided',
      'parts',
      'codes',
      'programmed',
      'sublet',
      'repaired',
      'post-scan',
      'price',
      'paper',
    ]);
  });
});

describe('arrived', () => {
  it('is open in transit and met by the arrival', () => {
    const transit = makeVehicle(first, { arrival: { arrivedOn: null, expectedOn: second } });
    expect(asks(transit, 'arrived')).toEqual([['outside', 'In transit, expected on 2026-02-03', first]]);
    const unknown = makeVehicle(first, { arrival: { arrivedOn: null } });
    expect(asks(unknown, 'arrived')).toEqual([['outside', 'In transit, no day of arrival known', first]]);
    expect(gateOf(makeVehicle(first), 'arrived')).toMatchObject({ state: 'met', metOn: first });
  });
});

describe('inspected', () => {
  it('is open without any scan, met by the first', () => {
    const vehicle = makeVehicle(first);
    expect(asks(vehicle, 'inspected')).toEqual([['technician', 'Scan on arrival is missing', first]]);
    const scans = [makeScan(third), makeScan(second)];
    expect(gateOf({ ...vehicle, scans }, 'inspected')).toMatchObject({ state: 'met', metOn: second });
  });
});

describe('decided', () => {
  it('is open for each undecided fault, met on the last decision, not needed without faults', () => {
    const undecided = makeFault(first, { what: 'horn silent' });
    const decided = makeFault(first, { decision: makeDecision(third) });
    const vehicle = makeVehicle(first, { faults: [undecided, decided] });
    expect(asks(vehicle, 'decided')).toEqual([['manager', 'Decide: horn silent', first]]);
    expect(gateOf({ ...vehicle, faults: [decided] }, 'decided')).toMatchObject({ state: 'met', metOn: third });
    expect(gateOf({ ...vehicle, faults: [] }, 'decided').state).toBe('not-needed');
  });
});

describe('parts', () => {
  const asksFor = (about: Parameters<typeof makePart>[1]) =>
    asks(makeVehicle(first, { parts: [makePart(first, about)] }), 'parts')[0];

  it('are the manager’s to order, somebody outside’s to deliver, the technician’s to fit', () => {
    expect(asksFor({})).toEqual(['manager', 'Order: body module', first]);
    expect(asksFor({ orderedOn: second })).toEqual([
      'outside',
      'Part on its way: body module from Yard, no day promised',
      second,
    ]);
    expect(asksFor({ orderedOn: second, expectedOn: third, supplier: '' })).toEqual([
      'outside',
      'Part on its way: body module, expected on 2026-02-04',
      second,
    ]);
    expect(asksFor({ orderedOn: first, receivedOn: third })).toEqual([
      'technician',
      'Fit or send back: body module',
      third,
    ]);
  });

  it('that are modules are fitted when their job says so', () => {
    const part = makePart(first, { orderedOn: first, receivedOn: second });
    const copy = makeStep({ title: 'copy the saved data', needsPart: true });
    const job = makeJob(first, { partId: part.id, steps: [copy, makeStep({ title: 'fit it' })] });
    const vehicle = makeVehicle(first, { parts: [part], jobs: [job] });
    expect(asks(vehicle, 'parts')).toEqual([
      ['technician', 'Here, not fitted: body module; next: copy the saved data', second],
    ]);
    const attempts = job.plan.steps.map((step) => makeAttempt(third, job, step.id));
    expect(asks({ ...vehicle, attempts }, 'parts')).toEqual([['technician', 'Fit or send back: body module', second]]);
  });

  it('are met when every one is fitted or gone back, not needed without any', () => {
    const fitted = makePart(first, { orderedOn: first, receivedOn: first, fittedOn: second });
    const back = makePart(first, { orderedOn: first, receivedOn: first, returnedOn: third });
    const vehicle = makeVehicle(first, { parts: [fitted, back] });
    expect(gateOf(vehicle, 'parts')).toMatchObject({ state: 'met', metOn: third });
    expect(gateOf({ ...vehicle, parts: [] }, 'parts').state).toBe('not-needed');
  });
});

describe('codes', () => {
  const refused = makeCodeRequest(first, { askedOn: first, answeredOn: second, outcome: 'refused' });

  it('are the manager’s to ask for and somebody outside’s to give', () => {
    const vehicle = makeVehicle(first, { codeRequests: [makeCodeRequest(first)] });
    expect(asks(vehicle, 'codes')).toEqual([['manager', 'Ask for: immobiliser code', first]]);
    const asked = makeVehicle(first, {
      codeRequests: [makeCodeRequest(first, { askedOn: second, expectedOn: third })],
    });
    expect(asks(asked, 'codes')).toEqual([
      ['outside', 'Asked Code desk for: immobiliser code, expected on 2026-02-04', second],
    ]);
  });

  it('are met when given, not needed when none was asked for', () => {
    const given = makeCodeRequest(first, { askedOn: first, answeredOn: third, outcome: 'given' });
    expect(gateOf(makeVehicle(first, { codeRequests: [given] }), 'codes')).toMatchObject({
      state: 'met',
      metOn: third,
    });
    expect(gateOf(makeVehicle(first), 'codes').state).toBe('not-needed');
  });

  it('that do not work are the manager’s until one works, and are met on that day', () => {
    const given = { askedOn: first, answeredOn: first, outcome: 'given' as const };
    const wrong = makeCodeRequest(first, { ...given, tries: [makeTry(second, 'wrong')] });
    expect(asks(makeVehicle(first, { codeRequests: [wrong] }), 'codes')).toEqual([
      ['manager', 'Does not work: immobiliser code', second],
    ]);
    const right = { ...wrong, tries: [...wrong.tries, makeTry(third, 'right')] };
    expect(gateOf(makeVehicle(first, { codeRequests: [right] }), 'codes')).toMatchObject({
      state: 'met',
      metOn: third,
    });
  });

  it('that are closed hold nothing, whatever they stood at', () => {
    const over = { closedOn: third, closedWhy: 'radio replaced' };
    const asked = makeCodeRequest(first, { askedOn: first, ...over });
    expect(gateOf(makeVehicle(first, { codeRequests: [asked] }), 'codes')).toMatchObject({
      state: 'met',
      metOn: third,
    });
    const closed = makeVehicle(first, { codeRequests: [{ ...refused, ...over }] });
    expect(gateOf(closed, 'codes')).toMatchObject({ state: 'met', items: [] });
  });

  it('are expected for the day that was promised when they were chased last', () => {
    const chases = [makeChase(second, third)];
    const asked = makeCodeRequest(first, { askedOn: first, expectedOn: first, chases });
    expect(asks(makeVehicle(first, { codeRequests: [asked] }), 'codes')).toEqual([
      ['outside', `Asked Code desk for: immobiliser code, expected on ${third}`, first],
    ]);
  });

  it('that were refused are the manager’s, to find another way', () => {
    const vehicle = makeVehicle(first, { codeRequests: [refused] });
    expect(asks(vehicle, 'codes')).toEqual([['manager', 'Refused, find another way: immobiliser code', second]]);
  });

  it('that were refused no longer hold once asked for elsewhere; another module’s code does not help', () => {
    const again = makeCodeRequest(third, { askedOn: third, askedOf: 'Key people' });
    const other = { ...again, module: 'engine' };
    expect(asks(makeVehicle(first, { codeRequests: [refused, again] }), 'codes')).toEqual([
      ['outside', 'Asked Key people for: immobiliser code', third],
    ]);
    expect(asks(makeVehicle(first, { codeRequests: [refused, other] }), 'codes')).toHaveLength(2);
  });

  it('that were refused no longer hold once the fault is left, finished, decided again or given a part', () => {
    const fault = makeFault(first, { decision: makeDecision(first) });
    const request = { ...refused, faultId: fault.id };
    const vehicle = makeVehicle(first, { codeRequests: [request], faults: [fault] });
    expect(gateOf(vehicle, 'codes').state).toBe('open');
    const ways: readonly Partial<Vehicle>[] = [
      { faults: [{ ...fault, decision: makeDecision(first, { kind: 'leave', reason: 'spare key works' }) }] },
      { faults: [{ ...fault, doneOn: third }] },
      { faults: [{ ...fault, decision: makeDecision(third, { kind: 'replace' }) }] },
      { parts: [makePart(third, { faultId: fault.id, orderedOn: third })] },
    ];
    for (const way of ways) expect(gateOf({ ...vehicle, ...way }, 'codes').state).toBe('met');
    const before = makePart(first, { faultId: fault.id, orderedOn: first });
    expect(gateOf({ ...vehicle, parts: [before] }, 'codes').state).toBe('open');
  });

  it('that were refused no longer hold once the job that wanted them is finished without', () => {
    const step = makeStep();
    const job = makeJob(first, { codeRequestId: refused.id, steps: [step] });
    const vehicle = makeVehicle(first, { codeRequests: [refused], jobs: [job] });
    expect(gateOf(vehicle, 'codes').state).toBe('open');
    const attempts = [makeAttempt(third, job, step.id)];
    expect(gateOf({ ...vehicle, attempts }, 'codes').state).toBe('met');
    const wantsItToo = makeJob(first, { codeRequestId: refused.id, steps: [makeStep()] });
    expect(gateOf({ ...vehicle, attempts, jobs: [wantsItToo, job] }, 'codes').state).toBe('open');
  });
});

describe('programmed', () => {
  const step = makeStep({ title: 'write it' });
  const more = makeStep({ title: 'teach the keys' });

  it('is open until every step worked or was left out, and met on the day of the last', () => {
    const job = makeJob(first, { steps: [step, more, makeStep({ leftOutReason: 'kept module' })] });
    const vehicle = makeVehicle(first, { jobs: [job] });
    expect(asks(vehicle, 'programmed')).toEqual([['technician', 'Program Body: 2 steps left, next: write it', first]]);
    const attempts = [
      makeAttempt(second, job, step.id),
      makeAttempt(second, job, more.id, { outcome: 'failed' }),
      makeAttempt(second, job, more.id, { outcome: 'stopped' }),
    ];
    expect(asks({ ...vehicle, attempts }, 'programmed')).toEqual([
      ['technician', 'Program Body: 1 step left, next: teach the keys', first],
    ]);
    const done = [...attempts, makeAttempt(third, job, more.id)];
    expect(gateOf({ ...vehicle, attempts: done }, 'programmed')).toMatchObject({ state: 'met', metOn: third });
    expect(gateOf({ ...vehicle, jobs: [] }, 'programmed').state).toBe('not-needed');
  });

  it('is somebody outside’s while the part or the code is on its way, the manager’s while nobody has asked', () => {
    const needsPart = makeStep({ title: 'write it', needsPart: true });
    const part = makePart(first, { orderedOn: second });
    const waiting = makeJob(first, { partId: part.id, steps: [needsPart] });
    expect(asks(makeVehicle(first, { parts: [part], jobs: [waiting] }), 'programmed')).toEqual([
      ['outside', 'Program Body: 1 step left (waits: body module is not here)', first],
    ]);
    const unordered = makeVehicle(first, { parts: [{ ...part, orderedOn: null }], jobs: [waiting] });
    expect(asks(unordered, 'programmed')[0]?.[0]).toBe('manager');

    const needsCode = makeStep({ title: 'write it', needsCode: true });
    const request = makeCodeRequest(first, { askedOn: second });
    const locked = makeJob(first, { codeRequestId: request.id, steps: [needsCode] });
    expect(asks(makeVehicle(first, { codeRequests: [request], jobs: [locked] }), 'programmed')).toEqual([
      ['outside', 'Program Body: 1 step left (waits: the immobiliser code has not been given)', first],
    ]);
    const unlinked = makeVehicle(first, { jobs: [makeJob(first, { steps: [needsCode] })] });
    expect(asks(unlinked, 'programmed')[0]?.[0]).toBe('manager');
  });

  it('is the technician’s as long as the next step needs neither', () => {
    const part = makePart(first, { orderedOn: first });
    const steps = [makeStep({ title: 'read the old module' }), makeStep({ needsPart: true })];
    const job = makeJob(first, { partId: part.id, steps });
    expect(asks(makeVehicle(first, { parts: [part], jobs: [job] }), 'programmed')[0]?.slice(0, 2)).toEqual([
      'technician',
      'Program Body: 2 steps left, next: read the old module',
    ]);
  });
});

describe('sublet', () => {
  it('is the manager’s to send and somebody outside’s to bring back', () => {
    const sublet = makeSublet(first);
    expect(asks(makeVehicle(first, { sublets: [sublet] }), 'sublet')).toEqual([
      ['manager', 'Send out: windscreen', first],
    ]);
    const out = { ...sublet, sentOn: second, expectedOn: third };
    expect(asks(makeVehicle(first, { sublets: [out] }), 'sublet')).toEqual([
      ['outside', 'Out: windscreen at Glass people, expected on 2026-02-04', second],
    ]);
    const back = { ...out, backOn: third };
    expect(gateOf(makeVehicle(first, { sublets: [back] }), 'sublet')).toMatchObject({ state: 'met', metOn: third });
    expect(gateOf(makeVehicle(first), 'sublet').state).toBe('not-needed');
  });
});

describe('repaired', () => {
  const fault = makeFault(first, { decision: makeDecision(second, { kind: 'replace' }) });

  it('is the technician’s, met on the day the last fault is finished, not needed when all are left', () => {
    expect(asks(makeVehicle(first, { faults: [fault] }), 'repaired')).toEqual([
      ['technician', 'Replace: wipers dead', second],
    ]);
    const done = makeVehicle(first, { faults: [{ ...fault, doneOn: third }] });
    expect(gateOf(done, 'repaired')).toMatchObject({ state: 'met', metOn: third });
    const left = makeFault(first, { decision: makeDecision(first, { kind: 'leave', reason: 'worn, not broken' }) });
    expect(gateOf(makeVehicle(first, { faults: [left] }), 'repaired').state).toBe('not-needed');
  });

  it('is nobody’s in the shop while what the fault needs is with others', () => {
    const faultId = fault.id;
    const owing: readonly (readonly [Partial<Vehicle>, string])[] = [
      [{ parts: [makePart(first, { faultId, orderedOn: first })] }, 'body module is not here'],
      [{ sublets: [makeSublet(first, { faultId, sentOn: first })] }, 'windscreen is not back'],
      [{ codeRequests: [makeCodeRequest(first, { faultId, askedOn: first })] }, 'immobiliser code has not been given'],
      [{ jobs: [makeJob(first, { faultId, steps: [makeStep()] })] }, 'Body is not programmed'],
    ];
    for (const [facts, why] of owing)
      expect(asks(makeVehicle(first, { faults: [fault], ...facts }), 'repaired')).toEqual([
        ['outside', `Replace: wipers dead (waits: ${why})`, second],
      ]);
    const another = makePart(first, { orderedOn: first });
    expect(asks(makeVehicle(first, { faults: [fault], parts: [another] }), 'repaired')[0]?.[0]).toBe('technician');
  });
});
