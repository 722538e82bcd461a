// Photographs on paper: in the file once, upright and not stretched, read aloud by their words, and within both standards.
import { describe, expect, it } from 'vitest';
import type { Sheet, SheetPicture } from '../../app/domain/sheets/sheet.ts';
import { loadFonts } from '../../app/printing/load-fonts.ts';
import { renderSheet, renderTogether } from '../../app/printing/render-sheet.ts';
import { noImages } from '../../app/printing/sheet-images.ts';
import { accessibleChecklist } from '../helpers/accessible-checklist.ts';
import { archiveChecklist, byteProblems } from '../helpers/archive-checklist.ts';
import { exampleImages, examplePictures, hashOf } from '../helpers/example-pictures.ts';
import { makeJpeg } from '../helpers/make-jpeg.ts';
import { PdfObjects, structureOf } from '../helpers/pdf-objects.ts';
import { examplesByKind } from '../helpers/printed-examples.ts';
import { checkSoundness, flatText } from '../helpers/read-pdf.ts';

const fonts = await loadFonts(new URL('../../app/printing/fonts', import.meta.url).pathname);
const [example] = examplesByKind['job-sheet'];
if (example === undefined) throw new Error('There is no job sheet to print on.');

function showing(items: readonly SheetPicture[]): Sheet {
  if (example === undefined) throw new Error('There is no job sheet to print on.');
  const heading = { kind: 'heading', level: 2, text: 'Photographs' } as const;
  return {
    ...example.sheet,
    blocks: [...example.sheet.blocks, heading, { kind: 'pictures', vehicleId: 'vehicle-one', items }],
  };
}

const pictures: readonly SheetPicture[] = examplePictures.map((bytes, index) => ({
  attachmentId: `picture-${index}`,
  sha256: hashOf(bytes),
  caption: `Scratch ${index} on the door, wide enough a sentence to be broken into more than the one line it has room for · 4 Mar 2026`,
  alternateText: `Photograph of 4 Mar 2026: scratch ${index} on the door`,
}));

const imagesIn = (file: PdfObjects) =>
  file.allDictionaries.filter((one) => one['/Subtype'] === '/Image').map((one) => [one['/Width'], one['/Height']]);

describe.each(['a4', 'letter'] as const)('photographs on %s', async (paper) => {
  const sheet = { ...showing(pictures), paper };
  const { bytes } = await renderSheet(sheet, fonts, exampleImages);
  const file = new PdfObjects(bytes);

  it('are in the file, each once', () => {
    expect(imagesIn(file)).toEqual([
      [640, 480],
      [480, 640],
      [400, 400],
    ]);
    expect(checkSoundness(bytes)).toContain('No syntax or stream encoding errors found');
  });

  it('are as wide as they are high by the dots that they have', () => {
    const placed = file.pages
      .flatMap((page) => file.content(page))
      .filter(({ name, operands }) => name === 'cm' && Number(operands[0]) > 20 && Number(operands[3]) < -20)
      .map(({ operands }) => Math.abs(Number(operands[0]) / Number(operands[3])));
    expect(placed).toHaveLength(3);
    for (const [index, wanted] of [4 / 3, 3 / 4, 1].entries()) expect(placed[index]).toBeCloseTo(wanted, 3);
  });

  it.each([...accessibleChecklist, ...archiveChecklist])('keep: $item', ({ problems }) => {
    expect(problems(file, sheet)).toEqual([]);
  });

  it('begin and end as they should', () => {
    expect(byteProblems(bytes)).toEqual([]);
  });
});

describe('a photograph whose file is not there', () => {
  const lost = { ...pictures[0], sha256: 'a'.repeat(64) } as SheetPicture;

  it.each([
    ['missing', null],
    ['no picture', Buffer.from('not a picture')],
  ])('is told of on the paper where it is %s, and the sheet is printed', async (_, found) => {
    const { bytes } = await renderSheet(showing([lost]), fonts, { ...noImages, picture: async () => found });
    const file = new PdfObjects(bytes);
    expect(imagesIn(file)).toEqual([]);
    expect(flatText(bytes)).toContain('The file of this photograph is missing or damaged.');
    expect(flatText(bytes)).toContain('Scratch 0 on the door');
    expect(structureOf(file).children.length).toBe(1);
  });
});

describe('sheets in one file', () => {
  it('hold a photograph once that stands on several of them', async () => {
    async function* both(): AsyncGenerator<Sheet> {
      yield showing(pictures);
      yield showing(pictures.slice(0, 1));
    }
    const made = await renderTogether('Two', both(), fonts, exampleImages);
    expect(imagesIn(new PdfObjects(made?.bytes ?? new Uint8Array()))).toHaveLength(3);
  });
});

describe('many photographs', () => {
  it('are all on the sheet, three rows a page, none outside it', async () => {
    const many = Array.from({ length: 40 }, (_, index) => ({
      attachmentId: `many-${index}`,
      sha256: hashOf(Buffer.from(`${index}`)),
      caption: `Number ${index}`,
      alternateText: `Photograph: number ${index}`,
    }));
    const tall = makeJpeg({ width: 80, height: 640, colourAt: () => [90, 90, 90] });
    const { bytes } = await renderSheet(showing(many), fonts, { ...noImages, picture: async () => tall });
    const file = new PdfObjects(bytes);
    const figures = file.allDictionaries.filter((one) => one['/S'] === '/Figure' && '/A' in one);
    const boxes = figures.map((one) =>
      file.array(file.dictionary(file.array(one['/A'])[0])['/BBox']).map((value) => Number(value)),
    );
    expect(boxes.length).toBeGreaterThanOrEqual(40);
    for (const [left = 0, bottom = 0, right = 0, top = 0] of boxes) {
      expect(left).toBeGreaterThan(40);
      expect(right).toBeLessThan(596 - 40);
      expect(Math.min(bottom, top)).toBeGreaterThan(20);
      expect(Math.max(bottom, top)).toBeLessThan(842 - 20);
    }
  });
});
