// The window sheet, the plan, the letter and the cost sheet with awkward content, printed and read back: one page, nothing lost, nothing
// outside, large enough, barcodes that an independent reader reads.
import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { codeLetter } from '../../app/domain/sheets/code-letter.ts';
import { costSheet } from '../../app/domain/sheets/cost-sheet.ts';
import { planSheet } from '../../app/domain/sheets/plan-sheet.ts';
import type { Sheet } from '../../app/domain/sheets/sheet.ts';
import { windowSheet } from '../../app/domain/sheets/window-sheet.ts';
import type { Vehicle } from '../../app/domain/vehicle/vehicle.ts';
import { loadFonts } from '../../app/printing/load-fonts.ts';
import { renderSheet } from '../../app/printing/render-sheet.ts';
import { bodyExchange } from '../helpers/planned-job.ts';
import { checkSoundness, flatText, pageTexts, placedWords } from '../helpers/read-pdf.ts';
import {
  examplePrinting,
  exampleShop,
  exampleToday,
  exampleVehicle,
  readyToday,
  readyVehicle,
  reckonExample,
} from '../helpers/sheet-example.ts';
import { makeFault, makePart } from '../helpers/vehicle-maker.ts';

const fonts = await loadFonts(new URL('../../app/printing/fonts', import.meta.url).pathname);
const papers = ['a4', 'letter'] as const;

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

const print = (sheet: Sheet, paper: Sheet['paper']) => renderSheet({ ...sheet, paper }, fonts);
const windowOf = (vehicle: Vehicle) =>
  windowSheet(vehicle, reckonExample(vehicle, readyToday), exampleShop, examplePrinting);

const longNames = {
  ...readyVehicle,
  identity: {
    ...readyVehicle.identity,
    stockNumber: 'ΑΒΓ-2026/0004711-ЖЩ',
    make: 'Merrowick-Żółkiewski-Παπαδοπούλου',
    model: 'Щёлково Hearth Grand Tourer Estate Two-Litre Hybrid All-Wheel',
    colour: 'river blue with a very long name of its own',
  },
};

describe.each(papers)('the window sheet on %s', (paper) => {
  it.each([0, 1, 3, 8, 20, 60])('is one page with %i remarks, each in full or counted', async (count) => {
    const faults = Array.from({ length: count }, (_, index) =>
      makeFault('2026-03-04', { what: `Remark ${index + 1} about a scratch on a door`, tellBuyer: true }),
    );
    const { bytes, pages } = await print(windowOf({ ...readyVehicle, faults }), paper);
    expect(pages).toBe(1);
    expect(wordsOutside(bytes)).toEqual([]);
    const text = flatText(bytes);
    const shown = [...text.matchAll(/Remark (\d+) about/g)].length;
    const left = Number(/and (\d+) more on the readiness sheet/.exec(text)?.[1] ?? 0);
    expect(shown + left).toBe(count);
    expect(text).toContain('In full on the readiness sheet of F-1042');
  });

  it('is one page with very long names in three scripts, and loses nothing of them', async () => {
    const { bytes, pages } = await print(windowOf(longNames), paper);
    expect(pages).toBe(1);
    expect(wordsOutside(bytes)).toEqual([]);
    const letters = flatText(bytes).replace(/\s/g, '');
    expect(letters).toContain('2019Merrowick-Żółkiewski-ΠαπαδοπούλουЩёлковоHearthGrandTourerEstate');
    expect(letters).toContain('ΑΒΓ-2026/0004711-ЖЩ');
  });

  it('is large: number, verdict and price over 10 mm, remarks over 4 mm, measured on the page', async () => {
    const { bytes } = await print(windowOf(readyVehicle), paper);
    const { words } = placedWords(bytes);
    // The height of a word's field is that of the typeface, about one and a quarter of its size; capitals are two thirds of the size.
    const capitalsOf = (word: string) => {
      const found = words.filter(({ text }) => text === word).map(({ top, bottom }) => bottom - top);
      return ((Math.max(...found) / 1.257) * 0.66 * 25.4) / 72;
    };
    expect(capitalsOf('F-1042')).toBeGreaterThan(15);
    expect(capitalsOf('Ready')).toBeGreaterThan(10);
    expect(capitalsOf('14,273')).toBeGreaterThan(15);
    expect(capitalsOf('Scratch')).toBeGreaterThan(4);
  });
});

describe('sheets printed one after the other', () => {
  it('can be read back letter by letter, whatever script the one before was in', async () => {
    const greek = { ...readyVehicle, identity: { ...readyVehicle.identity, stockNumber: 'ΑΒΕΖΗΙΚΜΝΟΡΤΥΧ' } };
    await print(windowOf(greek), 'a4');
    const latin = 'ABEZHIKMNOPTYX';
    const { bytes } = await print(windowOf({ ...greek, identity: { ...greek.identity, stockNumber: latin } }), 'a4');
    expect(flatText(bytes)).toContain(latin);
  });
});

describe.each(papers)('long sheets of one vehicle on %s', (paper) => {
  it('a cost sheet with two hundred lines breaks across pages under repeated heads and loses none', async () => {
    const parts = Array.from({ length: 200 }, (_, index) =>
      makePart('2026-03-05', {
        what: `Clip number ${index + 1}`,
        supplier: 'Ελένη & Щёлково Parts',
        orderedOn: '2026-03-06',
        receivedOn: '2026-03-09',
      }),
    );
    const vehicle = { ...longNames, parts };
    const sheet = costSheet(vehicle, reckonExample(vehicle), exampleShop, examplePrinting);
    const { bytes, pages } = await print(sheet, paper);
    expect(pages).toBeGreaterThan(5);
    const texts = pageTexts(bytes);
    const withParts = texts.filter((text) => /Clip number \d+/.test(text));
    for (const text of withParts) expect(text.search(/Group +Day +What/)).toBeLessThan(text.search(/Clip number/));
    const text = flatText(bytes);
    for (const index of parts.keys()) expect(text).toMatch(new RegExp(`Clip number ${index + 1}\\b`));
    expect(wordsOutside(bytes)).toEqual([]);
    expect(checkSoundness(bytes)).toContain('No syntax or stream encoding errors found');
  });

  it('a plan of several modules keeps each step whole on one page', async () => {
    const { vehicle, job } = bodyExchange('2026-03-06');
    const sheet = planSheet({ ...vehicle, identity: longNames.identity }, exampleShop, examplePrinting);
    const { bytes, pages } = await print(sheet, paper);
    expect(pages).toBeGreaterThan(2);
    expect(wordsOutside(bytes)).toEqual([]);
    const text = flatText(bytes);
    for (const { title } of job.plan.steps) expect(text).toContain(title);
    expect(text).toContain('Remarks on Body');
  });
});

describe.each(papers)('the code letter on %s', (paper) => {
  const sheet = codeLetter(exampleVehicle, exampleShop, examplePrinting, {
    today: exampleToday,
    requestId: 'code-radio',
  });

  it('is one page, and its VIN is read back from the bars by an independent reader at 150 dpi', async () => {
    const { bytes, pages } = await print(sheet, paper);
    expect(pages).toBe(1);
    const folder = mkdtempSync(join(tmpdir(), 'lotwright-letter-'));
    try {
      writeFileSync(join(folder, 'letter.pdf'), bytes);
      execFileSync('pdftoppm', ['-r', '150', '-png', '-singlefile', join(folder, 'letter.pdf'), join(folder, 'page')]);
      const read = execFileSync(
        'zbarimg',
        ['--quiet', '--raw', '-Sdisable', '-Scode39.enable', join(folder, 'page.png')],
        {
          encoding: 'utf8',
          stdio: ['ignore', 'pipe', 'ignore'],
        },
      );
      expect(read.trim()).toBe('0LW4BRHC6KA010427');
    } finally {
      rmSync(folder, { recursive: true, force: true });
    }
  });

  it('holds very long words of its provider and dealer within the margins', async () => {
    const long = 'Wörterbuchschlüsseldienstgesellschaft'.repeat(2);
    const codeRequests = exampleVehicle.codeRequests.map((one) => ({ ...one, askedOf: long }));
    const shop = { ...exampleShop, dealer: { ...exampleShop.dealer, name: long, address: `${long}\n${long}` } };
    const vehicle = { ...exampleVehicle, codeRequests, identity: longNames.identity };
    const { bytes } = await print(
      codeLetter(vehicle, shop, examplePrinting, { today: exampleToday, requestId: 'code-radio' }),
      paper,
    );
    expect(wordsOutside(bytes)).toEqual([]);
    expect(flatText(bytes).replace(/\s/g, '')).toContain(long);
  });
});
