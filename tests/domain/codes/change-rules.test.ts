// What is held against a changed code request: proof first, and what the shop's kind asks for, on the day it is marked asked.
import { describe, expect, it } from 'vitest';
import { requestChangeProblems } from '../../../app/domain/codes/change-rules.ts';
import { shippedCodeKinds } from '../../../app/domain/codes/code-kinds.ts';
import { codeKindName, codeKindWords, codeName } from '../../../app/domain/codes/code-name.ts';
import { applyChange } from '../../../app/domain/vehicle/apply-change.ts';
import { makeVehicle, stampAt } from '../../helpers/vehicle-maker.ts';
import { makeRequest } from './request-maker.ts';

const setting = { vin: '1M8GDM9A3KP000009', modelYear: null, codeKinds: shippedCodeKinds };
const drafted = makeRequest({ proof: null, deviceSerial: '' });
const fieldsOf = (...given: Parameters<typeof requestChangeProblems>) =>
  requestChangeProblems(...given).map(({ field }) => field);

describe('marking a request asked', () => {
  it('is refused without proof of ownership and without what its kind must carry, for a new request too', () => {
    const asked = { ...drafted, askedOn: '2026-03-02' };
    expect(fieldsOf(drafted, asked, setting)).toEqual(['proof', 'deviceSerial']);
    expect(fieldsOf(null, asked, { ...setting, vin: '' })).toEqual(['proof', 'vin', 'deviceSerial']);
    expect(fieldsOf(null, drafted, setting)).toEqual([]);
  });

  it('is taken once all of it is there', () => {
    expect(fieldsOf(drafted, makeRequest({ askedOn: '2026-03-02' }), setting)).toEqual([]);
  });

  it('asks for a reason where the serial does not look as usual for the model year, and takes it with one', () => {
    const asked = makeRequest({ askedOn: '2026-03-02', deviceSerial: 'T1234567890ABC' });
    const later = { ...setting, modelYear: 2016 };
    expect(requestChangeProblems(null, asked, later)).toEqual([
      {
        field: 'deviceSerial',
        sentence:
          'Radio code: a serial for model year 2016 is usually 14 letters and digits beginning with A2C. Check it, or keep it with a reason.',
      },
    ]);
    const keptWarnings = [{ key: 'serial-form', reason: 'An older set was fitted', by: 'ada-1', keptOn: '2026-03-02' }];
    expect(requestChangeProblems(null, { ...asked, keptWarnings }, later)).toEqual([]);
    expect(requestChangeProblems(null, asked, { ...setting, modelYear: 2009 })).toEqual([]);
  });

  it('is not judged again later, so that a stricter kind locks nobody out of what was asked', () => {
    const asked = makeRequest({ askedOn: '2026-03-02', deviceSerial: '' });
    expect(fieldsOf(asked, { ...asked, answeredOn: '2026-03-05', outcome: 'given' }, setting)).toEqual([]);
  });

  it('leaves the proof where it is: what was asked under it keeps one', () => {
    const asked = makeRequest({ askedOn: '2026-03-02' });
    expect(fieldsOf(asked, { ...asked, proof: null }, setting)).toEqual(['proof']);
    expect(fieldsOf(asked, { ...asked, proof: { ...asked.proof, document: 'Title' } as never }, setting)).toEqual([]);
  });

  it('is held against the record when the change is applied', () => {
    const vehicle = makeVehicle('2026-03-01');
    const item = { id: 'request-1', ...drafted, askedOn: '2026-03-02' };
    const context = {
      today: '2026-03-02',
      market: 'US',
      stamp: stampAt('2026-03-02'),
      rulePack: { id: '', name: '', version: 1, changedOn: '2026-01-01', note: '', steps: [], rules: [] },
      codeKinds: shippedCodeKinds,
    } as unknown as Parameters<typeof applyChange>[2];
    const applied = applyChange(vehicle, { kind: 'put', list: 'codeRequests', item }, context);
    expect(applied.ok ? [] : applied.error.map(({ field }) => field)).toEqual(['proof', 'deviceSerial']);
  });
});

describe('the kind of a request', () => {
  it('is one of the shop’s; one that the shop has given up since may stay', () => {
    const odd = makeRequest({ kind: 'alarm-code' });
    expect(fieldsOf(null, odd, setting)).toEqual(['kind']);
    expect(fieldsOf(makeRequest(), odd, setting)).toEqual(['kind']);
    expect(fieldsOf(odd, { ...odd, note: 'again' }, setting)).toEqual([]);
  });

  it('has the shop’s name, else the one it was shipped with, else a plain word', () => {
    const own = [
      { id: 'radio', name: 'Head unit code' },
      { id: 'pin', name: 'PIN of the alarm' },
    ];
    expect(codeKindName('radio', own)).toBe('Head unit code');
    expect(codeKindName('gateway', own)).toBe('Gateway access');
    expect(codeKindName('gone', own)).toBe('Unlock code');
    expect(codeKindWords('radio', own)).toBe('head unit code');
    expect(codeKindWords('pin', own)).toBe('PIN of the alarm');
    expect(codeName({ kind: 'radio', module: 'Radio' }, own)).toBe('head unit code for Radio');
    expect(codeName({ kind: 'radio', module: 'Radio' })).toBe('radio code');
    expect(codeName({ kind: 'immobiliser', module: '' })).toBe('immobiliser code');
  });
});
