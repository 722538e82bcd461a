// The verdict for sales with its reasons, what a buyer is told, and what must never stand on the sheet.
import { describe, expect, it } from 'vitest';
import { readinessSheet } from '../../../app/domain/sheets/readiness-sheet.ts';
import { type Sheet, type SheetBlock, sheetSchema } from '../../../app/domain/sheets/sheet.ts';
import type { Vehicle } from '../../../app/domain/vehicle/vehicle.ts';
import {
  exampleAmounts,
  examplePrinting,
  exampleShop,
  exampleToday,
  exampleVehicle,
  readyToday,
  readyVehicle,
  reckonExample,
} from '../../helpers/sheet-example.ts';
import { amountsIn, sheetText } from '../../helpers/sheet-text.ts';
import { makeLabour, makeSignOff, makeVehicle } from '../../helpers/vehicle-maker.ts';

function sheetOf(vehicle: Vehicle, today = exampleToday): Sheet {
  return readinessSheet(vehicle, reckonExample(vehicle, today), exampleShop, examplePrinting);
}

function blocksOf<Kind extends SheetBlock['kind']>(sheet: Sheet, kind: Kind) {
  return sheet.blocks.filter((block): block is Extract<SheetBlock, { kind: Kind }> => block.kind === kind);
}

function tableRows(sheet: Sheet, caption: string): readonly (readonly string[])[] {
  const table = blocksOf(sheet, 'table').find((block) => block.caption.startsWith(caption));
  return table?.rows.map((row) => row.map((cell) => cell.text)) ?? [];
}

const notReady = sheetOf(exampleVehicle);
const ready = sheetOf(readyVehicle, readyToday);

describe('the readiness sheet', () => {
  it('is a sheet by its schema, ready or not', () => {
    expect(sheetSchema.safeParse(notReady).error?.issues).toBeUndefined();
    expect(sheetSchema.safeParse(ready).error?.issues).toBeUndefined();
  });

  it.each([
    ['not ready', notReady],
    ['ready', ready],
  ])('carries no money, no supplier and no word of where a code is kept (%s)', (_, sheet) => {
    const text = sheetText(sheet);
    expect(amountsIn(text, exampleAmounts)).toEqual([]);
    expect(text).not.toMatch(/Northbank|Clearpane|Harrow Cross|code desk|envelope|safe, |USD|[$€£]/);
  });

  it('says ready, and since when, once every gate is met', () => {
    expect(blocksOf(ready, 'verdict')).toEqual([
      {
        kind: 'verdict',
        isGood: true,
        text: 'Ready for sale',
        reasons: ['Everything is done, proven and signed since 25 Mar 2026.'],
      },
    ]);
  });

  it('says not ready with a sentence for each gate that holds', () => {
    const [verdict] = blocksOf(notReady, 'verdict');
    expect(verdict?.isGood).toBe(false);
    expect(verdict?.text).toBe('Not ready');
    const holding = reckonExample(exampleVehicle).readiness.gates.filter((gate) =>
      ['open', 'stale'].includes(gate.state),
    );
    expect(verdict?.reasons).toHaveLength(holding.length);
    expect(verdict?.reasons.slice(0, 4)).toEqual([
      'Not decided yet what to do about: Blower whistles on stage 4.',
      'Parts missing or not fitted: Body control module (here); Rear lamp, left (expected 20 Mar 2026).',
      'Codes missing: radio code (expected 23 Mar 2026).',
      'Programming not finished: Body control module.',
    ]);
    for (const reason of verdict?.reasons ?? []) expect(reason).toMatch(/^[A-Z].*\.$/s);
  });

  it('goes back to not ready when later work makes a signature stale, and says which', () => {
    const touched: Vehicle = {
      ...readyVehicle,
      labour: [...readyVehicle.labour, makeLabour('2026-03-26', { area: 'brakes', what: 'Brake pads replaced' })],
    };
    const sheet = sheetOf(touched, '2026-03-27');
    expect(blocksOf(sheet, 'verdict')[0]?.isGood).toBe(false);
    const row = tableRows(sheet, 'Checks').find(([title]) => title?.startsWith('Road test'));
    expect(row).toEqual([
      'Road test: brakes, steering, no lamp lit, no noise',
      'Tomáš Dvořáček',
      '24 Mar 2026',
      'out of date: Brake pads replaced on 26 Mar 2026 came after the signature of 24 Mar 2026',
    ]);
  });

  it('names who signed each check and when', () => {
    expect(tableRows(ready, 'Checks').map((row) => row.slice(1))).toEqual([
      ['Tomáš Dvořáček', '24 Mar 2026', 'passed'],
      ['Tomáš Dvořáček', '24 Mar 2026', 'passed'],
      ['Mara Lindqvist', '24 Mar 2026', 'passed · none open'],
      ['Ελένη Παπαδάκη', '25 Mar 2026', 'passed'],
      ['Ελένη Παπαδάκη', '25 Mar 2026', 'passed'],
    ]);
    expect(tableRows(notReady, 'Checks').every((row) => row[3] === 'not signed')).toBe(true);
  });

  it('shows a failed check as failed', () => {
    const failed = {
      ...readyVehicle,
      signOffs: [
        ...readyVehicle.signOffs,
        makeSignOff('2026-03-26', 'road-test', { signedBy: 'tomas', result: 'failed', note: 'pulls left' }),
      ],
    };
    const row = tableRows(sheetOf(failed, readyToday), 'Checks').find(([title]) => title?.startsWith('Road test'));
    expect(row?.[3]).toBe('failed · pulls left');
  });

  it('says of each fault what was done, or why it is left', () => {
    expect(tableRows(ready, 'Faults').map((row) => row[3])).toEqual([
      'Replaced on 23 Mar 2026.',
      'Repaired on 20 Mar 2026.',
      'Replaced on 21 Mar 2026.',
      'Left as it is: polished; painting it would cost more than it is worth.',
      'Left as it is: normal for this model.',
    ]);
  });

  it('tells the buyer what is marked for it and what is left, not every repair', () => {
    const [told] = blocksOf(ready, 'bullets');
    expect(told?.items).toEqual([
      'Body control module does not answer; no locks, no wipers. Replaced on 23 Mar 2026.',
      'Scratch on the tailgate, 20 cm. Left as it is: polished; painting it would cost more than it is worth.',
      'Blower whistles on stage 4. Left as it is: normal for this model.',
    ]);
    expect(sheetText(ready)).toContain(exampleShop.dealer.buyerNotice);
  });

  it('tells the buyer of every fault that is still open', () => {
    expect(blocksOf(notReady, 'bullets')[0]?.items).toHaveLength(exampleVehicle.faults.length);
  });

  it('sets the scan on arrival beside the one after the repair', () => {
    expect(tableRows(ready, 'Scan')).toEqual([
      [
        'On arrival',
        '4 Mar 2026 · shop reader',
        '4 of 5 modules',
        '4: Engine: U0140, P0562 (history); Instrument cluster: U0140; Airbag: B0001',
        'Body control module',
      ],
      ['After repair', '24 Mar 2026 · shop reader', '5 of 5 modules', 'none', 'none'],
    ]);
    expect(tableRows(notReady, 'Scan')[1]?.[1]).toBe('not taken');
  });

  it('shows keys and paper', () => {
    const facts = new Map(blocksOf(ready, 'facts').flatMap(({ rows }) => rows.map((row) => [row.label, row.value])));
    expect(facts.get('Keys')).toBe('2');
    expect(facts.get('Title')).toBe('here since 9 Mar 2026');
  });

  it('says when a paper is expected that is not here', () => {
    const waiting = makeVehicle('2026-03-02', { purchase: { paperReceivedOn: null, paperExpectedOn: '2026-04-01' } });
    const text = sheetText(sheetOf(waiting));
    expect(text).toContain('not here, expected 1 Apr 2026');
    expect(text).toContain('Title has not come, expected on 1 Apr 2026.');
  });

  it('calls a sold vehicle sold', () => {
    const sold = {
      ...readyVehicle,
      sale: { soldOn: '2026-03-26', priceCents: 1_391_100, buyer: 'A. Buyer', paidOffOn: null },
    };
    const sheet = sheetOf(sold, readyToday);
    expect(blocksOf(sheet, 'verdict')[0]?.text).toBe('Sold 26 Mar 2026');
    expect(amountsIn(sheetText(sheet), exampleAmounts)).toEqual([]);
  });

  it('defers to local law', () => {
    expect(sheetText(ready)).toContain('The law of the place decides');
    expect(ready.footer).toContain('no warranty');
  });
});
