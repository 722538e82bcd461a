// Sheets as files: their names, whole or not at all, and sentences for what goes wrong.
import { chmodSync, existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { makeSheet, printSheet, sheetFileName } from '../../app/services/printer.ts';
import { flatText } from '../helpers/read-pdf.ts';
import { examplePrinting, exampleShop, exampleToday, exampleVehicle } from '../helpers/sheet-example.ts';
import { makeVehicle } from '../helpers/vehicle-maker.ts';

const fontsFolder = new URL('../../app/printing/fonts', import.meta.url).pathname;
const sheet = makeSheet('job-sheet', exampleVehicle, exampleShop, exampleToday, examplePrinting);

let folder = '';
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'lotwright-printer-'));
});
afterEach(() => {
  chmodSync(folder, 0o700);
  rmSync(folder, { recursive: true, force: true });
});

describe('making a sheet', () => {
  it('makes the kind that was asked for, with who, when and from which state', () => {
    expect(sheet).toMatchObject({
      kind: 'job-sheet',
      printedAt: examplePrinting.at,
      printedBy: 'Mara Lindqvist',
      revision: 23,
    });
    const other = makeSheet('readiness-sheet', exampleVehicle, exampleShop, exampleToday, examplePrinting);
    expect(other.kind).toBe('readiness-sheet');
  });
});

describe('the name of a sheet’s file', () => {
  const nameOf = (stockNumber: string, id = 'vehicle-7') =>
    sheetFileName('job-sheet', { ...makeVehicle('2026-03-02', { identity: { stockNumber } }), id });

  it('is the stock number and the kind', () => {
    expect(nameOf('F-1042')).toBe('F-1042-job-sheet.pdf');
    expect(nameOf('A.1_b')).toBe('A.1_b-job-sheet.pdf');
  });

  it('carries the vehicle’s identity where the number had to be altered, so that two never share a file', () => {
    expect(nameOf('A/1')).toBe('A-1-vehicle-7-job-sheet.pdf');
    expect(nameOf('A 1', 'vehicle-8')).toBe('A-1-vehicle-8-job-sheet.pdf');
    expect(nameOf('Ω')).toBe('vehicle-7-job-sheet.pdf');
  });

  it.each(['../../etc', '..', '.hidden', 'a\\b', 'con:', 'ü', '-x', 'x'.repeat(24)])(
    'is a plain name for %s',
    (number) => {
      expect(nameOf(number)).toMatch(/^[A-Za-z0-9][A-Za-z0-9._-]*-job-sheet\.pdf$/);
      expect(nameOf(number)).not.toContain('..');
    },
  );
});

describe('printing a sheet', () => {
  it('writes one whole file, makes the folder it goes to, and says how many pages it has', async () => {
    const path = join(folder, 'new', 'sheet.pdf');
    const { pages } = await printSheet(sheet, fontsFolder, path);
    expect(pages).toBeGreaterThan(1);
    expect(readdirSync(join(folder, 'new'))).toEqual(['sheet.pdf']);
    expect(flatText(readFileSync(path))).toContain(`Page ${pages} of ${pages}`);
  });

  it('replaces an older sheet of the same name', async () => {
    const path = join(folder, 'sheet.pdf');
    writeFileSync(path, 'old');
    await printSheet(sheet, fontsFolder, path);
    expect(readFileSync(path).subarray(0, 5).toString()).toBe('%PDF-');
  });

  it('says so when the place cannot be written, and leaves no part of a file', async () => {
    const path = join(folder, 'taken.pdf', 'sheet.pdf');
    writeFileSync(join(folder, 'taken.pdf'), 'a file where a folder should be');
    await expect(printSheet(sheet, fontsFolder, path)).rejects.toThrow(/^The sheet was not written: its folder/);
    expect(readdirSync(folder)).toEqual(['taken.pdf']);
    expect(readFileSync(join(folder, 'taken.pdf'), 'utf8')).toBe('a file where a folder should be');
  });

  it('says in a sentence that the typefaces are missing, and prints again once they are there', async () => {
    const fonts = join(folder, 'fonts');
    const path = join(folder, 'sheet.pdf');
    await expect(printSheet(sheet, fonts, path)).rejects.toThrow(/typeface SourceSans3-\w+\.ttf .* is missing/);
    expect(existsSync(path)).toBe(false);
  });
});
