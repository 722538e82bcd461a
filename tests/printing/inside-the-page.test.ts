// Every kind of sheet with two hundred lines, very long names and three scripts, on both papers: no word outside the margins, none over another.
import { describe, expect, it } from 'vitest';
import { anySheetKindSchema } from '../../app/domain/sheets/sheet.ts';
import { loadFonts } from '../../app/printing/load-fonts.ts';
import { renderSheet } from '../../app/printing/render-sheet.ts';
import { awkwardSheets, lines } from '../helpers/awkward-example.ts';
import { exampleImages } from '../helpers/example-pictures.ts';
import { wordsOutside, wordsOverlapping } from '../helpers/places-on-page.ts';
import { printedExamples } from '../helpers/printed-examples.ts';
import { type PlacedWords, placedWords } from '../helpers/read-pdf.ts';

const fonts = await loadFonts(new URL('../../app/printing/fonts', import.meta.url).pathname);
const papers = ['a4', 'letter'] as const;
const awkward = awkwardSheets();

describe.each(papers)('on %s', (paper) => {
  it.each(printedExamples)('the $name keeps its words inside the margins and apart', async ({ sheet }) => {
    const placed = placedWords((await renderSheet({ ...sheet, paper }, fonts, exampleImages)).bytes);
    expect(wordsOutside(placed)).toEqual([]);
    expect(wordsOverlapping(placed)).toEqual([]);
  });

  it.each(awkward)('a $kind as awkward as it comes does as well', async ({ sheet }) => {
    const placed = placedWords((await renderSheet({ ...sheet, paper }, fonts, exampleImages)).bytes);
    expect(placed.words.length).toBeGreaterThan(50);
    expect(wordsOutside(placed)).toEqual([]);
    expect(wordsOverlapping(placed)).toEqual([]);
  });
});

describe('two hundred lines', () => {
  it('are of every kind of sheet that there is', () => {
    expect(awkward.map(({ kind }) => kind)).toEqual(anySheetKindSchema.options);
  });

  it.each(['job-sheet', 'plan-sheet', 'readiness-sheet', 'cost-sheet', 'parts-list'] as const)(
    'are all on the %s, with letters of three scripts',
    async (wanted) => {
      const sheet = awkward.find(({ kind }) => kind === wanted)?.sheet;
      if (sheet === undefined) throw new Error(`There is no ${wanted}.`);
      const { words } = placedWords((await renderSheet(sheet, fonts, exampleImages)).bytes);
      const numbers = new Set(words.flatMap(({ text }, at) => (text === 'Line' ? [words[at + 1]?.text] : [])));
      for (let index = 0; index < lines; index += 1) expect(numbers).toContain(`${index}`);
      const all = words.map(({ text }) => text).join('');
      expect(all).toContain('Žluťoučký-');
      expect(all).toContain('Παπαδοπούλου');
      expect(all).toContain('Щёлково-');
    },
  );
});

describe('the looking', () => {
  const word = { page: 1, left: 100, right: 140, top: 100, bottom: 114, text: 'one' };
  const page = (...words: PlacedWords['words']): PlacedWords => ({ pages: [{ width: 595, height: 842 }], words });

  it('notices words outside each of the four margins', () => {
    const out = [
      { ...word, left: 40 },
      { ...word, right: 552 },
      { ...word, top: 20 },
      { ...word, bottom: 820 },
    ];
    expect(wordsOutside(page(word, ...out))).toHaveLength(4);
  });

  it('notices a word over another, and takes lines set close for what they are', () => {
    const over = { ...word, left: 138, right: 170, top: 103, bottom: 117, text: 'two' };
    expect(wordsOverlapping(page(word, over))).toEqual(['page 1: one and two']);
    expect(wordsOverlapping(page(word, { ...over, top: 111, bottom: 125 }))).toEqual([]);
    expect(wordsOverlapping(page(word, { ...over, left: 141 }))).toEqual([]);
  });
});
