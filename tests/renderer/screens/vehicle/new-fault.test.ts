// Which fault a code or a likely root becomes, and which is there for it already.
import { describe, expect, it } from 'vitest';
import { likelyRoots } from '../../../../app/domain/diagnosis/likely-roots.ts';
import {
  faultFromCode,
  faultFromRoot,
  faultOfRoot,
  faultWithCode,
} from '../../../../renderer/screens/vehicle/scans/new-fault.ts';
import { makeFault } from '../../../helpers/vehicle-maker.ts';

const scan = {
  modules: [
    { name: 'Body', answered: false, codes: [] },
    { name: 'Engine', answered: true, codes: [{ code: 'U0140', status: 'present' as const }] },
    { name: 'Cluster', answered: true, codes: [{ code: 'U0140-00', status: 'present' as const }] },
  ],
};

describe('a fault from a code', () => {
  it('takes its words, its module and an area that fits', () => {
    expect(faultFromCode('P0301', 'Engine', 'misfire, cylinder 1')).toEqual({
      what: 'misfire, cylinder 1',
      area: 'engine',
      module: 'Engine',
      codes: ['P0301'],
    });
    expect(faultFromCode('U0140', 'Engine', '')).toMatchObject({ what: 'U0140 in Engine', area: 'control-module' });
    expect(faultFromCode('B1000', 'Zone 7', '').area).toBe('electrical');
  });

  it('is found again by its code, with or without a failure type', () => {
    const fault = makeFault('2026-03-04', { codes: ['U0140'] });
    expect(faultWithCode({ faults: [fault] }, 'U0140-00')).toBe(fault);
    expect(faultWithCode({ faults: [fault] }, 'U0141')).toBeNull();
    const typed = makeFault('2026-03-04', { codes: ['U0140-00'] });
    expect(faultWithCode({ faults: [typed] }, 'U0140-87')).toBeNull();
  });
});

describe('a fault from a likely root', () => {
  const [root] = likelyRoots(scan);
  if (root === undefined) throw new Error('Two modules point at a silent one.');

  it('is about the silent module and carries the codes that point at it', () => {
    expect(faultFromRoot(root)).toEqual({
      what: 'Body does not answer',
      area: 'control-module',
      module: 'Body',
      codes: ['U0140', 'U0140-00'],
    });
  });

  it('is found again by its module, or by one of its codes', () => {
    const byModule = makeFault('2026-03-04', { module: ' body', codes: [] });
    const byCode = makeFault('2026-03-04', { module: '', codes: ['U0140'] });
    expect(faultOfRoot({ faults: [byModule] }, root)).toBe(byModule);
    expect(faultOfRoot({ faults: [byCode] }, root)).toBe(byCode);
    expect(faultOfRoot({ faults: [] }, root)).toBeNull();
  });
});
