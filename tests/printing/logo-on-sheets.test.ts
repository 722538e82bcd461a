// A sheet with the dealer's logo keeps both standards.
import { PNG } from 'pngjs';
import { describe, expect, it } from 'vitest';
import { loadFonts } from '../../app/printing/load-fonts.ts';
import { renderSheet } from '../../app/printing/render-sheet.ts';
import { noImages } from '../../app/printing/sheet-images.ts';
import { accessibleChecklist } from '../helpers/accessible-checklist.ts';
import { archiveChecklist, byteProblems } from '../helpers/archive-checklist.ts';
import { PdfObjects } from '../helpers/pdf-objects.ts';
import { examplesByKind } from '../helpers/printed-examples.ts';

const fonts = await loadFonts(new URL('../../app/printing/fonts', import.meta.url).pathname);
const picture = new PNG({ width: 60, height: 30 });
for (let at = 0; at < picture.data.length; at += 4) picture.data.set([31, 78, 107, 255], at);
const logo = PNG.sync.write(picture, { colorType: 2, inputHasAlpha: true });

const [example] = examplesByKind['job-sheet'];
if (example === undefined) throw new Error('There is no job sheet to print.');
const { bytes } = await renderSheet(example.sheet, fonts, { ...noImages, logo });
const file = new PdfObjects(bytes);

describe('a sheet with a logo', () => {
  it('has the picture', () => {
    expect(bytes.toString('latin1')).toContain('/Subtype /Image');
  });

  it.each([...accessibleChecklist, ...archiveChecklist])('keeps: $item', ({ problems }) => {
    expect(problems(file, example.sheet)).toEqual([]);
  });

  it('begins and ends as it should', () => {
    expect(byteProblems(bytes)).toEqual([]);
  });
});
