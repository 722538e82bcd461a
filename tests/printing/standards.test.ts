// Every sheet on both papers against the checklists of PDF/UA-1 and PDF/A-2a, item by item, and every item against a file that breaks it.
import { describe, expect, it } from 'vitest';
import { anySheetKindSchema } from '../../app/domain/sheets/sheet.ts';
import { loadFonts } from '../../app/printing/load-fonts.ts';
import { renderSheet } from '../../app/printing/render-sheet.ts';
import { accessibleChecklist } from '../helpers/accessible-checklist.ts';
import { archiveChecklist, byteProblems } from '../helpers/archive-checklist.ts';
import { exampleImages } from '../helpers/example-pictures.ts';
import { PdfObjects } from '../helpers/pdf-objects.ts';
import { examplesByKind, printedExamples } from '../helpers/printed-examples.ts';
import { checkSoundness } from '../helpers/read-pdf.ts';

const fonts = await loadFonts(new URL('../../app/printing/fonts', import.meta.url).pathname);
const cases = printedExamples.flatMap(({ name, sheet }) =>
  (['a4', 'letter'] as const).map((paper) => [`${name} on ${paper}`, { ...sheet, paper }] as const),
);

describe('the table of examples', () => {
  it.each(anySheetKindSchema.options)('has a sheet of the kind %s, and it is one', (kind) => {
    expect(examplesByKind[kind].length).toBeGreaterThan(0);
    for (const { sheet } of examplesByKind[kind]) expect(sheet.kind).toBe(kind);
  });
});

describe.each(cases)('the %s', async (_, sheet) => {
  const { bytes } = await renderSheet(sheet, fonts, exampleImages);
  const file = new PdfObjects(bytes);

  it('is sound for qpdf, which finds nothing to warn of', () => {
    expect(checkSoundness(bytes)).toContain('No syntax or stream encoding errors found');
  });

  it.each(accessibleChecklist)('PDF/UA-1: $item', ({ problems }) => {
    expect(problems(file, sheet)).toEqual([]);
  });

  it.each(archiveChecklist)('PDF/A-2a: $item', ({ problems }) => {
    expect(problems(file, sheet)).toEqual([]);
  });

  it('PDF/A-2a: begins and ends as it should, and is packed as it may', () => {
    expect(byteProblems(bytes)).toEqual([]);
  });
});

const [spoilt] = examplesByKind['job-sheet'];
if (spoilt === undefined) throw new Error('There is no job sheet to break.');
const whole = await renderSheet(spoilt.sheet, fonts, exampleImages);

describe('the checklists', () => {
  it.each([...accessibleChecklist, ...archiveChecklist])(
    'notices a file that breaks it: $item',
    ({ problems, spoil }) => {
      const file = new PdfObjects(whole.bytes);
      spoil(file);
      expect(problems(file, spoilt.sheet)).not.toEqual([]);
    },
  );

  it('notice a wrong beginning, forbidden packing and something after the end', () => {
    const broken = Buffer.concat([Buffer.from('%PDF-2.0\n%abcd\n'), whole.bytes, Buffer.from('/LZWDecode more')]);
    expect(byteProblems(broken)).toEqual(['the first line', 'the second line', 'packing', 'the end']);
  });
});
