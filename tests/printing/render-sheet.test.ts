// Every sheet of one vehicle on both papers, printed and read back by independent programs: soundness, places, words, tags, typefaces.
import { describe, expect, it } from 'vitest';
import { codeLetter } from '../../app/domain/sheets/code-letter.ts';
import { costSheet } from '../../app/domain/sheets/cost-sheet.ts';
import { jobSheet } from '../../app/domain/sheets/job-sheet.ts';
import { planSheet } from '../../app/domain/sheets/plan-sheet.ts';
import { readinessSheet } from '../../app/domain/sheets/readiness-sheet.ts';
import type { Sheet } from '../../app/domain/sheets/sheet.ts';
import { windowSheet } from '../../app/domain/sheets/window-sheet.ts';
import { loadFonts } from '../../app/printing/load-fonts.ts';
import { paperSizes } from '../../app/printing/page-frame.ts';
import { renderSheet } from '../../app/printing/render-sheet.ts';
import { showInstant } from '../../app/printing/running-lines.ts';
import {
  checkSoundness,
  flatText,
  fontsOf,
  pageTexts,
  pdfFacts,
  placedWords,
  plainObjects,
  structureTree,
} from '../helpers/read-pdf.ts';
import {
  examplePrinting,
  exampleShop,
  exampleToday,
  exampleVehicle,
  readyToday,
  readyVehicle,
  reckonExample,
} from '../helpers/sheet-example.ts';

const fonts = await loadFonts(new URL('../../app/printing/fonts', import.meta.url).pathname);
const sheets: Readonly<Record<string, Sheet>> = {
  'job sheet': jobSheet(exampleVehicle, reckonExample(exampleVehicle), exampleShop, examplePrinting),
  'readiness sheet, not ready': readinessSheet(
    exampleVehicle,
    reckonExample(exampleVehicle),
    exampleShop,
    examplePrinting,
  ),
  'readiness sheet, ready': readinessSheet(
    readyVehicle,
    reckonExample(readyVehicle, readyToday),
    exampleShop,
    examplePrinting,
  ),
  'plan sheet': planSheet(exampleVehicle, exampleShop, examplePrinting),
  'window sheet, not ready': windowSheet(exampleVehicle, reckonExample(exampleVehicle), exampleShop, examplePrinting),
  'window sheet, ready': windowSheet(
    readyVehicle,
    reckonExample(readyVehicle, readyToday),
    exampleShop,
    examplePrinting,
  ),
  'cost sheet': costSheet(exampleVehicle, reckonExample(exampleVehicle), exampleShop, examplePrinting),
  'code letter': codeLetter(exampleVehicle, exampleShop, examplePrinting, {
    today: exampleToday,
    requestId: 'code-radio',
  }),
};
const cases = Object.entries(sheets).flatMap(([name, sheet]) =>
  (['a4', 'letter'] as const).map((paper) => [`${name} on ${paper}`, { ...sheet, paper }] as const),
);

describe.each(cases)('the %s', async (_, sheet) => {
  const { bytes, pages } = await renderSheet(sheet, fonts);

  it('is a sound file that an independent checker finds nothing wrong with', () => {
    expect(checkSoundness(bytes)).toContain('No syntax or stream encoding errors found');
    expect(bytes.subarray(0, 8).toString()).toBe('%PDF-1.7');
  });

  it('has the size of its paper on every page, and says the number of pages', () => {
    const placed = placedWords(bytes);
    const [width, height] = paperSizes[sheet.paper];
    expect(placed.pages).toHaveLength(pages);
    for (const page of placed.pages) {
      expect(page.width).toBeCloseTo(width, 1);
      expect(page.height).toBeCloseTo(height, 1);
    }
  });

  it('has no word outside the margins', () => {
    const { pages: sizes, words } = placedWords(bytes);
    expect(words.length).toBeGreaterThan(50);
    const side = (16 / 25.4) * 72 - 0.5;
    const outside = words.filter((word) => {
      const size = sizes[word.page - 1];
      if (size === undefined) return true;
      return word.left < side || word.right > size.width - side || word.top < 28 || word.bottom > size.height - 26;
    });
    expect(outside).toEqual([]);
  });

  it('carries head, foot, sample notice and page number on every page', () => {
    for (const [index, text] of pageTexts(bytes).entries()) {
      expect(text).toContain('Fernhollow Motor Yard');
      expect(text).toContain('F-1042 · 2019 Merrowick Hearth 2.0 Estate');
      expect(text).toContain('Invented sample: this dealer, these people and this vehicle do not exist.');
      expect(text).toContain(`Page ${index + 1} of ${pages}`);
      expect(text).toContain(
        `Printed ${showInstant(examplePrinting.at, 'day-month')} by Mara Lindqvist · record state 23`,
      );
    }
  });

  it('uses its own typefaces only, embedded and with a way back to the letters', () => {
    const used = fontsOf(bytes);
    expect(used.length).toBeGreaterThan(1);
    for (const font of used) {
      expect(font.name).toMatch(/^[A-Z]{6}\+SourceSans3-/);
      expect(font).toMatchObject({ isEmbedded: true, hasUnicodeMap: true });
    }
  });

  it('is titled, tagged and says its language', () => {
    const facts = pdfFacts(bytes);
    expect(facts.get('Title')).toBe(`${sheet.title}: ${sheet.subject}`);
    expect(facts.get('Tagged')).toBe('yes');
    const objects = plainObjects(bytes);
    expect(objects).toContain('/Lang (en)');
    expect(objects).toContain('/DisplayDocTitle true');
    expect(objects).toContain('<pdfuaid:part>1</pdfuaid:part>');
    expect(objects.match(/\/Tabs \/S/g)).toHaveLength(pages);
  });

  it('has one first heading, and no heading level is skipped', () => {
    const levels = [...structureTree(bytes).matchAll(/^ *H(\d) /gm)].map(([, level]) => Number(level));
    expect(levels.filter((level) => level === 1)).toHaveLength(1);
    expect(levels[0]).toBe(1);
    for (const [index, level] of levels.entries()) expect(level).toBeLessThanOrEqual((levels[index - 1] ?? 0) + 1);
  });

  it('has tables of regular rows under column heads', () => {
    const tables = structureTree(bytes)
      .split(/^ {2}(?=\S)/m)
      .filter((part) => part.startsWith('Table'));
    const wanted = sheet.blocks.filter((block) => block.kind === 'table' && block.rows.length > 0);
    expect(tables).toHaveLength(wanted.length);
    for (const table of tables) {
      const rows = table.split(/^ {4}TR$/m).slice(1);
      const heads = rows[0]?.match(/^ {6}TH/gm)?.length ?? 0;
      expect(rows[0]?.match(/\/Scope \/Column/g)).toHaveLength(heads);
      for (const row of rows.slice(1)) expect(row.match(/^ {6}TD/gm)).toHaveLength(heads);
    }
  });

  it('has a text instead of each barcode and strip', () => {
    const drawn = sheet.blocks.filter(({ kind }) => kind === 'barcode' || kind === 'hold-strip');
    const figures = plainObjects(bytes).match(/\/S \/Figure/g) ?? [];
    expect(figures).toHaveLength(drawn.length);
    const alternates = plainObjects(bytes).match(/\/Alt (\(|<)/g) ?? [];
    expect(alternates).toHaveLength(drawn.length);
    if (drawn.some(({ kind }) => kind === 'barcode')) expect(structureTree(bytes)).toContain('0LW4BRHC6KA010427');
  });

  it('marks everything on the page as content or as decoration', () => {
    const streams = plainObjects(bytes)
      .split(/^stream$/m)
      .slice(1);
    const contents = streams.map((part) => part.split(/^endstream$/m)[0] ?? '').filter((part) => /^BT$/m.test(part));
    expect(contents).toHaveLength(pages);
    for (const content of contents) {
      let depth = 0;
      const unmarked: string[] = [];
      for (const line of content.split('\n')) {
        if (/ (BDC|BMC)$/.test(line)) depth += 1;
        else if (line === 'EMC') depth -= 1;
        else if (depth === 0 && /(^|\s)(S|s|f|f\*|F|B|b|Tj|TJ|Do)$/.test(line)) unmarked.push(line);
      }
      expect(unmarked).toEqual([]);
      expect(depth).toBe(0);
    }
  });
});

describe('a printed sheet', () => {
  it('reads back with accents and Greek letters', async () => {
    const { bytes } = await renderSheet(sheets['readiness sheet, ready'] as Sheet, fonts);
    expect(flatText(bytes)).toContain('Tomáš Dvořáček');
    expect(flatText(bytes)).toContain('Ελένη Παπαδάκη');
  });

  it('says ready in words and not ready in words', async () => {
    const ready = await renderSheet(sheets['readiness sheet, ready'] as Sheet, fonts);
    const notReady = await renderSheet(sheets['readiness sheet, not ready'] as Sheet, fonts);
    expect(pageTexts(ready.bytes)[0]).toContain('Ready for sale');
    expect(pageTexts(notReady.bytes)[0]).toContain('Not ready');
    expect(flatText(notReady.bytes)).toContain('Codes missing: radio code (expected 23 Mar 2026).');
  });

  it('is the same file to the byte each time', async () => {
    const sheet = sheets['job sheet'] as Sheet;
    const first = await renderSheet(sheet, fonts);
    const second = await renderSheet(sheet, fonts);
    expect(second.bytes.equals(first.bytes)).toBe(true);
  });
});
