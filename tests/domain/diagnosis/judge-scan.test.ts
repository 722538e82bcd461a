// What a kept scan's monitors come to for its vehicle: the fuel that the rules ask for, permanent codes, distance, and what set them back.
import { describe, expect, it } from 'vitest';
import { chosenScheme, inspectionSchemes } from '../../../app/domain/diagnosis/inspection-schemes.ts';
import { inspectionFuelOf, judgeScan } from '../../../app/domain/diagnosis/judge-scan.ts';
import { readinessResets } from '../../../app/domain/diagnosis/readiness-resets.ts';
import { plainCode } from '../../../app/domain/diagnosis/scan.ts';
import { makeAttempt, makeJob, makeScan, makeStep, makeVehicle } from '../../helpers/vehicle-maker.ts';

const scheme = (id: string) => chosenScheme({ chosenId: id, schemes: [...inspectionSchemes] });
const day = '2026-03-10';

describe('the fuel of a vehicle', () => {
  it('follows from its drive and from the ignition that the reading tells', () => {
    expect(inspectionFuelOf({ drive: 'combustion' }, { ignition: 'spark' })).toBe('petrol');
    expect(inspectionFuelOf({ drive: 'combustion' }, { ignition: 'compression' })).toBe('diesel');
    expect(inspectionFuelOf({ drive: 'hybrid' }, { ignition: 'spark' })).toBe('hybrid');
    expect(inspectionFuelOf({ drive: 'electric' }, null)).toBe('electric');
    expect(inspectionFuelOf({ drive: 'combustion' }, null)).toBeNull();
  });
});

describe('a scan judged', () => {
  const identity = { drive: 'combustion' as const, modelYear: 2005 };

  it('by the chosen scheme: evaporative system alone passes in both, catalyst alone fails in California', () => {
    const evaporative = makeScan(day, { monitorBytes: [0x00, 0x07, 0x65, 0x04] });
    const catalyst = makeScan(day, { monitorBytes: [0x00, 0x07, 0x65, 0x01] });
    const verdict = (scan: typeof catalyst, id: string) => judgeScan(scan, identity, scheme(id))?.judgement?.verdict;
    expect(verdict(evaporative, 'us-federal-guidance')).toBe('passes');
    expect(verdict(evaporative, 'us-california')).toBe('passes');
    expect(verdict(catalyst, 'us-federal-guidance')).toBe('passes');
    expect(verdict(catalyst, 'us-california')).toBe('fails');
  });

  it('says nothing without a reading, and only the reading without a scheme or a model year', () => {
    expect(judgeScan(makeScan(day), identity, scheme('us-california'))).toBeNull();
    const scan = makeScan(day, { monitorBytes: [0x00, 0x07, 0x65, 0x04] });
    expect(judgeScan(scan, identity, null)).toMatchObject({ judgement: null, reading: { isReady: false } });
    expect(judgeScan(scan, { ...identity, modelYear: null }, scheme('us-california'))?.judgement).toBeNull();
    expect(judgeScan(scan, { ...identity, drive: 'electric' }, scheme('us-california'))?.judgement?.verdict).toBe(
      'not-applicable',
    );
  });

  it('counts permanent codes until it was driven far enough, in miles or kilometres', () => {
    const permanent = makeScan(day, {
      monitorBytes: [0x00, 0x07, 0x65, 0x00],
      modules: [{ name: 'Engine', answered: true, codes: [plainCode('P0420', 'permanent')] }],
      warmUpsSinceClear: 15,
    });
    const verdict = (reading: number, unit: 'km' | 'mi') =>
      judgeScan(
        { ...permanent, distanceSinceClear: { reading, unit } },
        { ...identity, modelYear: 2012 },
        scheme('us-california'),
      )?.judgement?.verdict;
    expect(judgeScan(permanent, { ...identity, modelYear: 2012 }, scheme('us-california'))?.judgement?.verdict).toBe(
      'fails',
    );
    expect(verdict(200, 'mi')).toBe('passes');
    expect(verdict(200, 'km')).toBe('fails');
    expect(verdict(322, 'km')).toBe('passes');
  });
});

describe('what set the monitors back', () => {
  it('is the clear before the scan and programming of the engine module on or before its day', () => {
    const step = makeStep();
    const engine = makeJob('2026-03-01', { module: 'Engine control module', steps: [step] });
    const body = makeJob('2026-03-01', { module: 'Body control module', steps: [step] });
    const vehicle = makeVehicle('2026-02-20', {
      jobs: [engine, body],
      attempts: [
        makeAttempt('2026-03-08', engine, step.id),
        makeAttempt('2026-03-12', engine, step.id),
        makeAttempt('2026-03-09', body, step.id),
      ],
    });
    expect(readinessResets(vehicle, makeScan(day, { clearedBefore: true }))).toEqual([
      { on: '2026-03-08', what: 'programming of the engine module' },
      { on: day, what: 'codes cleared before this scan' },
    ]);
    expect(readinessResets(makeVehicle('2026-02-20'), makeScan(day))).toEqual([]);
  });
});
