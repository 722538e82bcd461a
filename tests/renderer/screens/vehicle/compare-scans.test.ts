// Two scans held against each other.
import { describe, expect, it } from 'vitest';
import type { Scan, ScanKind } from '../../../../app/domain/diagnosis/scan.ts';
import { compareScans, scansToCompare } from '../../../../renderer/screens/vehicle/scans/compare-scans.ts';

function scan(
  kind: ScanKind,
  takenOn: string,
  modules: readonly (readonly [name: string, codes: readonly string[] | null])[],
): Scan {
  return {
    id: `scan-${takenOn}-${kind}`,
    takenOn,
    kind,
    device: '',
    note: '',
    modules: modules.map(([name, codes]) => ({
      name,
      answered: codes !== null,
      codes: (codes ?? []).map((code) => ({ code, status: 'present' as const, words: '' })),
    })),
    entered: { by: 'somebody', at: `${takenOn}T10:00:00.000Z` },
  };
}

describe('which scans are compared', () => {
  it('needs one before and one after the repair', () => {
    const before = scan('pre-repair', '2026-02-01', []);
    expect(scansToCompare([before])).toBeNull();
    expect(scansToCompare([scan('post-repair', '2026-02-09', [])])).toBeNull();
  });

  it('takes the first before and the last after, in whatever order they were entered', () => {
    const scans = [
      scan('post-repair', '2026-02-12', []),
      scan('in-between', '2026-02-05', []),
      scan('pre-repair', '2026-02-01', []),
      scan('post-repair', '2026-02-09', []),
    ];
    expect(scansToCompare(scans)).toMatchObject({
      before: { takenOn: '2026-02-01' },
      after: { takenOn: '2026-02-12' },
    });
  });
});

describe('comparing two scans', () => {
  const before = scan('pre-repair', '2026-02-01', [
    ['Body control module', null],
    ['Engine', ['U0140-00', 'P0562']],
    ['Radio', ['U0140-00']],
    ['Climate', []],
  ]);
  const after = scan('post-repair', '2026-02-12', [
    ['body control module ', ['B1000']],
    ['Engine', ['P0562']],
    ['Radio', null],
    ['Gateway', []],
  ]);
  const compared = new Map(compareScans(before, after).map((module) => [module.name, module]));

  it('says which codes are gone, stayed and are new', () => {
    expect(compared.get('Engine')).toMatchObject({
      answer: 'answers',
      gone: ['U0140-00'],
      stayed: ['P0562'],
      fresh: [],
    });
  });

  it('says that a module came back, its name written alike but for case and spaces', () => {
    expect(compared.get('Body control module')).toMatchObject({ answer: 'came-back', fresh: ['B1000'] });
    expect(compared.size).toBe(5);
  });

  it('does not count the codes of a module that fell silent as gone', () => {
    expect(compared.get('Radio')).toMatchObject({ answer: 'fell-silent', gone: [] });
  });

  it('says when a module is in one scan only', () => {
    expect(compared.get('Climate')?.answer).toBe('only-before');
    expect(compared.get('Gateway')?.answer).toBe('only-after');
  });
});
