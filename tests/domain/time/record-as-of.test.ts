// The record as it stood on an earlier day: nothing of it that came later may show.
import { describe, expect, it } from 'vitest';
import { changeDays, recordAsOf } from '../../../app/domain/time/record-as-of.ts';
import {
  makeAttempt,
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
} from '../../helpers/vehicle-maker.ts';
import { makeChase, makeTry } from '../codes/request-maker.ts';

const on = (dayOfMonth: number) => `2026-02-${String(dayOfMonth).padStart(2, '0')}`;
const fault = makeFault(on(3), { decision: makeDecision(on(5)), doneOn: on(9) });
const part = makePart(on(6), {
  orderedOn: on(5),
  receivedOn: on(7),
  fittedOn: on(8),
  coreReturnedOn: on(10),
});
const request = makeCodeRequest(on(4), { askedOn: on(6), answeredOn: on(8), outcome: 'refused' });
const sublet = makeSublet(on(4), { sentOn: on(6), backOn: on(8) });
const step = makeStep();
const job = makeJob(on(5), { steps: [step] });
const vehicle = makeVehicle(on(1), {
  arrival: { arrivedOn: on(2), expectedOn: on(2) },
  purchase: { paperReceivedOn: on(7) },
  scans: [makeScan(on(3))],
  faults: [fault],
  parts: [part],
  codeRequests: [request],
  sublets: [sublet],
  jobs: [job],
  attempts: [makeAttempt(on(8), job, step.id)],
  labour: [makeLabour(on(8))],
  otherCosts: [makeOtherCost(on(8), 1)],
  signOffs: [makeSignOff(on(9), 'road-test')],
  notes: [makeNote(on(8))],
  sale: { soldOn: on(12), priceCents: 1, buyer: '', paidOffOn: null },
});

describe('the record as it stood', () => {
  it('before anything happened holds the purchase and nothing else', () => {
    expect(recordAsOf(vehicle, on(1))).toEqual({
      ...makeVehicle(on(1), { id: vehicle.id, purchase: { paperReceivedOn: null } }),
      arrival: { arrivedOn: null, expectedOn: on(2) },
    });
  });

  it('on a day in between holds each fact as far as it had come', () => {
    const then = recordAsOf(vehicle, on(6));
    expect(then.faults).toEqual([{ ...fault, doneOn: null }]);
    expect(recordAsOf(vehicle, on(4)).faults).toEqual([{ ...fault, doneOn: null, decision: null }]);
    expect(then.parts).toEqual([{ ...part, receivedOn: null, fittedOn: null, coreReturnedOn: null }]);
    expect(then.codeRequests).toEqual([{ ...request, answeredOn: null, outcome: null }]);
    expect(recordAsOf(vehicle, on(4)).codeRequests[0]?.askedOn).toBeNull();
    expect(then.sublets).toEqual([{ ...sublet, backOn: null }]);
    expect(recordAsOf(vehicle, on(4)).sublets).toEqual([{ ...sublet, sentOn: null, backOn: null }]);
    expect(then.purchase.paperReceivedOn).toBeNull();
    expect(then.jobs).toEqual([job]);
    expect([then.attempts, then.labour, then.otherCosts, then.signOffs, then.notes, then.sale]).toEqual([
      [],
      [],
      [],
      [],
      [],
      null,
    ]);
  });

  it('cuts the later life of a code request to the day: how it was asked, chases, tries, forms filed, the closing', () => {
    const whole = makeCodeRequest(on(2), {
      askedOn: on(3),
      askedHow: 'letter',
      answeredOn: on(5),
      outcome: 'given',
      chases: [makeChase(on(4), on(5))],
      tries: [makeTry(on(6), 'wrong'), makeTry(on(7), 'right')],
      filing: { schemeId: 'us-secure-data-release', transactionOn: on(5), filedOn: on(8), reference: 'D-1' },
      keptWarnings: [{ key: 'serial-form', reason: 'older set', by: 'ada-1', keptOn: on(3) }],
      closedOn: on(9),
      closedWhy: 'done',
    });
    const asOf = (day: number) =>
      recordAsOf(makeVehicle(on(1), { codeRequests: [whole] }), on(day)).codeRequests[0] ?? whole;
    expect(asOf(2)).toMatchObject({ askedHow: null, chases: [], tries: [], keptWarnings: [], closedWhy: '' });
    expect(asOf(4)).toMatchObject({ askedHow: 'letter', chases: whole.chases, answeredOn: null });
    expect(asOf(6)).toMatchObject({
      tries: [whole.tries[0]],
      filing: { transactionOn: on(5), filedOn: null, reference: '' },
      closedOn: null,
    });
    expect(asOf(9)).toEqual(whole);
    expect(changeDays(makeVehicle(on(1), { codeRequests: [whole] }))).toEqual([1, 2, 3, 5, 6, 7, 9].map(on));
  });

  it('knows a part from the order on where it was noted later', () => {
    expect(recordAsOf(vehicle, on(4)).parts).toEqual([]);
    expect(recordAsOf(vehicle, on(5)).parts).toHaveLength(1);
  });

  it('on the last day is the whole record', () => {
    expect(recordAsOf(vehicle, on(12))).toEqual(vehicle);
  });

  it('changes on the days of its facts, in order, each once', () => {
    expect(changeDays(vehicle)).toEqual([2, 3, 4, 5, 6, 7, 8, 9].map(on));
  });
});
