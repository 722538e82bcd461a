// What became of codes and silent modules between two scans, without calling gone what nobody read again.
import { describe, expect, it } from 'vitest';
import { plainCode, type ScanModule } from '../../../app/domain/diagnosis/scan.ts';
import { scansBeforeAndAfter } from '../../../app/domain/diagnosis/scan-order.ts';
import { scanOutcome } from '../../../app/domain/sheets/scan-summary.ts';
import { makeScan } from '../../helpers/vehicle-maker.ts';

function module(name: string, codes: readonly string[] | null): ScanModule {
  const kept = (codes ?? []).map((code) => plainCode(code, 'present'));
  return { name, answered: codes !== null, codes: kept };
}
const early = (...modules: ScanModule[]) => makeScan('2026-03-04', { modules });
const late = (...modules: ScanModule[]) => makeScan('2026-03-20', { kind: 'post-repair', modules });

describe('two scans side by side', () => {
  it('are the first that was no post-repair scan and the last that was one', () => {
    const scans = [
      late(module('A', [])),
      makeScan('2026-03-22', { kind: 'post-repair', id: 'the-last' }),
      makeScan('2026-03-10', { kind: 'in-between' }),
      makeScan('2026-03-04', { id: 'the-first' }),
    ];
    const chosen = scansBeforeAndAfter(scans);
    expect(chosen.before?.id).toBe('the-first');
    expect(chosen.after?.id).toBe('the-last');
    expect(scansBeforeAndAfter([])).toEqual({ before: null, after: null });
  });

  it('tell gone, stayed and new codes apart by module', () => {
    const outcome = scanOutcome(
      early(module('Engine', ['P0171', 'P0300']), module('Brakes', ['C0035'])),
      late(module('engine', ['P0171', 'P0420']), module('Brakes', [])),
    );
    expect(outcome).toEqual([
      'Gone: P0300 in engine, C0035 in Brakes.',
      'Stayed: P0171 in engine.',
      'New after the repair: P0420 in engine.',
    ]);
  });

  it('never call a code gone whose module is silent or was not asked', () => {
    const outcome = scanOutcome(
      early(module('Engine', ['P0171']), module('Brakes', ['C0035'])),
      late(module('Engine', null)),
    );
    expect(outcome).toEqual([
      'Not known, because the module was not read after the repair: P0171 in Engine, C0035 in Brakes.',
      'Still silent: Engine.',
    ]);
  });

  it('say which silent modules answer again and which were not asked again', () => {
    expect(scanOutcome(early(module('A', null), module('B', null)), late(module('A', [])))).toEqual([
      'Answers again: A.',
      'Silent on arrival and not asked again: B.',
    ]);
  });

  it('say which codes were cleared and are not proven, and leave out tests that were never a code', () => {
    const before = early(module('Engine', ['P0442']));
    const after = {
      ...late({
        name: 'Engine',
        answered: true,
        codes: [{ ...plainCode('P0171', 'unknown'), isUnproven: true }],
      }),
      monitorBytes: [0x00, 0x07, 0x65, 0x04] as [number, number, number, number],
    };
    expect(scanOutcome(before, after)).toEqual([
      'Cleared, not proven yet because the test has not run since: P0442 in Engine.',
    ]);
  });

  it('say so when there was nothing in either', () => {
    expect(scanOutcome(early(module('A', [])), late(module('A', [])))).toEqual([
      'No codes and no silent module in either scan.',
    ]);
  });
});
