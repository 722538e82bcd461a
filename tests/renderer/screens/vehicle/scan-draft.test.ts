// A scan while it is written: typed codes become rows, rows of one module come together, what nobody has looked at is not kept.
import { describe, expect, it } from 'vitest';
import { nothingElseRead, plainCode, scanDraftSchema } from '../../../../app/domain/diagnosis/scan.ts';
import { findTroubleCodes } from '../../../../app/domain/diagnosis/scanner-text.ts';
import {
  addRows,
  countReading,
  plainReport,
  promoteLine,
  reportLines,
  rowsOf,
} from '../../../../renderer/screens/vehicle/scans/report-rows.ts';
import { decodeReport } from '../../../../renderer/screens/vehicle/scans/report-text-file.ts';
import {
  emptyRow,
  finishScan,
  leftOutKey,
  type ModuleRow,
  type ScanValue,
  scanValue,
  settleTyped,
  withEmptyRow,
} from '../../../../renderer/screens/vehicle/scans/scan-draft.ts';

const value = scanValue({
  ...nothingElseRead,
  id: 'scan-0001',
  takenOn: '2026-03-18',
  kind: 'pre-repair',
  device: '',
  modules: [],
  note: '',
});
const row = (name: string, about: Partial<ModuleRow> = {}): ModuleRow => ({ ...emptyRow, name, ...about });
const kept = (modules: readonly ModuleRow[], about: Partial<ScanValue> = {}) => {
  const finished = finishScan({ ...value, modules, ...about });
  if (!finished.ok) throw new Error(JSON.stringify(finished.error));
  return scanDraftSchema.parse(finished.value);
};
const refusedAt = (modules: readonly ModuleRow[]) => {
  const finished = finishScan({ ...value, modules });
  return finished.ok ? [] : finished.error.map((problem) => problem.field);
};
const names = (rows: readonly ModuleRow[]) =>
  rows.map((one) =>
    `${one.name}${one.answered ? '' : ' silent'}: ${one.codes.map(({ code }) => code).join(' ')}`.trim(),
  );

describe('a scan being written', () => {
  it('always ends in exactly one empty row, which is not kept', () => {
    expect(value.modules).toHaveLength(1);
    const typed = withEmptyRow([row('Engine', { typed: 'P0171' })]);
    expect(typed).toHaveLength(2);
    expect(withEmptyRow(typed)).toBe(typed);
    expect(kept(typed).modules).toEqual([{ name: 'Engine', answered: true, codes: [plainCode('P0171', 'present')] }]);
  });

  it('makes rows of the codes that are typed, and leaves standing what is none', () => {
    const settled = settleTyped(row('Engine', { typed: 'P0171 history lean P01' }));
    expect(settled.codes).toMatchObject([{ code: 'P0171', status: 'history', words: 'lean' }]);
    expect(settled.typed).toBe('P01');
    expect(settleTyped(row('Engine'))).toEqual(row('Engine'));
    expect(settleTyped({ ...settled, typed: 'P0171 history' }).codes).toHaveLength(1);
  });

  it('puts the rows of one module together', () => {
    expect(kept([row('Engine', { typed: 'P0171' }), row('ENGINE ', { typed: 'P0300' }), row('Body')]).modules).toEqual([
      { name: 'Engine', answered: true, codes: [plainCode('P0171', 'present'), plainCode('P0300', 'present')] },
      { name: 'Body', answered: true, codes: [] },
    ]);
  });

  it('says at its row what is wrong with a module: no name, text that is no code, codes of a silent one', () => {
    expect(refusedAt([row('Engine'), row('', { typed: 'P0171' })])).toEqual(['modules.1']);
    expect(refusedAt([row('Engine', { typed: 'P01' })])).toEqual(['modules.0']);
    expect(refusedAt([row('Body', { answered: false, typed: 'B1000' })])).toEqual(['modules.0']);
    expect(refusedAt([row('Body', { answered: false })])).toEqual([]);
  });

  it('does not keep a code that was read through a slip until somebody has looked at it', () => {
    const rows = rowsOf(findTroubleCodes('Engine: P03O1 present'));
    expect(refusedAt(rows)).toEqual(['modules.0']);
    const looked = rows.map((one) => ({ ...one, codes: one.codes.map((code) => ({ ...code, slip: null })) }));
    expect(kept(looked).modules[0]?.codes).toEqual([plainCode('P0301', 'present')]);
  });

  it('comes back from the record as it was kept', () => {
    const scan = kept([row('Engine', { typed: 'P0442 untested small leak' }), row('Body', { answered: false })]);
    expect(kept(scanValue(scan).modules)).toEqual(scan);
  });
});

const report = [
  'Engine',
  '  P03O1 present',
  '  P0420 stored',
  'Seat heating left',
  '  B1234-11 active',
  'Body: no answer',
];

describe('a report read into the rows', () => {
  const reading = findTroubleCodes(report.join('\n'));

  it('fills the rows, with slips still to be looked at', () => {
    expect(names(addRows(value.modules, rowsOf(reading), []))).toEqual([
      'Engine: P0301 P0420',
      'Seat heating left: B1234-11',
      'Body silent:',
      ':',
    ]);
    expect(rowsOf(reading)[0]?.codes.map((code) => code.slip)).toEqual(['P03O1', null]);
  });

  it('brings back nothing that was corrected or left out when more of it is pasted', () => {
    const rows = addRows(value.modules, rowsOf(reading), []);
    const [slip, kept420] = rows[0]?.codes ?? [];
    if (slip === undefined || kept420?.origin == null) throw new Error('The report was not read.');
    const corrected = rows.map((one, index) =>
      index === 0 ? { ...one, name: 'Engine control', codes: [{ ...slip, code: 'P0302', slip: null }] } : one,
    );
    const more = findTroubleCodes([...report, 'Radio', '  U0155 stored'].join('\n'));
    expect(names(addRows(corrected, rowsOf(more), [leftOutKey(kept420.origin)]))).toEqual([
      'Engine control: P0302',
      'Seat heating left: B1234-11',
      'Body silent:',
      'Engine:',
      'Radio: U0155',
      ':',
    ]);
  });

  it('is beside the kept codes again when the scan is opened, with what was left out', () => {
    const rows = addRows(value.modules, rowsOf(reading), []);
    const looked = rows.map((one) => ({
      ...one,
      codes: one.codes.filter(({ code }) => code !== 'P0420').map((code) => ({ ...code, slip: null })),
    }));
    const again = scanValue(kept(looked, { reportText: report.join('\n') }));
    expect(again.modules.flatMap((one) => one.codes).map(({ code, origin }) => [code, origin?.line])).toEqual([
      ['P0301', 2],
      ['B1234-11', 5],
    ]);
    expect(again.leftOut).toEqual([leftOutKey({ line: 3, readAs: 'P0420' })]);
    expect(names(addRows(again.modules, rowsOf(reading), again.leftOut))).toEqual(names(again.modules));
  });

  it('makes a line the name of a module, with the codes below it', () => {
    const odd = findTroubleCodes(
      ['Page 3 of the report, zone 7', 'P0301 present', 'P0302 present', '', 'Engine: P0420'].join('\n'),
    );
    const rows = addRows(value.modules, rowsOf(odd), []);
    expect(odd.notUnderstood.map((line) => line.text)).toContain('Page 3 of the report, zone 7');
    const promoted = promoteLine(rows, 'Zone 7', { from: 1, before: 5 });
    expect(names(promoted)).toEqual(['Engine: P0420', 'Zone 7: P0301 P0302', ':']);
  });

  it('stands beside its lines, none left out but the blank ones', () => {
    const lines = reportLines(findTroubleCodes(`Report of 3 May\n\n${report.join('\n')}`));
    expect(lines.map((line) => `${line.lineNumber} ${line.use}`)).toEqual([
      '1 not-understood',
      '3 module',
      '4 code',
      '5 code',
      '6 module',
      '7 code',
      '8 silent',
    ]);
    expect(lines[1]?.modules).toEqual(['Engine']);
    expect(lines[6]?.modules).toEqual(['Body']);
    expect(lines[2]?.codes).toMatchObject([{ code: 'P0301', wasCorrected: true, originalText: 'P03O1' }]);
  });

  it('is counted', () => {
    expect(countReading(reading)).toEqual({ lines: 6, modules: 3, silent: 1, codes: 3, slips: 1, notRead: 0 });
  });
});

describe('the text of a report', () => {
  it('is kept with one kind of line end and no control characters', () => {
    expect(plainReport('a\r\nb\fc\u0007d')).toBe('a\nb\nc d');
  });

  it('is read from a dropped file in the encodings that devices write, and from nothing else', () => {
    expect(decodeReport(new TextEncoder().encode('Motorsteuergerät'))).toBe('Motorsteuergerät');
    expect(decodeReport(new Uint8Array([0x67, 0x65, 0x72, 0xe4, 0x74]))).toBe('gerät');
    expect(decodeReport(new Uint8Array([0xff, 0xfe, 0x50, 0x00, 0x30, 0x00]))).toBe('P0');
    expect(decodeReport(new TextEncoder().encode('%PDF-1.7 …'))).toBeNull();
    expect(decodeReport(new Uint8Array([0x50, 0x4b, 0x03, 0x04]))).toBeNull();
    expect(decodeReport(new Uint8Array([0x41, 0x00, 0x42]))).toBeNull();
  });
});
