// A heading is never left alone at the foot of a page: hundreds of them, each followed by another kind of block at another height.
import { describe, expect, it } from 'vitest';
import { jobSheet } from '../../app/domain/sheets/job-sheet.ts';
import type { SheetBlock } from '../../app/domain/sheets/sheet.ts';
import { loadFonts } from '../../app/printing/load-fonts.ts';
import { renderSheet } from '../../app/printing/render-sheet.ts';
import { pageTexts } from '../helpers/read-pdf.ts';
import { examplePrinting, exampleShop, exampleVehicle, reckonExample } from '../helpers/sheet-example.ts';

const fonts = await loadFonts(new URL('../../app/printing/fonts', import.meta.url).pathname);
const frame = jobSheet(exampleVehicle, reckonExample(exampleVehicle), exampleShop, examplePrinting);

/** What stands under a heading, its first words being `first`. */
const followers: readonly ((first: string) => SheetBlock)[] = [
  (first) => ({
    kind: 'table',
    caption: 'a table',
    columns: [{ title: 'Column', share: 1, align: 'left' }],
    rows: [[{ text: first, emphasis: 'none' }]],
    whenEmpty: '',
    rowRoom: 'text',
  }),
  (first) => ({ kind: 'paragraph', text: first, emphasis: 'none' }),
  (first) => ({ kind: 'bullets', items: [first, 'another'] }),
  (first) => ({ kind: 'facts', rows: [{ label: first, value: 'value' }] }),
  (first) => ({ kind: 'caution', key: 'supply-voltage', title: first, text: 'Some words.', concerns: '' }),
  (first) => ({ kind: 'blank-lines', label: first, count: 2, fillsPage: false }),
];

describe('headings', () => {
  it.each(['a4', 'letter'] as const)('stay with what they head on every page of %s', async (paper) => {
    const count = 360;
    const blocks = Array.from({ length: count }, (_, index): SheetBlock[] => {
      const filler = Array.from({ length: (index * 7) % 11 }, () => 'filler');
      const follower = followers[index % followers.length];
      if (!follower) throw new Error('No follower.');
      return [
        ...(filler.length > 0 ? [{ kind: 'bullets', items: filler } as const] : []),
        { kind: 'heading', level: index % 3 === 0 ? 3 : 2, text: `Head${index}x` },
        follower(`First${index}x`),
      ];
    }).flat();
    const { bytes } = await renderSheet({ ...frame, paper, blocks }, fonts);
    const texts = pageTexts(bytes);
    const pageOf = (word: string) => texts.findIndex((text) => text.includes(word));
    const parted = Array.from({ length: count }, (_, index) => index).filter(
      (index) => pageOf(`Head${index}x`) !== pageOf(`First${index}x`),
    );
    expect(texts.length).toBeGreaterThan(30);
    expect(pageOf('Head0x')).toBe(0);
    expect(parted).toEqual([]);
  });
});
