// Barcodes from the rendered page at 150 dpi, read by decoders that have nothing to do with the encoder: zbar and zxing.
import { describe, expect, it } from 'vitest';
import type { Sheet, SheetBlock } from '../../app/domain/sheets/sheet.ts';
import { loadFonts } from '../../app/printing/load-fonts.ts';
import { renderSheet } from '../../app/printing/render-sheet.ts';
import { exampleImages } from '../helpers/example-pictures.ts';
import { printedExamples } from '../helpers/printed-examples.ts';
import { barcodeProblems, barsOnPages } from '../helpers/read-barcodes.ts';

const fonts = await loadFonts(new URL('../../app/printing/fonts', import.meta.url).pathname);
const papers = ['a4', 'letter'] as const;
const withBarcodes = printedExamples.filter(({ sheet }) => sheet.blocks.some(({ kind }) => kind === 'barcode'));
const [first] = withBarcodes;
if (first === undefined) throw new Error('No sheet carries a barcode.');
const frame = first.sheet;

function barcode(symbology: 'code39' | 'code128' | 'datamatrix', value: string): SheetBlock {
  return { kind: 'barcode', symbology, value, label: 'Value', alternateText: `${symbology} of ${value}` };
}

async function problemsOf(printed: readonly SheetBlock[], expected = printed): Promise<readonly string[]> {
  const head: SheetBlock = { kind: 'masthead', number: 'B-1', name: 'Bars', tags: [] };
  const sheet: Sheet = { ...frame, mark: '', blocks: [head, ...printed] };
  const { bytes } = await renderSheet(sheet, fonts, exampleImages);
  return barcodeProblems(bytes, { blocks: expected, mark: '' });
}

describe('barcodes on the sheets', () => {
  it.each(
    withBarcodes.flatMap(({ name, sheet }) =>
      papers.map((paper) => [`${name} on ${paper}`, { ...sheet, paper }] as const),
    ),
  )('of the %s read as VIN and stock number, each with its characters under it', async (_, sheet) => {
    const { bytes } = await renderSheet(sheet, fonts, exampleImages);
    expect(barcodeProblems(bytes, sheet)).toEqual([]);
  });

  it('are the VIN in Code 39 and Data Matrix, and the stock number in Code 128', () => {
    const all = withBarcodes.flatMap(({ sheet }) => sheet.blocks.filter((block) => block.kind === 'barcode'));
    for (const { label, symbology, value } of all) {
      if (symbology === 'code128') expect([label, value]).toEqual(['Stock number', 'F-1042']);
      else expect([label, value]).toEqual(['VIN', expect.stringMatching(/^[0-9A-HJ-NPR-Z]{17}$/)]);
    }
    expect(new Set(all.map(({ symbology }) => symbology)).size).toBe(3);
  });
});

describe('the mark at the foot', () => {
  it.each(
    printedExamples.flatMap(({ name, sheet }) =>
      papers.map((paper) => [`${name} on ${paper}`, { ...sheet, paper }] as const),
    ),
  )('of the %s reads as bars on every page', async (_, sheet) => {
    expect(sheet.mark).toHaveLength(6);
    const { bytes, pages } = await renderSheet(sheet, fonts);
    const read = barsOnPages(bytes);
    expect(read).toHaveLength(pages);
    for (const page of read) expect(page).toContain(sheet.mark);
  });

  it('is not drawn on a sheet without one', async () => {
    const sheet: Sheet = { ...frame, mark: '', blocks: [{ kind: 'masthead', number: 'B-1', name: 'Bars', tags: [] }] };
    expect(barsOnPages((await renderSheet(sheet, fonts)).bytes)).toEqual([[]]);
  });
});

describe('every symbology', () => {
  it.each(['0LW4BRHC6KA010427', '1M8GDM9AXKP042788', 'A', 'F-1042'])('reads back %s', async (value) => {
    expect(
      await problemsOf([barcode('code39', value), barcode('code128', value), barcode('datamatrix', value)]),
    ).toEqual([]);
  });

  it('reads back every sign that a stock number may have', async () => {
    expect(await problemsOf([barcode('code128', 'f_1042/b (2) #7'), barcode('datamatrix', 'f_1042/b (2) #7')])).toEqual(
      [],
    );
  });

  it('reads back the longest stock number, made as fine as it must be', async () => {
    const value = 'STOCK-2026-00047-FERN-0001';
    expect(await problemsOf([barcode('code128', value)])).toEqual([]);
  });
});

describe('the reading back', () => {
  it.each(['code39', 'code128', 'datamatrix'] as const)('notices a wrong %s', async (symbology) => {
    const right = { ...barcode(symbology, '0LW4BRHC6KA010427'), alternateText: 'bars' } as SheetBlock;
    const wrong = { ...barcode(symbology, '0LW4BRHC6KA010428'), alternateText: 'bars' } as SheetBlock;
    const problems = await problemsOf([wrong], [right]);
    expect(problems).toContain('zxing reads 0LW4BRHC6KA010428 for 0LW4BRHC6KA010427');
    expect(problems).toContain('0LW4BRHC6KA010427 does not stand under its bars');
    if (symbology !== 'datamatrix') expect(problems).toContain('zbar reads 0LW4BRHC6KA010428 for 0LW4BRHC6KA010427');
  });

  it('notices bars that were left out', async () => {
    expect(await problemsOf([], [barcode('code39', 'AB12')])).toContain('no figure 1');
  });
});
