// Sheets of awkward size and content printed and read back: many rows, long words, letters of several scripts.
import { describe, expect, it } from 'vitest';
import { jobSheet } from '../../app/domain/sheets/job-sheet.ts';
import type { Sheet, SheetBlock } from '../../app/domain/sheets/sheet.ts';
import { loadFonts } from '../../app/printing/load-fonts.ts';
import { renderSheet } from '../../app/printing/render-sheet.ts';
import { checkSoundness, flatText, pageTexts, placedWords, structureTree } from '../helpers/read-pdf.ts';
import { examplePrinting, exampleShop, exampleVehicle, reckonExample } from '../helpers/sheet-example.ts';
import { makePart, makeVehicle } from '../helpers/vehicle-maker.ts';

const fonts = await loadFonts(new URL('../../app/printing/fonts', import.meta.url).pathname);
const frame = jobSheet(exampleVehicle, reckonExample(exampleVehicle), exampleShop, examplePrinting);
const withBlocks = (...blocks: SheetBlock[]): Sheet => ({ ...frame, blocks });
const plain = (text: string) => ({ text, emphasis: 'none' }) as const;
const heading: SheetBlock = { kind: 'masthead', number: 'F-1', name: 'Merrowick Hearth', tags: [] };

function tableOf(rows: readonly (readonly string[])[], titles: readonly string[]): SheetBlock {
  return {
    kind: 'table',
    caption: 'a table',
    columns: titles.map((title, index) => ({
      title,
      share: 10,
      align: index === titles.length - 1 ? 'right' : 'left',
    })),
    rows: rows.map((row) => row.map(plain)),
    whenEmpty: 'nothing',
    rowRoom: 'text',
  };
}

function wordsOutside(bytes: Uint8Array): readonly string[] {
  const { pages, words } = placedWords(bytes);
  const side = (16 / 25.4) * 72 - 0.5;
  return words
    .filter(({ page, left, right, top, bottom }) => {
      const size = pages[page - 1] ?? { width: 0, height: 0 };
      return left < side || right > size.width - side || top < 28 || bottom > size.height - 26;
    })
    .map((word) => word.text);
}

async function printManyParts() {
  const parts = Array.from({ length: 200 }, (_, index) =>
    makePart('2026-03-05', {
      what: `Clip number ${index + 1}`,
      partNumber: `LW-${1000 + index}`,
      orderedOn: '2026-03-06',
      receivedOn: '2026-03-09',
      fittedOn: '2026-03-10',
    }),
  );
  const vehicle = makeVehicle('2026-03-02', { parts });
  const { bytes, pages } = await renderSheet(
    jobSheet(vehicle, reckonExample(vehicle), exampleShop, examplePrinting),
    fonts,
  );
  return { parts, bytes, pages };
}

const manyParts = await printManyParts();

describe('two hundred part lines', () => {
  const { parts, bytes, pages } = manyParts;
  const texts = pageTexts(bytes);

  it('are all there, each with its number on the same page', () => {
    expect(pages).toBeGreaterThan(4);
    for (const index of parts.keys()) {
      const page = texts.find((text) => new RegExp(`Clip number ${index + 1}\\b`).test(text));
      expect(page).toMatch(new RegExp(`Clip number ${index + 1} +LW-${1000 + index}\\b`));
    }
  });

  it('have the head of the table over them on every page', () => {
    const withParts = texts.filter((text) => /Clip number \d+/.test(text));
    expect(withParts.length).toBeGreaterThan(4);
    for (const text of withParts) {
      const head = text.search(/Part +Part number +Qty +Where it is/);
      expect(head).toBeGreaterThanOrEqual(0);
      expect(head).toBeLessThan(text.search(/Clip number \d+/));
    }
  });

  it('have the head once for a screen reader', () => {
    expect(structureTree(bytes).match(/"Part number ?"/g)).toHaveLength(1);
  });

  it('stay inside the page and leave the file sound', () => {
    expect(wordsOutside(bytes)).toEqual([]);
    expect(checkSoundness(bytes)).toContain('No syntax or stream encoding errors found');
  });
});

describe('rows and words of awkward size', () => {
  it('never part a row that fits on a page', async () => {
    const rows = Array.from({ length: 60 }, (_, index) => [
      `row${index} begins ${'word '.repeat(40)}row${index} ends`,
      `${index}`,
    ]);
    const { bytes } = await renderSheet(withBlocks(heading, tableOf(rows, ['What', 'No.'])), fonts);
    for (const text of pageTexts(bytes)) {
      const begun = [...text.matchAll(/row(\d+) begins/g)].map((match) => match[1]);
      const ended = [...text.matchAll(/row(\d+)\s+ends/g)].map((match) => match[1]);
      expect(ended).toEqual(begun);
    }
  });

  it('let a row run on only when no page could hold it, and lose nothing', async () => {
    const words = Array.from({ length: 550 }, (_, index) => `w${index}x`);
    const cell = words.join(' ').slice(0, 3999);
    const { bytes, pages } = await renderSheet(
      withBlocks(heading, tableOf([[cell, 'a', 'b', 'c', 'd', 'e', 'f', 'g', '1']], [...'abcdefghi'])),
      fonts,
    );
    expect(pages).toBeGreaterThan(1);
    const text = flatText(bytes);
    for (const word of cell.split(' ').slice(0, -1)) expect(text).toContain(word);
    expect(wordsOutside(bytes)).toEqual([]);
  });

  it('break words longer than the line in every kind of block, and lose no letter', async () => {
    const long = 'Xy'.repeat(300);
    const running = 'Zw'.repeat(300);
    const emphasis = 'strong';
    const { bytes } = await renderSheet(
      {
        ...withBlocks(
          { kind: 'masthead', number: long, name: long, tags: [{ label: long, value: long }] },
          { kind: 'heading', level: 2, text: long },
          { kind: 'verdict', isGood: false, text: long, reasons: [long] },
          { kind: 'paragraph', text: long, emphasis },
          { kind: 'facts', rows: [{ label: long, value: long }] },
          { kind: 'caution', key: 'high-voltage', title: long, text: long, concerns: long },
          { kind: 'bullets', items: [long] },
          {
            kind: 'steps',
            isNumbered: true,
            hasInitials: true,
            items: [{ text: long, detail: long, state: 'open', marks: [{ text: long, emphasis }], blanks: [long] }],
          },
          tableOf([[long, long]], [long, long]),
          { kind: 'blank-lines', label: long, count: 2, fillsPage: false },
          { kind: 'signatures', labels: [long, long, long] },
          { kind: 'barcode', symbology: 'code128', value: 'Q'.repeat(60), label: long, alternateText: 'x' },
        ),
        subject: running,
        footer: running,
        sampleNotice: running,
        printedBy: running,
        dealer: { name: running, address: running, phone: running },
      },
      fonts,
    );
    expect(wordsOutside(bytes)).toEqual([]);
    const letters = placedWords(bytes)
      .words.map((word) => word.text)
      .join('');
    // Twenty-six texts of the body stand in full; the label of a blank is shortened on purpose, and so are the running lines.
    expect((letters.match(/[Xy]/g) ?? []).length).toBeGreaterThanOrEqual(26 * 600);
  });

  it('go on over many pages with steps and never part one', async () => {
    const items = Array.from({ length: 80 }, (_, index) => ({
      text: `Step ${index} begins`,
      detail: 'with some detail about it',
      state: 'open' as const,
      marks: [],
      blanks: [`value of ${index}`],
    }));
    const { bytes, pages } = await renderSheet(
      withBlocks(heading, { kind: 'steps', isNumbered: true, hasInitials: true, items }),
      fonts,
    );
    expect(pages).toBeGreaterThan(3);
    for (const text of pageTexts(bytes)) {
      const begun = [...text.matchAll(/Step (\d+) begins/g)].map((match) => match[1]);
      const ended = [...text.matchAll(/value of (\d+)/g)].map((match) => match[1]);
      expect(ended).toEqual(begun);
      expect(text).toContain('initials');
    }
  });

  it('never leave a heading alone at the foot of a page', async () => {
    const blocks = Array.from({ length: 40 }, (_, index): SheetBlock[] => [
      { kind: 'heading', level: 2, text: `Heading ${index} here` },
      { kind: 'heading', level: 3, text: `Below ${index} here` },
      { kind: 'paragraph', text: `Text ${index} here`, emphasis: 'none' },
    ]).flat();
    const { bytes } = await renderSheet(withBlocks(heading, ...blocks), fonts);
    for (const text of pageTexts(bytes)) {
      const numbers = (word: string) =>
        [...text.matchAll(new RegExp(`${word} (\\d+) here`, 'g'))].map((match) => match[1]);
      expect(numbers('Text')).toEqual(numbers('Heading'));
      expect(numbers('Below')).toEqual(numbers('Heading'));
    }
  });
});

describe('letters', () => {
  it.each([
    ['Latin with accents', 'Žluťoučký kůň, Ångström, façade, Øresund, ŁÓDŹ, Straße, İstanbul'],
    ['Greek', 'Ελένη Παπαδάκη, Θεσσαλονίκη, Ωμέγα'],
    ['Cyrillic', 'Щёлково, Київ, Ђорђе, съешь же ещё'],
    ['Vietnamese', 'Nguyễn Thị Hồng, Đặng'],
    ['signs', '“quoted” – dash — 12 × 3 ≤ 40 … 5 °C µm ½ №'],
  ])('of %s read back as they were', async (_, words) => {
    const { bytes } = await renderSheet(
      withBlocks({ ...heading, name: words } as SheetBlock, { kind: 'paragraph', text: words, emphasis: 'strong' }),
      fonts,
    );
    // Signs that share a shape (the micro sign and the Greek letter) share a glyph, so they are compared by what they are.
    const read = flatText(bytes).normalize('NFKC');
    expect(read.split(words.normalize('NFKC')).length - 1).toBe(2);
    expect(flatText(bytes)).not.toContain('□');
  });

  it('put together from letter and accent print as one', async () => {
    const { bytes } = await renderSheet(
      withBlocks(heading, { kind: 'paragraph', text: 'Dvor\u030ca\u0301k', emphasis: 'none' }),
      fonts,
    );
    expect(flatText(bytes)).toContain('Dvořák');
  });

  it('that the typefaces lack become a box, and the foot of the page says so', async () => {
    const { bytes } = await renderSheet(
      withBlocks(heading, { kind: 'paragraph', text: 'made by 東京 with 🔧', emphasis: 'none' }),
      fonts,
    );
    expect(flatText(bytes)).toContain('made by □□ with □');
    expect(flatText(bytes)).toContain('□ stands for a character this typeface lacks');
  });

  it('with a meaning in XML leave the description of the file readable', async () => {
    const dealer = { name: 'Smith & <Sons>', address: '', phone: '' };
    const { bytes } = await renderSheet({ ...withBlocks(heading), dealer, subject: 'R&D <1>' }, fonts);
    const xmp = /<x:xmpmeta[\s\S]*<\/x:xmpmeta>/.exec(bytes.toString('utf8'))?.[0] ?? '';
    expect(xmp).toContain('Smith &amp; &lt;Sons&gt;');
    expect(xmp).toContain('Job sheet: R&amp;D &lt;1&gt;');
    expect(xmp.replace(/&(amp|lt|gt);/g, '')).not.toContain('&');
    expect(flatText(bytes)).toContain('Smith & <Sons>');
  });

  it('that cannot be seen, and line ends of any system, do no harm', async () => {
    const text = 'one\r\ntwo\rthree\u0007\u200b\u202efour\tfive';
    const { bytes } = await renderSheet(withBlocks(heading, { kind: 'paragraph', text, emphasis: 'none' }), fonts);
    expect(flatText(bytes)).toContain('one two threefour five');
  });
});
