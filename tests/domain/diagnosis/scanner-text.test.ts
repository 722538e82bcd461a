// Pasted scanner text: invented reports of many shapes with what they must be read as, single rules, and fuzzing.
import { readdirSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { scanModuleSchema } from '../../../app/domain/diagnosis/scan.ts';
import type { ScannerTextReading } from '../../../app/domain/diagnosis/scanner-reading.ts';
import { findTroubleCodes } from '../../../app/domain/diagnosis/scanner-text.ts';
import { expectedReadings } from './scanner-reports/expected.ts';

const folder = new URL('./scanner-reports/', import.meta.url);
const reports = readdirSync(folder).filter((name) => name.endsWith('.txt'));

function summarise(reading: ScannerTextReading) {
  const answered = reading.modules.filter((module) => module.answered);
  return {
    modules: Object.fromEntries(
      answered.map((module) => [
        module.name,
        module.codes.map((one) => `${one.code} ${one.status}${one.wasCorrected ? ` (${one.originalText})` : ''}`),
      ]),
    ),
    silent: reading.modules.filter((module) => !module.answered).map((module) => module.name),
    notUnderstood: reading.notUnderstood.map((line) => line.lineNumber),
  };
}

const statusOf = (text: string) => findTroubleCodes(text).modules[0]?.codes[0]?.status;
const codesIn = (text: string) =>
  findTroubleCodes(text).modules.flatMap((module) => module.codes.map((one) => one.code));

describe('invented reports', () => {
  it('are all listed with what they must be read as', () => {
    expect(reports.map((name) => name.replace('.txt', ''))).toEqual(Object.keys(expectedReadings));
    expect(reports.length).toBeGreaterThanOrEqual(20);
  });

  it.each(Object.entries(expectedReadings))('%s is read as written beside it', (name, expected) => {
    const reading = findTroubleCodes(readFileSync(new URL(`${name}.txt`, folder), 'utf8'));
    expect(summarise(reading)).toEqual(expected);
  });
});

describe('codes', () => {
  it.each([
    ['P0301', ['P0301']],
    ['p0301-1f', ['P0301-1F']],
    ['B123411', ['B1234-11']],
    ['P0805:11', ['P0805-11']],
    ['(U0100)', ['U0100']],
    ['1.P0301', ['P0301']],
    ['P0301/P0302', ['P0301', 'P0302']],
    ['P0301-P0302', ['P0301', 'P0302']],
    ['DTC-P0301', ['P0301']],
    ['P0000', []],
    ['P4000', []],
    ['P03011', []],
    ['XP0301', []],
    ['7K1-B1234-22', []],
    ['B1234-567', []],
    ['100AB54C450110341', []],
    ['P 0301', []],
    ['PO3O1', ['P0301']],
    ['POOLS', []],
    ['COCOA', []],
    ['BOIS1', []],
    ['PO', []],
  ])('%j holds %j', (text, codes) => {
    expect(codesIn(text)).toEqual(codes);
  });

  it('flags a code read through a slip and keeps what stands in the text', () => {
    const [code] = findTroubleCodes('Engine: PO3O1 misfire').modules[0]?.codes ?? [];
    expect(code).toMatchObject({ code: 'P0301', wasCorrected: true, originalText: 'PO3O1' });
    const [plain] = findTroubleCodes('Engine: p0301 misfire').modules[0]?.codes ?? [];
    expect(plain).toMatchObject({ code: 'P0301', wasCorrected: false, originalText: 'p0301' });
  });

  it('lists the same code with the same status of the same module once, and twice when the status differs', () => {
    expect(codesIn('Engine: P0301 (stored)\nEngine: P0301 (stored)\nEngine: P0301 (pending)')).toEqual([
      'P0301',
      'P0301',
    ]);
  });
});

describe('status words', () => {
  it.each([
    ['P0113 Sensor current too high', 'unknown'],
    ['P0113 Sensor current too high (current)', 'present'],
    ['P0462 Water in fuel present', 'unknown'],
    ['P0462 Water in fuel, present', 'present'],
    ['P0462 Water in fuel STORED', 'history'],
    ['P0462 - not present', 'history'],
    ['P0462 - stored and present', 'present'],
    ['P0462 - fault stored', 'history'],
    ['[pending] P0462 something', 'pending'],
    ['P0462 something\tgespeichert', 'history'],
    ['P0462 Klappe klemmt - aktuell vorhanden', 'present'],
    ['P0462 chose - non présent', 'history'],
    ['P0462 cosa - no presente', 'history'],
    ['P0462 cosa - in attesa', 'pending'],
    ['P0462 coś - nieobecny', 'history'],
    ['P0462 iets - niet aanwezig', 'history'],
    ['P0462 thing | permanent', 'permanent'],
    ['P0462 thing', 'unknown'],
    ['P0462 not stored by anyone, ever', 'unknown'],
  ])('%j is %s', (text, status) => {
    expect(statusOf(text)).toBe(status);
  });
});

describe('modules', () => {
  it('does not claim a module without codes where it understood nothing about its codes', () => {
    const reading = findTroubleCodes('Body control module\n  12345 something\n  67890 something else');
    expect(reading.modules).toEqual([]);
    expect(reading.notUnderstood).toHaveLength(3);
  });

  it('keeps a module that answered with codes as answering even if the text also calls it silent', () => {
    const reading = findTroubleCodes('BCM: no answer\nBCM: B1234 stored');
    expect(reading.modules).toMatchObject([{ name: 'BCM', answered: true }]);
  });

  it('does not take a line about the report for a module', () => {
    const reading = findTroubleCodes('Odometer: 88120\nP0301 misfire');
    expect(reading.modules.map((module) => module.name)).toEqual(['']);
    expect(reading.notUnderstood.map((line) => line.text)).toEqual(['Odometer: 88120']);
  });

  it('keeps the text around the code', () => {
    const [module] = findTroubleCodes('Engine | P0301 | Cylinder 1 misfire seen | stored').modules;
    expect(module?.codes[0]?.words).toContain('Cylinder 1 misfire seen');
  });
});

describe('any text', () => {
  const bits = fc.constantFrom(
    'P0301',
    'p0420-11',
    'PO3O1',
    'U0100',
    'B12S4',
    'P0000',
    'Engine control',
    'Body',
    '[Airbag]',
    'no answer',
    'no codes',
    'antwortet nicht',
    'present',
    'stored',
    'Status: 2F',
    ' | ',
    '\t',
    '\n',
    '\n\n',
    '\r\n',
    '  ',
    ': ',
    ' - ',
    ';',
    ',',
    '"',
    '(',
    ')',
    '2 faults',
    'Code | Unit | State',
    'Unit: Radio',
    '-----',
    'ß',
    'Ł',
    '\u0000',
    '\u2028',
    '🚗',
    '12345',
    '100AB54C450110341',
  );
  const anyText = fc.oneof(
    fc.string({ unit: 'binary', maxLength: 300 }),
    fc.array(bits, { maxLength: 40 }).map((parts) => parts.join('')),
  );
  const slipped: Readonly<Record<string, string>> = { O: '0', Q: '0', I: '1', L: '1', S: '5', Z: '2' };

  it('never throws and never makes up a code: each stands in its own line, letter for letter or through a flagged slip', () => {
    fc.assert(
      fc.property(anyText, (text) => {
        const reading = findTroubleCodes(text);
        for (const module of reading.modules) {
          for (const code of module.codes) {
            const line = reading.lines[code.lineNumber - 1]?.text ?? '';
            expect(line).toContain(code.originalText);
            expect(text).toContain(code.originalText);
            expect(code.code).toMatch(/^[PCBU][0-3][0-9A-F]{3}(-[0-9A-F]{2})?$/);
            const written = code.originalText.toUpperCase().replace(/[-:]/, '');
            const plain = code.code.replace('-', '');
            if (!code.wasCorrected) expect(written).toBe(plain);
            expect(written.length).toBe(plain.length);
            for (const [index, character] of [...plain].entries()) {
              const asWritten = written.charAt(index);
              if (asWritten !== character) expect(slipped[asWritten]).toBe(character);
            }
          }
        }
      }),
      { numRuns: 2000 },
    );
  });

  it('drops nothing in silence: every line is there once with a use, and every line with a code in it is a code line', () => {
    fc.assert(
      fc.property(anyText, (text) => {
        const reading = findTroubleCodes(text);
        expect(reading.lines.map((line) => line.lineNumber)).toEqual(reading.lines.map((_, index) => index + 1));
        // biome-ignore lint/suspicious/noControlCharactersInRegex: the reader shows control characters as spaces.
        const plain = text.replace(/[\u0000-\u0008\u000e-\u001f\u007f]/g, ' ');
        expect(reading.lines.map((line) => line.text)).toEqual(plain.split(/\r\n|[\n\r\f\v\u2028\u2029]/));
        expect(reading.notUnderstood).toEqual(reading.lines.filter((line) => line.use === 'not-understood'));
        for (const line of reading.lines) {
          expect(line.use === 'blank').toBe(!/[\p{L}\p{N}]/u.test(line.text));
          if (/(?:^|\s)[PCBU][0-3][0-9A-F]{3}(?:\s|$)/.test(line.text) && !/P0000/.test(line.text))
            expect(line.use).toBe('code');
        }
      }),
      { numRuns: 2000 },
    );
  });

  it('names modules only with words of the text, names each once, and gives what the record of a scan can hold', () => {
    fc.assert(
      fc.property(anyText, (text) => {
        const { modules } = findTroubleCodes(text);
        const names = modules.map((module) => module.name.toLowerCase());
        expect(new Set(names).size).toBe(names.length);
        for (const module of modules) {
          // biome-ignore lint/suspicious/noControlCharactersInRegex: the reader shows control characters as spaces.
          expect(text.replace(/[\u0000-\u0008\u000e-\u001f\u007f]/g, ' ')).toContain(module.name);
          expect(module.name.length).toBeLessThanOrEqual(60);
          const codes = module.codes.map(({ code, status, words, statusByte, isUnproven }) => ({
            code,
            status,
            words,
            statusByte,
            isUnproven,
          }));
          const kept = {
            name: module.name === '' ? 'named by a person' : module.name,
            answered: module.answered,
            codes,
          };
          expect(scanModuleSchema.safeParse(kept).success).toBe(true);
        }
      }),
      { numRuns: 2000 },
    );
  });

  it.each([
    ['one long line of codes', `${'P0301 misfire, '.repeat(20_000)}`],
    ['one long line of dashes', `P0301 ${'- '.repeat(100_000)}x`],
    ['one long run of dashes', `${'-'.repeat(200_000)}x`],
    ['one long line of letters', `${'a'.repeat(200_000)} 3`],
    ['one long line of digits', `${'1'.repeat(200_000)}`],
    ['one long line of spaces', `P0301${' '.repeat(200_000)}stored x`],
    ['many lines', 'Engine control\n  P0301 misfire stored\n  something\n\n'.repeat(5_000)],
    ['many lines of labels', `P0301\n${'Unit: Radio\n'.repeat(5_000)}`],
    ['many modules', Array.from({ length: 5_000 }, (_, index) => `Unit ${index}: no answer`).join('\n')],
  ])('reads %s in a few seconds at most', (_, text) => {
    const start = performance.now();
    findTroubleCodes(text);
    expect(performance.now() - start).toBeLessThan(3000);
  });
});
