// Every rule by which a caution comes onto a sheet, and leaves it again.
import { describe, expect, it } from 'vitest';
import { applicableCautions, cautionOrder, isBodyModule } from '../../../app/domain/sheets/applicable-cautions.ts';
import type { Vehicle } from '../../../app/domain/vehicle/vehicle.ts';
import { cautionKeySchema } from '../../../app/domain/work/cautions.ts';
import { exampleVehicle } from '../../helpers/sheet-example.ts';
import {
  makeAttempt,
  makeCodeRequest,
  makeDecision,
  makeFault,
  makeJob,
  makeScan,
  makeStep,
  makeSublet,
  makeVehicle,
} from '../../helpers/vehicle-maker.ts';

const day = '2026-03-04';
const keysOf = (vehicle: Vehicle) => applicableCautions(vehicle).map((caution) => caution.key);

describe('cautions for a vehicle', () => {
  it('are none where nothing calls for one', () => {
    expect(keysOf(makeVehicle(day))).toEqual([]);
  });

  it('can all be printed, each once', () => {
    expect([...cautionOrder].sort()).toEqual([...cautionKeySchema.options].sort());
  });

  it.each(['hybrid', 'electric'] as const)(
    'name high voltage on every %s vehicle, whatever is wrong with it',
    (drive) => {
      expect(applicableCautions(makeVehicle(day, { identity: { drive } }))).toEqual([
        { key: 'high-voltage', concerns: `${drive} drive` },
      ]);
    },
  );

  it('name airbags while airbag work is open or undecided, and no longer once it is done or left', () => {
    const fault = makeFault(day, { area: 'airbag', what: 'airbag lamp' });
    expect(keysOf(makeVehicle(day, { faults: [fault] }))).toEqual(['airbag-battery']);
    const decided = { ...fault, decision: makeDecision(day) };
    expect(keysOf(makeVehicle(day, { faults: [decided] }))).toEqual(['airbag-battery']);
    expect(keysOf(makeVehicle(day, { faults: [{ ...decided, doneOn: day }] }))).toEqual([]);
    const left = { ...fault, decision: makeDecision(day, { kind: 'leave', reason: 'x' }) };
    expect(keysOf(makeVehicle(day, { faults: [left] }))).toEqual([]);
  });

  it('name airbags for sublet airbag work that is not back', () => {
    const sublet = makeSublet(day, { area: 'airbag', what: 'seat belts' });
    expect(keysOf(makeVehicle(day, { sublets: [sublet] }))).toEqual(['airbag-battery']);
    expect(keysOf(makeVehicle(day, { sublets: [{ ...sublet, sentOn: day, backOn: day }] }))).toEqual([]);
  });

  it('name the four of programming for an open job, and none once its last step has worked', () => {
    const step = makeStep();
    const job = makeJob(day, { module: 'Gearbox', steps: [step] });
    const four = ['supply-voltage', 'never-interrupt', 'vin-permanent', 'keep-old-module'];
    expect(keysOf(makeVehicle(day, { jobs: [job] }))).toEqual(four);
    const done = makeVehicle(day, { jobs: [job], attempts: [makeAttempt(day, job, step.id)] });
    expect(keysOf(done)).toEqual([]);
  });

  it('do not ask to keep the old module where none is taken out', () => {
    const job = makeJob(day, { module: 'Gearbox', origin: 'kept', steps: [makeStep()] });
    expect(keysOf(makeVehicle(day, { jobs: [job] }))).not.toContain('keep-old-module');
  });

  it('say once what several cautions in a row are about', () => {
    const job = makeJob(day, { module: 'Gearbox', steps: [makeStep()] });
    expect(applicableCautions(makeVehicle(day, { jobs: [job] })).map((caution) => caution.concerns)).toEqual([
      'programming Gearbox',
      '',
      '',
      '',
    ]);
  });

  it('warn of moving a vehicle whose body module is faulty, left faults included', () => {
    const fault = makeFault(day, { module: 'Body control module', what: 'wipers dead' });
    const left = { ...fault, decision: makeDecision(day, { kind: 'leave', reason: 'x' }) };
    expect(keysOf(makeVehicle(day, { faults: [fault] }))).toEqual(['moving-vehicle']);
    expect(keysOf(makeVehicle(day, { faults: [left] }))).toEqual(['moving-vehicle']);
    const done = { ...fault, decision: makeDecision(day), doneOn: day };
    expect(keysOf(makeVehicle(day, { faults: [done] }))).toEqual([]);
  });

  it('warn of moving when the body module was silent in the latest scan only', () => {
    const silent = makeScan(day, { modules: [{ name: 'BCM', answered: false, codes: [] }] });
    const answering = makeScan('2026-03-09', { modules: [{ name: 'BCM', answered: true, codes: [] }] });
    expect(keysOf(makeVehicle(day, { scans: [silent] }))).toEqual(['moving-vehicle']);
    expect(keysOf(makeVehicle(day, { scans: [answering, silent] }))).toEqual([]);
  });

  it('warn of moving while a body module is being programmed', () => {
    const job = makeJob(day, { module: 'Body computer', steps: [makeStep()] });
    expect(keysOf(makeVehicle(day, { jobs: [job] }))).toContain('moving-vehicle');
  });

  it('name anti-theft codes while a code is to be had or to be used, and not after a refusal', () => {
    const asked = makeCodeRequest(day);
    expect(keysOf(makeVehicle(day, { codeRequests: [asked] }))).toEqual(['anti-theft-code']);
    const refused = makeCodeRequest(day, { askedOn: day, answeredOn: day, outcome: 'refused' });
    expect(keysOf(makeVehicle(day, { codeRequests: [refused] }))).toEqual([]);
    const step = makeStep({ needsCode: true });
    const given = makeCodeRequest(day, { askedOn: day, answeredOn: day, outcome: 'given' });
    const job = makeJob(day, { module: 'Gearbox', codeRequestId: given.id, steps: [step] });
    const open = makeVehicle(day, { codeRequests: [given], jobs: [job] });
    expect(keysOf(open)).toContain('anti-theft-code');
    expect(keysOf({ ...open, attempts: [makeAttempt(day, job, step.id)] })).toEqual([]);
  });

  it('take over what a step still to be done carries itself', () => {
    const step = makeStep({ title: 'Unplug the seat', cautions: ['airbag-battery'] });
    const job = makeJob(day, { module: 'Seat', steps: [step] });
    const vehicle = makeVehicle(day, { jobs: [job] });
    expect(applicableCautions(vehicle)[0]).toEqual({ key: 'airbag-battery', concerns: 'Unplug the seat' });
    expect(keysOf({ ...vehicle, attempts: [makeAttempt(day, job, step.id)] })).toEqual([]);
  });

  it('put what can kill first', () => {
    expect(keysOf(exampleVehicle)).toEqual(cautionOrder);
  });

  it.each(['Body control module', 'BCM', 'body computer', 'Body electronics', 'Steering lock', 'steering column lock'])(
    'know %s for a body module',
    (name) => expect(isBodyModule(name)).toBe(true),
  );

  it.each(['Engine', 'Airbag', 'Radio', 'Body panel left', 'antibody unit'])('do not take %s for one', (name) =>
    expect(isBodyModule(name)).toBe(false),
  );
});
