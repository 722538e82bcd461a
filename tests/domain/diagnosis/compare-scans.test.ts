// Two scans of one vehicle: gone, stayed, new, not proven, not heard; and modules that came back or fell silent.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { compareScans, type ScanContent, type ScannedCode } from '../../../app/domain/diagnosis/compare-scans.ts';
import { readMonitors } from '../../../app/domain/diagnosis/readiness-monitors.ts';
import { findTroubleCodes } from '../../../app/domain/diagnosis/scanner-text.ts';

const module = (name: string, codes: readonly (ScannedCode | string)[], answered = true) => ({
  name,
  answered,
  codes: codes.map((code) => (typeof code === 'string' ? ({ code, status: 'present' } as const) : code)),
});
const scan = (...modules: readonly ReturnType<typeof module>[]): ScanContent => ({ modules });
const changes = (before: ScanContent, after: ScanContent) =>
  compareScans(before, after).codes.map((one) => `${one.module} ${one.code} ${one.change}`);
const moduleChanges = (before: ScanContent, after: ScanContent) =>
  compareScans(before, after).modules.map((one) => `${one.module} ${one.change}`);

describe('codes', () => {
  it('tells gone, stayed and new apart', () => {
    const before = scan(module('Engine', ['P0301', 'P0420']));
    const after = scan(module('Engine', ['P0420', 'P0171']));
    expect(changes(before, after)).toEqual(['Engine P0301 gone', 'Engine P0420 stayed', 'Engine P0171 new']);
  });

  it('keeps the status before and after', () => {
    const before = scan(module('Engine', ['P0420']));
    const after = scan(module('Engine', [{ code: 'P0420', status: 'history' }]));
    expect(compareScans(before, after).codes[0]).toMatchObject({
      change: 'stayed',
      before: 'present',
      after: 'history',
    });
    expect(compareScans(before, after).codes[0]?.sentence).toContain('present before and history now');
  });

  it('does not call a code gone whose module does not answer or is missing in the later scan', () => {
    const before = scan(module('Engine', ['P0301']), module('Body', ['B1234']));
    const after = scan(module('Engine', [], false));
    expect(changes(before, after)).toEqual(['Engine P0301 not-heard', 'Body B1234 not-heard']);
  });

  it('does not call a code proven whose test has not run since the clear (ISO 14229-1 Annex D.2, bit 4)', () => {
    const before = scan(module('Engine', ['P0301', 'P0302', 'P0303']));
    const after = scan(
      module('Engine', [
        { code: 'P0301', status: 'unknown', isUnproven: true },
        { code: 'P0302', status: 'present', isUnproven: true },
        { code: 'P0303', status: 'history', isUnproven: false },
      ]),
    );
    expect(changes(before, after)).toEqual([
      'Engine P0301 cleared-not-proven',
      'Engine P0302 stayed',
      'Engine P0303 stayed',
    ]);
  });

  it('calls a powertrain code that is gone unproven while its monitor is incomplete, and says when nobody looked', () => {
    const before = scan(module('Engine', ['P0442', 'P0301']));
    const clean = scan(module('Engine', []));
    const at = (monitors: readonly number[]) => ({ ...clean, monitors: readMonitors(monitors) });
    // Evaporative system (bit 2) incomplete, catalyst (bit 0) complete.
    const evaporative = at([0x00, 0x07, 0x65, 0x04]);
    expect(changes(before, evaporative)).toEqual([
      'Engine P0442 cleared-not-proven',
      // No monitor of its own here, so all have to be complete.
      'Engine P0301 cleared-not-proven',
    ]);
    expect(compareScans(before, evaporative).codes[0]?.sentence).toContain('monitor (evaporative system) has not run');
    const catalyst = at([0x00, 0x07, 0x65, 0x01]);
    expect(changes(before, catalyst)).toEqual(['Engine P0442 gone', 'Engine P0301 cleared-not-proven']);
    expect(compareScans(before, catalyst).codes[0]).toMatchObject({ isProven: true });
    const ready = compareScans(before, at([0x00, 0x07, 0x65, 0x00])).codes;
    expect(ready.map((one) => [one.change, one.isProven])).toEqual([
      ['gone', true],
      ['gone', true],
    ]);
    const notRead = compareScans(before, clean).codes[0];
    expect(notRead).toMatchObject({ change: 'gone', isProven: false });
    expect(notRead?.sentence).toContain('was not looked at');
  });

  it('does not let monitors speak of body, chassis and network codes', () => {
    const before = scan(module('Engine', ['U0140']), module('Airbag', ['B0001']));
    const after = {
      ...scan(module('Engine', []), module('Airbag', [])),
      monitors: readMonitors([0, 0x77, 0x65, 0x65]),
    };
    expect(compareScans(before, after).codes.map((one) => [one.change, one.isProven])).toEqual([
      ['gone', false],
      ['gone', false],
    ]);
  });

  it('takes a code for tested and passed when its status byte says so (ISO 14229-1 Annex D.2, bits 4, 0 and 5 off)', () => {
    const before = scan(module('Body', ['B1234-11']));
    const passed = scan(module('Body', [{ code: 'B1234-11', status: 'unknown', statusByte: 0x40 }]));
    const failed = scan(module('Body', [{ code: 'B1234-11', status: 'unknown', statusByte: 0x20 }]));
    expect(compareScans(before, passed).codes[0]).toMatchObject({ change: 'gone', isProven: true });
    expect(changes(before, failed)).toEqual(['Body B1234-11 stayed']);
  });

  it('keeps the same code of two modules apart, and failure types too', () => {
    const before = scan(module('Engine', ['U0140']), module('Airbag', ['U0140']));
    const after = scan(module('Engine', []), module('Airbag', ['U0140-87']));
    expect(changes(before, after)).toEqual(['Engine U0140 gone', 'Airbag U0140 gone', 'Airbag U0140-87 new']);
  });

  it('takes a module for the same whatever the case, accents and punctuation of its name', () => {
    const before = scan(module('Contrôle-moteur', ['P0301']));
    expect(changes(before, scan(module('CONTROLE MOTEUR', ['P0301'])))).toEqual(['CONTROLE MOTEUR P0301 stayed']);
  });

  it('counts a code once that a module lists twice, with its most serious status', () => {
    const twice = scan(
      module('Engine', [{ code: 'P0301', status: 'history' }, 'P0301', { code: 'P0301', status: 'pending' }]),
    );
    expect(compareScans(twice, twice).codes).toMatchObject([{ change: 'stayed', before: 'present', after: 'present' }]);
  });
});

describe('modules', () => {
  it('tells who came back, fell silent, is still silent, or is in one scan only', () => {
    const before = scan(
      module('Body', [], false),
      module('Radio', []),
      module('Steering lock', [], false),
      module('Seat', []),
      module('Engine', []),
    );
    const after = scan(
      module('Body', []),
      module('Radio', [], false),
      module('Steering lock', [], false),
      module('Door', []),
      module('Engine', []),
    );
    expect(moduleChanges(before, after)).toEqual([
      'Body came-back',
      'Radio fell-silent',
      'Steering lock still-silent',
      'Seat only-before',
      'Door only-after',
    ]);
  });

  it('takes modules for the same that two devices name differently, where each scan has one of their kind', () => {
    const before = scan(module('BCM', ['B1000'], true), module('Engine', ['P0301']));
    const after = scan(module('Body control module', []), module('Engine', []));
    expect(changes(before, after)).toEqual(['Body control module B1000 gone', 'Engine P0301 gone']);
    expect(moduleChanges(before, after)).toEqual([]);
    const twoDoors = scan(module('Door left', ['B1000']), module('Door right', []));
    expect(moduleChanges(twoDoors, scan(module('Driver door', [])))).toEqual([
      'Door left only-before',
      'Door right only-before',
      'Driver door only-after',
    ]);
  });

  it('compares what was read from pasted text', () => {
    const before = findTroubleCodes('Engine: U0140 present\nBody: no answer');
    const after = findTroubleCodes('Engine: no codes\nBody: B1000 stored');
    expect(changes(before, after)).toEqual(['Engine U0140 gone', 'Body B1000 new']);
    expect(moduleChanges(before, after)).toEqual(['Body came-back']);
  });
});

describe('any two scans', () => {
  const anyCode = fc.record({
    code: fc.constantFrom('P0301', 'P0420', 'U0140', 'B1234-11'),
    status: fc.constantFrom('present', 'history', 'pending', 'permanent', 'unknown'),
    isUnproven: fc.boolean(),
  });
  const anyModule = fc.record({
    name: fc.constantFrom('Engine', 'engine', 'Body', 'Radio', ''),
    answered: fc.boolean(),
    codes: fc.array(anyCode, { maxLength: 5 }),
  });
  const anyScan = fc.record({ modules: fc.array(anyModule, { maxLength: 6 }) });
  const pairs = (content: ScanContent) =>
    new Set(content.modules.flatMap((one) => one.codes.map(({ code }) => `${one.name.toLowerCase()} ${code}`)));

  it('give every code of either scan exactly one change, with a sentence', () => {
    fc.assert(
      fc.property(anyScan, anyScan, (before, after) => {
        const { codes } = compareScans(before, after);
        const keys = codes.map((one) => `${one.module.toLowerCase()} ${one.code}`);
        expect(new Set(keys).size).toBe(keys.length);
        expect(new Set(keys)).toEqual(new Set([...pairs(before), ...pairs(after)]));
        for (const one of codes) expect(one.sentence).toMatch(/\.$/);
      }),
    );
  });

  it('mirror each other: what is new one way is gone, unproven or not heard the other way', () => {
    fc.assert(
      fc.property(anyScan, anyScan, (before, after) => {
        const there = compareScans(before, after).codes;
        const back = compareScans(after, before).codes;
        const goneBack = back
          .filter((one) => one.after === null)
          .map((one) => `${one.module.toLowerCase()} ${one.code}`);
        const newThere = there
          .filter((one) => one.before === null)
          .map((one) => `${one.module.toLowerCase()} ${one.code}`);
        expect(new Set(goneBack)).toEqual(new Set(newThere));
      }),
    );
  });

  it('never call a code gone that the later scan could not have shown', () => {
    fc.assert(
      fc.property(anyScan, anyScan, (before, after) => {
        const heard = new Set(after.modules.filter((one) => one.answered).map((one) => one.name.toLowerCase()));
        for (const one of compareScans(before, after).codes) {
          if (one.change === 'gone') expect(heard.has(one.module.toLowerCase())).toBe(true);
        }
      }),
    );
  });
});
