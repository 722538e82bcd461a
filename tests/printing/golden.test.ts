// Every sheet against its kept text, to the letter, and its kept pictures, within a tolerance. `npm run golden` writes them anew: look at
// what changed before it is committed.
import { mkdirSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import process from 'node:process';
import { PNG } from 'pngjs';
import { describe, expect, it } from 'vitest';
import type { Sheet } from '../../app/domain/sheets/sheet.ts';
import { loadFonts } from '../../app/printing/load-fonts.ts';
import { renderSheet } from '../../app/printing/render-sheet.ts';
import { exampleImages } from '../helpers/example-pictures.ts';
import { heardText } from '../helpers/heard-text.ts';
import { examplesByKind, printedExamples } from '../helpers/printed-examples.ts';
import { largestDifference, packed, smallPictures } from '../helpers/small-picture.ts';

// Sheets tell the time of the desk that prints; the kept ones were printed in this zone.
process.env.TZ = 'UTC';

/**
 * Share of dots that may differ in any square of 10 mm. Measured: poppler 22.12 against Ghostscript, which shares no line of code with it
 * and draws thin lines and letters otherwise, 0.27 at most over all these pages; against itself with the page moved by 1.3 mm, 0.39 at
 * least. So any release of poppler passes, and a block that has moved does not.
 */
const tolerated = 0.33;

const folder = new URL('golden', import.meta.url).pathname;
const fonts = await loadFonts(new URL('../../app/printing/fonts', import.meta.url).pathname);
const isWriting = process.env.LOTWRIGHT_GOLDEN === 'write';
const printed = await Promise.all(
  printedExamples.map(async ({ name, sheet }) => {
    const { bytes } = await renderSheet({ ...sheet, paper: 'a4' }, fonts, exampleImages);
    return { name, text: heardText(bytes), pictures: smallPictures(bytes) };
  }),
);
const pictureName = (name: string, index: number) => `${name}-${index + 1}.png`;

if (isWriting) {
  rmSync(folder, { recursive: true, force: true });
  mkdirSync(folder);
  for (const { name, text, pictures } of printed) {
    writeFileSync(join(folder, `${name}.txt`), text);
    for (const [index, picture] of pictures.entries())
      writeFileSync(join(folder, pictureName(name, index)), packed(picture));
  }
}

const kept = readdirSync(folder);
const read = (name: string) => PNG.sync.read(readFileSync(join(folder, name)));

describe.each(printed)('the $name', ({ name, text, pictures }) => {
  it('says what it said', () => {
    expect(text).toBe(readFileSync(join(folder, `${name}.txt`), 'utf8'));
  });

  it('looks as it looked', () => {
    for (const [index, picture] of pictures.entries())
      expect(largestDifference(picture, read(pictureName(name, index))), `page ${index + 1}`).toBeLessThan(tolerated);
  });
});

describe('the kept files', () => {
  it('are those of the examples, no more and no less', () => {
    const wanted = printed.flatMap(({ name, pictures }) => [
      `${name}.txt`,
      ...pictures.map((_, index) => pictureName(name, index)),
    ]);
    expect([...kept].sort()).toEqual(wanted.sort());
  });

  it('are small', () => {
    const sizes = kept.filter((name) => name.endsWith('.png')).map((name) => statSync(join(folder, name)).size);
    expect(Math.max(...sizes)).toBeLessThan(30_000);
    expect(sizes.reduce((sum, size) => sum + size, 0)).toBeLessThan(1_500_000);
  });
});

describe('the comparison', () => {
  const [example] = examplesByKind['readiness-sheet'];
  if (example === undefined) throw new Error('There is no readiness sheet to change.');
  const changed = async (change: (sheet: Sheet) => Sheet) => {
    const { bytes } = await renderSheet(change({ ...example.sheet, paper: 'a4' }), fonts, exampleImages);
    const [picture] = smallPictures(bytes);
    return {
      text: heardText(bytes),
      difference: picture ? largestDifference(picture, read(`${example.name}-1.png`)) : 0,
    };
  };

  it('finds no difference where nothing changed', async () => {
    const { text, difference } = await changed((sheet) => sheet);
    expect(text).toBe(readFileSync(join(folder, `${example.name}.txt`), 'utf8'));
    expect(difference).toBeLessThan(tolerated / 10);
  });

  it('notices that two blocks have changed places', async () => {
    const { text, difference } = await changed((sheet) => {
      const [first, second, third, ...rest] = sheet.blocks;
      return { ...sheet, blocks: [first, third, second, ...rest].filter((block) => block !== undefined) };
    });
    expect(text).not.toBe(readFileSync(join(folder, `${example.name}.txt`), 'utf8'));
    expect(difference).toBeGreaterThan(tolerated);
  });

  it('notices that a block has moved by the height of one line', async () => {
    const { difference } = await changed((sheet) => ({
      ...sheet,
      dealer: { ...sheet.dealer, address: '', phone: '' },
    }));
    expect(difference).toBeGreaterThan(tolerated);
  });
});
