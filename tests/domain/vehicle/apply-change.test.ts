// A change gives a new record or a reason: stamps, references and removals. The rules of single facts and sections have their own tests.

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { shippedCodeKinds } from '../../../app/domain/codes/code-kinds.ts';
import { generalPack } from '../../../app/domain/programming/general-pack.ts';
import type { JobModule, ProgrammingJob } from '../../../app/domain/programming/programming-job.ts';
import { applyChange, describeChange } from '../../../app/domain/vehicle/apply-change.ts';
import { type FactList, factListSchema, type VehicleChange } from '../../../app/domain/vehicle/change.ts';
import { type Vehicle, vehicleSchema } from '../../../app/domain/vehicle/vehicle.ts';
import { arbitraryVehicle } from '../../helpers/arbitrary-vehicle.ts';
import { jobModule, plannedJob } from '../../helpers/planned-job.ts';
import {
  makeAttempt,
  makeCodeRequest,
  makeFault,
  makeJob,
  makeLabour,
  makeNote,
  makePart,
  makeScan,
  makeStep,
  makeSublet,
  makeVehicle,
  stampAt,
} from '../../helpers/vehicle-maker.ts';

const today = '2026-03-10';
const stamp = { by: 'manager-1', at: '2026-03-10T09:00:00.000Z' };
const context = { today, market: 'US', stamp, rulePack: generalPack, codeKinds: shippedCodeKinds } as const;

function apply(vehicle: Vehicle, change: VehicleChange): Vehicle {
  const result = applyChange(vehicle, change, context);
  if (!result.ok) throw new Error(JSON.stringify(result.error));
  return result.value;
}

function refused(vehicle: Vehicle, change: VehicleChange) {
  const result = applyChange(vehicle, change, context);
  if (result.ok) throw new Error('It was not refused.');
  return result.error;
}

/** The fact as a person would enter it again: without its stamp. */
function draftOf<Fact extends { entered: unknown }>({ entered: _, ...draft }: Fact): Omit<Fact, 'entered'> {
  return draft;
}

function put(list: FactList, fact: { id: string; entered: unknown }): VehicleChange {
  return { kind: 'put', list, item: draftOf(fact) } as unknown as VehicleChange;
}

function freeze<Value>(value: Value): Value {
  if (typeof value === 'object' && value !== null) {
    for (const inner of Object.values(value)) freeze(inner);
    Object.freeze(value);
  }
  return value;
}

describe('putting a fact', () => {
  it('stamps a new one with who entered it now', () => {
    const next = apply(makeVehicle('2026-03-01'), put('notes', makeNote('2026-03-09')));
    expect(next.notes).toMatchObject([{ entered: stamp }]);
  });

  it('keeps place and first stamp when it is corrected by somebody else', () => {
    const notes = [makeNote('2026-03-02', 'one'), makeNote('2026-03-03', 'two'), makeNote('2026-03-04', 'three')];
    const [one, two, three] = notes;
    if (!one || !two || !three) throw new Error('Three notes were made.');
    const next = apply(makeVehicle('2026-03-01', { notes }), put('notes', { ...two, text: 'two, corrected' } as never));
    expect(next.notes).toEqual([one, { ...two, text: 'two, corrected' }, three]);
    expect(next.notes[1]?.entered).toEqual(stampAt('2026-03-03'));
  });

  it('refuses a reference to something that is not in the record, naming the field', () => {
    const vehicle = makeVehicle('2026-03-01');
    const gone = 'gone-1';
    const planned = (module: Partial<JobModule>, about: Partial<ProgrammingJob> = {}) =>
      plannedJob(today, [jobModule('radio', 'kept', module)], about);
    const cases: readonly (readonly [VehicleChange, string, string])[] = [
      [put('parts', makePart(today, { faultId: gone })), 'faultId', 'fault'],
      [put('labour', makeLabour(today, { faultId: gone })), 'faultId', 'fault'],
      [put('sublets', makeSublet(today, { faultId: gone })), 'faultId', 'fault'],
      [put('codeRequests', makeCodeRequest(today, { faultId: gone })), 'faultId', 'fault'],
      [put('jobs', planned({}, { faultId: gone })), 'faultId', 'fault'],
      [put('jobs', planned({ partId: gone })), 'modules.0.partId', 'part'],
      [put('jobs', planned({ codeRequestId: gone })), 'modules.0.codeRequestId', 'code request'],
      [put('attempts', makeAttempt(today, makeJob(today), 'step-x')), 'jobId', 'programming job'],
    ];
    for (const [change, field, what] of cases)
      expect(refused(vehicle, change)).toEqual([
        { field, sentence: `The ${what} it refers to is not in this record. Choose another, or none.` },
      ]);
  });

  it('refuses an attempt at a step that its job does not have', () => {
    const job = plannedJob(today, [jobModule('radio', 'kept')]);
    const attempt = makeAttempt(today, job, 'another-step');
    expect(refused(makeVehicle(today, { jobs: [job] }), put('attempts', attempt))).toEqual([
      { field: 'stepId', sentence: 'The plan of “Body” has no such step. Choose one of its steps.' },
    ]);
  });

  it('refuses an attempt at a step that cannot be begun, and a plan that the rules do not give', () => {
    const job = plannedJob(today, [jobModule('radio', 'kept')]);
    const vehicle = makeVehicle(today, { jobs: [job] });
    expect(refused(vehicle, put('attempts', makeAttempt(today, job, 'clear-codes')))).toMatchObject([
      { field: 'override', sentence: expect.stringContaining('First: ') },
    ]);
    expect(apply(vehicle, put('attempts', makeAttempt(today, job, 'scan-before'))).attempts).toHaveLength(1);
    const ungated = job.plan.steps.map((step) => ({ ...step, gates: [] }));
    const another = { ...job, id: 'job-other', plan: { ...job.plan, steps: ungated } };
    expect(refused(vehicle, put('jobs', another))).toMatchObject([{ field: 'plan' }]);
  });
});

describe('removing a fact', () => {
  it('takes it out of its list', () => {
    const scans = [makeScan('2026-03-02'), makeScan('2026-03-03')];
    const vehicle = makeVehicle('2026-03-01', { scans });
    const next = apply(vehicle, { kind: 'remove', list: 'scans', id: scans[0]?.id ?? '' });
    expect(next.scans).toEqual([scans[1]]);
  });

  it('is refused while something refers to it, naming what', () => {
    const fault = makeFault(today);
    const part = makePart(today, { faultId: fault.id });
    const request = makeCodeRequest(today);
    const step = makeStep();
    const job = makeJob(today, { partId: part.id, codeRequestId: request.id, steps: [step] });
    const vehicle = makeVehicle(today, {
      faults: [fault],
      parts: [part],
      codeRequests: [request],
      jobs: [job],
      attempts: [makeAttempt(today, job, step.id)],
      labour: [makeLabour(today, { faultId: fault.id })],
      sublets: [makeSublet(today, { faultId: fault.id })],
    });
    const sentence = (list: FactList, id: string) => refused(vehicle, { kind: 'remove', list, id })[0]?.sentence;
    const refers = (what: string) => `Something still refers to this entry: ${what}. Remove or unlink that first.`;
    expect(sentence('faults', fault.id)).toBe(refers('a part, booked work, sublet work'));
    expect(sentence('parts', part.id)).toBe(refers('a programming job'));
    expect(sentence('codeRequests', request.id)).toBe(refers('a programming job'));
    expect(sentence('jobs', job.id)).toBe(refers('a programming attempt'));
  });

  it('is refused when somebody removed it already', () => {
    expect(refused(makeVehicle(today), { kind: 'remove', list: 'notes', id: 'note-gone' })).toEqual([
      { field: '', sentence: 'This entry is no longer there; somebody removed it already.' },
    ]);
  });
});

describe('setting a section', () => {
  it('replaces it as a whole and nothing else', () => {
    const vehicle = makeVehicle('2026-03-01');
    const targets = { ...vehicle.targets, askingCents: 123 };
    expect(apply(vehicle, { kind: 'set', section: 'targets', value: targets })).toEqual({ ...vehicle, targets });
  });
});

describe('the words for a change', () => {
  it('say what was added, changed or removed', () => {
    const note = makeNote(today);
    const vehicle = makeVehicle(today, { notes: [note] });
    expect(describeChange(vehicle, put('notes', note))).toBe('a note changed');
    expect(describeChange(vehicle, put('parts', makePart(today)))).toBe('a part added');
    expect(describeChange(vehicle, { kind: 'remove', list: 'notes', id: note.id })).toBe('a note removed');
    expect(describeChange(vehicle, { kind: 'set', section: 'sale', value: null })).toBe('sale changed');
  });
});

describe('any record', () => {
  /** Lists in an order in which every reference is there before it is needed. */
  const entering: readonly FactList[] = [
    'faults',
    'parts',
    'codeRequests',
    'scans',
    'batteryReadings',
    'jobs',
    'attempts',
    'labour',
    'sublets',
    'otherCosts',
    'signOffs',
    'notes',
    // None in these records: a file is added by a use case of its own.
    'attachments',
  ];

  it('can be entered fact by fact, and taken back to nothing in the other order', () => {
    expect([...entering].sort()).toEqual([...factListSchema.options].sort());
    fc.assert(
      fc.property(arbitraryVehicle, ({ vehicle, today: lookedAt }) => {
        const at = { ...context, today: lookedAt };
        const empty: Vehicle = { ...vehicle, ...Object.fromEntries(entering.map((list) => [list, []])) };
        let record = freeze(structuredClone(empty));
        const steps: { before: Vehicle; list: FactList; id: string }[] = [];
        for (const list of entering) {
          for (const fact of vehicle[list]) {
            const result = applyChange(record, freeze(put(list, fact)), { ...at, stamp: fact.entered });
            if (!result.ok) throw new Error(JSON.stringify(result.error));
            steps.push({ before: record, list, id: fact.id });
            record = freeze(result.value);
          }
        }
        expect(record).toEqual(vehicle);
        vehicleSchema.parse(record);
        for (const { before, list, id } of steps.reverse()) {
          const result = applyChange(record, { kind: 'remove', list, id }, at);
          if (!result.ok) throw new Error(JSON.stringify(result.error));
          record = freeze(result.value);
          expect(record).toEqual(before);
        }
        expect(record).toEqual(empty);
      }),
    );
  });

  it('is given back by putting the old value after a correction, and was never altered in place', () => {
    fc.assert(
      fc.property(
        arbitraryVehicle,
        fc.constantFrom(...entering),
        fc.nat(),
        ({ vehicle, today: lookedAt }, list, at) => {
          const fact = vehicle[list][at % Math.max(1, vehicle[list].length)];
          fc.pre(fact !== undefined);
          if (!fact) return;
          const before = freeze(structuredClone(vehicle));
          const other = { ...context, today: lookedAt };
          const field = (['note', 'text', 'message', 'what'] as const).find((name) => name in fact);
          expect(field).toBeDefined();
          const changed = applyChange(before, put(list, { ...fact, [field ?? '']: 'another' }), other);
          if (!changed.ok) throw new Error(JSON.stringify(changed.error));
          expect(changed.value).not.toEqual(before);
          const back = applyChange(changed.value, put(list, fact), other);
          expect(back).toEqual({ ok: true, value: before });
        },
      ),
    );
  });
});
