// What happened last time: which earlier faults count as alike, what fixed them, what that cost, which route worked.
import { describe, expect, it } from 'vitest';
import { similarCases } from '../../../app/domain/fleet/similar-cases.ts';
import type { Vehicle } from '../../../app/domain/vehicle/vehicle.ts';
import {
  makeAttempt,
  makeCodeRequest,
  makeDecision,
  makeFault,
  makeJob,
  makeLabour,
  makePart,
  makePerson,
  makeStep,
  makeSublet,
  makeVehicle,
} from '../../helpers/vehicle-maker.ts';

const terms = {
  rates: { labourCentsPerHour: 60_00 },
  people: [makePerson('technician-1'), makePerson('technician-2', { labourCentsPerHour: 90_00 })],
};
const query = { module: 'Body control module', codes: ['U0140'], exceptVehicleId: null };

type Told = {
  readonly module?: string;
  readonly codes?: string[];
  readonly doneOn?: string | null;
  readonly price?: number;
};

/** A dead body module, replaced with a used one, programmed on the vehicle at the second try. */
function replacedModule(stockNumber: string, about: Told = {}): Vehicle {
  const { module = 'body module', codes = ['U0140-00'], doneOn = '2026-02-10', price = 180_00 } = about;
  const fault = makeFault('2026-02-01', {
    what: 'body module silent',
    module,
    codes,
    decision: makeDecision('2026-02-02', { kind: 'replace' }),
    doneOn,
  });
  const step = makeStep();
  const job = makeJob('2026-02-05', { faultId: fault.id, steps: [step] });
  return makeVehicle('2026-01-30', {
    identity: { stockNumber },
    faults: [fault],
    parts: [
      makePart('2026-02-02', {
        what: 'Body  module',
        faultId: fault.id,
        priceCents: price,
        coreChargeCents: 40_00,
        fittedOn: '2026-02-09',
      }),
      makePart('2026-02-02', { what: 'wrong one', faultId: fault.id, priceCents: 99_00, returnedOn: '2026-02-06' }),
      makePart('2026-02-02', { what: 'wiper', priceCents: 12_00, fittedOn: '2026-02-06' }),
    ],
    jobs: [job],
    attempts: [
      makeAttempt('2026-02-08', job, step.id, { outcome: 'failed', route: 'pass-through' }),
      makeAttempt('2026-02-08', job, step.id, { outcome: 'stopped', route: 'bench' }),
      makeAttempt('2026-02-09', job, step.id, { outcome: 'worked', route: 'on-vehicle' }),
    ],
    labour: [
      makeLabour('2026-02-09', { minutes: 60, faultId: fault.id }),
      makeLabour('2026-02-09', { minutes: 20, faultId: fault.id, person: 'technician-2' }),
      makeLabour('2026-02-09', { minutes: 300 }),
    ],
    codeRequests: [
      makeCodeRequest('2026-02-03', {
        faultId: fault.id,
        outcome: 'given',
        askedOn: '2026-02-03',
        answeredOn: '2026-02-04',
        feeCents: 35_00,
      }),
      makeCodeRequest('2026-02-03', { faultId: fault.id, outcome: 'refused', feeCents: 35_00 }),
    ],
  });
}

describe('similar cases', () => {
  it('count everything that belongs to the fault and nothing else', () => {
    const found = similarCases([replacedModule('A-1')], query, terms);
    expect(found.match).toBe('both');
    expect(found.cases).toHaveLength(1);
    expect(found.cases[0]).toMatchObject({
      stockNumber: 'A-1',
      days: 9,
      fix: 'body module, body programmed (used)',
      costs: {
        minutes: 80,
        labourCents: 90_00,
        partsCents: 220_00,
        codesCents: 35_00,
        totalCents: 345_00,
        isIncomplete: false,
      },
    });
    expect(found.routes).toEqual([
      { route: 'on-vehicle', worked: 1, tried: 1 },
      { route: 'pass-through', worked: 0, tried: 1 },
    ]);
  });

  it('come closest first: module and code, then the code alone, then the module alone; only the closest are tallied', () => {
    const found = similarCases(
      [
        replacedModule('module', { codes: [], doneOn: '2026-02-20' }),
        replacedModule('code', { module: 'gateway' }),
        replacedModule('both-old', { doneOn: '2026-02-07', price: 100_00 }),
        replacedModule('both', { price: 300_00 }),
        replacedModule('neither', { module: 'radio', codes: ['B1000'] }),
      ],
      query,
      terms,
    );
    expect(found.cases.map(({ stockNumber }) => stockNumber)).toEqual(['both', 'both-old', 'code', 'module']);
    expect(found.fixes).toEqual([
      { fix: 'body module, body programmed (used)', count: 2, medianCents: 265_00, medianDays: 6 },
    ]);
    expect(found.routes[0]).toEqual({ route: 'on-vehicle', worked: 2, tried: 2 });
  });

  it('leave out the vehicle at hand and faults that are not finished, and count those left as they were', () => {
    const own = replacedModule('own');
    const left = makeVehicle('2026-01-01', {
      faults: [
        makeFault('2026-01-01', {
          codes: ['u0140'],
          decision: makeDecision('2026-01-02', { kind: 'leave', reason: 'old' }),
        }),
      ],
    });
    const found = similarCases(
      [own, replacedModule('open', { doneOn: null }), left],
      { ...query, exceptVehicleId: own.id },
      terms,
    );
    expect(found).toEqual({ match: null, cases: [], fixes: [], routes: [], leftAsTheyWere: 1 });
  });

  it('tell what fixed it how often, the most frequent first', () => {
    const repaired = (doneOn: string) => {
      const fault = makeFault('2026-02-01', { codes: ['U0140'], decision: makeDecision('2026-02-01'), doneOn });
      return makeVehicle('2026-02-01', {
        faults: [fault],
        labour: [makeLabour(doneOn, { minutes: 30, faultId: fault.id })],
      });
    };
    const sentOut = makeFault('2026-02-01', {
      codes: ['U0140'],
      decision: makeDecision('2026-02-01'),
      doneOn: '2026-02-09',
    });
    const away = makeSublet('2026-02-01', {
      what: 'Module repair',
      faultId: sentOut.id,
      backOn: '2026-02-08',
      quotedCents: null,
    });
    const found = similarCases(
      [
        repaired('2026-02-03'),
        makeVehicle('2026-02-01', { faults: [sentOut], sublets: [away] }),
        repaired('2026-02-05'),
      ],
      { ...query, module: '' },
      terms,
    );
    expect(found.match).toBe('code');
    expect(found.fixes).toEqual([
      { fix: 'repaired without a part', count: 2, medianCents: 30_00, medianDays: 2 },
      { fix: 'sent out: module repair', count: 1, medianCents: 0, medianDays: 8 },
    ]);
    expect(found.cases.map(({ costs }) => costs.isIncomplete)).toEqual([true, false, false]);
  });
});
