// Communication codes that many modules store about one, grouped under it with the reasons.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { ScanContent } from '../../../app/domain/diagnosis/compare-scans.ts';
import { likelyRoots } from '../../../app/domain/diagnosis/likely-roots.ts';
import { kindOfCommunicationCode, kindOfModuleName } from '../../../app/domain/diagnosis/module-kinds.ts';
import { findTroubleCodes } from '../../../app/domain/diagnosis/scanner-text.ts';

const roots = (text: string) => likelyRoots(findTroubleCodes(text));

describe('likely roots', () => {
  it('group the codes of several modules under the silent module that they speak of', () => {
    const [root, ...others] = roots(`
      Engine control: U0140 present, P0301 present
      Airbag: U0140-87 stored
      Instrument cluster: U0422 stored
      Body control module: no answer
      Radio: no answer`);
    expect(others).toEqual([]);
    expect(root).toMatchObject({ module: 'Body control module', kind: 'body', strength: 'likely' });
    expect(root?.witnesses).toEqual([
      { module: 'Engine control', code: 'U0140' },
      { module: 'Airbag', code: 'U0140-87' },
      { module: 'Instrument cluster', code: 'U0422' },
    ]);
    expect(root?.reasoning).toContain('3 modules store');
    expect(root?.reasoning).toContain('Body control module does not answer');
  });

  it('do not take one module’s word for it, nor a module’s word about itself', () => {
    expect(roots('Engine: U0140 present\nBody control: no answer')).toEqual([]);
    expect(roots('Body front: U0140 present\nBody rear: U0140 present\nBody control: no answer')).toEqual([]);
    expect(roots('Engine: U0140 present, U0140-87 present, U0422 present\nBody control: no answer')).toEqual([]);
  });

  it('say so when the module answered this time', () => {
    const [root] = roots('Engine: U0121 stored\nAirbag: U0121 stored\nBrakes: no codes');
    expect(root).toMatchObject({ module: 'Brakes', strength: 'possible' });
    expect(root?.reasoning).toContain('answered this scan');
  });

  it('say so when no module of that kind is in the scan', () => {
    const [root] = roots('Engine: U0155 stored\nAirbag: U0155 stored');
    expect(root).toMatchObject({ module: null, kind: 'instrument-cluster', strength: 'possible' });
    expect(root?.reasoning).toContain('no such module is in the scan');
  });

  it('guess at the only silent module for makers’ own network codes, and say that it is a guess', () => {
    const [root] = roots('Engine: U1123 stored\nAirbag: U1123 present\nTail lift: no answer');
    expect(root).toMatchObject({ module: 'Tail lift', kind: null, strength: 'possible' });
    expect(root?.reasoning).toContain('this is a guess');
    expect(roots('Engine: U1123 stored\nAirbag: U1123 present\nTail lift: no answer\nRadio: no answer')).toEqual([]);
    expect(roots('Engine: U1123 stored\nAirbag: U1200 present\nTail lift: no answer')).toEqual([]);
  });

  it('put the root with most witnesses first', () => {
    const found = roots(`
      Engine: U0155 stored, U0140 stored
      Airbag: U0155 stored, U0140 stored
      Brakes: U0140 stored
      Cluster: no answer
      Body: no answer`);
    expect(found.map((root) => root.module)).toEqual(['Body', 'Cluster']);
  });

  it('find nothing in a scan without communication codes', () => {
    expect(roots('Engine: P0301 present\nAirbag: B0001 present\nBody: no answer')).toEqual([]);
    expect(likelyRoots({ modules: [] })).toEqual([]);
  });

  it('rest on at least two modules, each of which stores the code, for any scan', () => {
    const anyScan: fc.Arbitrary<ScanContent> = fc.record({
      modules: fc.array(
        fc.record({
          name: fc.constantFrom('Engine', 'Body control', 'Airbag', 'Cluster', 'Radio', 'Tail lift'),
          answered: fc.boolean(),
          codes: fc.array(
            fc.record({
              code: fc.constantFrom('U0140', 'U0140-87', 'U0155', 'U1123', 'U0184', 'P0301'),
              status: fc.constantFrom('present' as const, 'history' as const),
            }),
            { maxLength: 4 },
          ),
        }),
        { maxLength: 8 },
      ),
    });
    fc.assert(
      fc.property(anyScan, (scan) => {
        for (const root of likelyRoots(scan)) {
          expect(new Set(root.witnesses.map((one) => one.module)).size).toBeGreaterThanOrEqual(2);
          for (const witness of root.witnesses) {
            const stores = scan.modules.some(
              (one) =>
                one.answered && one.name === witness.module && one.codes.some((code) => code.code === witness.code),
            );
            expect(stores).toBe(true);
          }
          if (root.strength === 'likely') {
            const isSilent = scan.modules.some((one) => !one.answered && kindOfModuleName(one.name) === root.kind);
            expect(isSilent).toBe(true);
          }
        }
      }),
    );
  });
});

describe('kinds of module', () => {
  it.each([
    ['Body control module', 'body'],
    ['BCM', 'body'],
    ['Steering column lock', 'steering-lock'],
    ['Power steering', 'steering'],
    ['Lenkradschloss', 'steering-lock'],
    ['Kombiinstrument', 'instrument-cluster'],
    ['Antidémarrage', 'immobiliser'],
    ['Türsteuergerät hinten links', 'door'],
    ['Sterownik silnika', 'engine'],
    ['Caja de cambios', 'transmission'],
    ['Centralina freni', 'brakes'],
    ['Tail lift', null],
    ['', null],
  ])('%j is %s', (name, kind) => {
    expect(kindOfModuleName(name)).toBe(kind);
  });

  it('know standard numbers only, with or without a failure type', () => {
    expect(kindOfCommunicationCode('U0140-87')).toBe('body');
    expect(kindOfCommunicationCode('U1140')).toBeNull();
    expect(kindOfCommunicationCode('P0140')).toBeNull();
  });
});
