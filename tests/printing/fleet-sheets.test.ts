// The fleet list printed and read back: across the page, heads and axis on every page, a strip with words for each vehicle, many vehicles.
import { describe, expect, it } from 'vitest';
import { fleetListSheet } from '../../app/domain/sheets/fleet-list-sheet.ts';
import { loadFonts } from '../../app/printing/load-fonts.ts';
import { renderSheet } from '../../app/printing/render-sheet.ts';
import { lotRow } from '../../app/services/lot-rows.ts';
import { checkSoundness, pageTexts, pdfFacts, placedWords, plainObjects, structureTree } from '../helpers/read-pdf.ts';
import { examplePrinting, exampleShop, exampleToday, exampleVehicle, reckonExample } from '../helpers/sheet-example.ts';

const fonts = await loadFonts(new URL('../../app/printing/fonts', import.meta.url).pathname);
const one = lotRow(exampleVehicle, reckonExample(exampleVehicle), { likelyOn: '2026-03-25', safeOn: '2026-04-02' });
const rowsOf = (count: number) =>
  Array.from({ length: count }, (_, index) => ({
    ...one,
    id: `vehicle-${index}`,
    identity: { ...one.identity, stockNumber: `N-${index + 1000}` },
  }));
const print = (count: number, paper: 'a4' | 'letter' = 'a4') => {
  const shop = { ...exampleShop, dealer: { ...exampleShop.dealer, paper } };
  return renderSheet(fleetListSheet(rowsOf(count), shop, exampleToday, examplePrinting), fonts);
};

describe('the fleet list on paper', () => {
  it.each(['a4', 'letter'] as const)('lies across on %s and nothing runs off the page', async (paper) => {
    const { bytes } = await print(60, paper);
    checkSoundness(bytes);
    const { pages, words } = placedWords(bytes);
    for (const { width, height } of pages) expect(width).toBeGreaterThan(height);
    const side = (16 / 25.4) * 72 - 0.5;
    const off = words.filter(({ page, left, right }) => left < side || right > (pages[page - 1]?.width ?? 0) - side);
    expect(off).toEqual([]);
  });

  it('repeats its head and its axis on every page and counts the pages', async () => {
    const { bytes, pages } = await print(60);
    const texts = pageTexts(bytes);
    expect(pages).toBeGreaterThan(2);
    for (const [index, text] of texts.entries()) {
      expect(text).toContain('Stands at');
      expect(text).toMatch(/\bMar\b.*\n?/);
      expect(text).toContain(`Page ${index + 1} of ${pages}`);
    }
  });

  it('has a figure with words for every strip, inside its row', async () => {
    const { bytes } = await print(12);
    expect(pdfFacts(bytes).get('Tagged')).toBe('yes');
    expect(structureTree(bytes).match(/Figure/g)).toHaveLength(12);
    expect(plainObjects(bytes)).toContain('/S /Figure');
  });

  it('draws the strips as lines and fields, with no picture in the file', async () => {
    const { bytes } = await print(12);
    expect(plainObjects(bytes)).not.toContain('/Subtype /Image');
  });

  it('holds two thousand vehicles', async () => {
    const { bytes } = await print(2000);
    const text = pageTexts(bytes).join('\n');
    for (const number of ['N-1000', 'N-1999', 'N-2999']) expect(text).toContain(number);
    expect(bytes.length).toBeLessThan(20_000_000);
  }, 60_000);
});
