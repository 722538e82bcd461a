// Sheets of many vehicles: parts and cores by supplier, the list with its strips, and the state of a fleet as one number.
import { describe, expect, it } from 'vitest';
import { fleetState } from '../../../app/domain/sheets/fleet-frame.ts';
import { type FleetListRow, fleetListSheet } from '../../../app/domain/sheets/fleet-list-sheet.ts';
import { partsBySupplier, partsListSheet } from '../../../app/domain/sheets/parts-list-sheet.ts';
import { sheetSchema } from '../../../app/domain/sheets/sheet.ts';
import { stripAxis } from '../../../app/domain/sheets/strip-of-days.ts';
import { lotRow } from '../../../app/services/lot-rows.ts';
import {
  examplePrinting,
  exampleShop,
  exampleToday,
  exampleVehicle,
  reckonExample,
} from '../../helpers/sheet-example.ts';
import { sheetText } from '../../helpers/sheet-text.ts';
import { makePart, makeVehicle } from '../../helpers/vehicle-maker.ts';

const today = '2026-03-18';
const late = makePart('2026-03-01', {
  what: 'Gateway',
  supplier: 'Northbank  Parts',
  orderedOn: '2026-03-02',
  expectedOn: '2026-03-10',
  priceCents: 12_345,
});
const soon = makePart('2026-03-01', {
  what: 'Lamp',
  supplier: 'northbank parts',
  orderedOn: '2026-03-02',
  expectedOn: '2026-03-20',
});
const withCore = makePart('2026-03-01', {
  what: 'Starter',
  supplier: 'Applegate Units',
  orderedOn: '2026-03-02',
  receivedOn: '2026-03-04',
  coreChargeCents: 7_700,
  quantity: 2,
});
const coreBack = { ...withCore, what: 'Pump', coreReturnedOn: '2026-03-09' };
const sentBack = { ...withCore, what: 'Relay', returnedOn: '2026-03-09' };
const toOrder = makePart('2026-03-01', { what: 'Switch', supplier: '' });
const vehicle = makeVehicle('2026-02-20', { parts: [soon, late, withCore, coreBack, sentBack, toOrder] });

describe('parts by supplier', () => {
  const suppliers = partsBySupplier([vehicle], today);

  it('takes names that differ in capitals and spaces for one, and puts those with something overdue first, the nameless last', () => {
    expect(suppliers.map(({ name }) => name)).toEqual(['northbank parts', 'Applegate Units', '']);
  });

  it('puts what is the longest overdue first', () => {
    expect(suppliers[0]?.onOrder.map(({ part }) => part.what)).toEqual(['Gateway', 'Lamp']);
    expect(suppliers[0]?.overdue).toBe(1);
  });

  it('owes a core from the receipt until it went back, for each piece, and none for a part sent back', () => {
    expect(suppliers[1]?.coresOwed.map(({ part }) => part.what)).toEqual(['Starter']);
    expect(suppliers[1]?.coresCents).toBe(15_400);
  });

  it('keeps the cores of a sold vehicle and leaves out its open orders', () => {
    const sale = { ...(exampleVehicle.sale ?? { soldOn: today, priceCents: 1, buyer: '', paidOffOn: null }) };
    const [only, ...others] = partsBySupplier([{ ...vehicle, sale }], today);
    expect(others).toEqual([]);
    expect(only).toMatchObject({ name: 'Applegate Units', onOrder: [], coresCents: 15_400 });
  });

  it('prints amounts only for whoever may see them', () => {
    const sheet = (seesPrices: boolean) =>
      partsListSheet({ vehicles: [vehicle], seesPrices }, exampleShop, today, examplePrinting);
    expect(sheetText(sheet(true))).toContain('154.00');
    expect(sheetText(sheet(true))).toContain('123.45');
    expect(sheetText(sheet(false))).not.toMatch(/\d\.\d\d/);
    expect(sheetText(sheet(false))).toContain('10 Mar 2026, 8 days over');
    expect(sheetSchema.safeParse(sheet(true)).success).toBe(true);
  });

  it('says so when there is nothing to chase', () => {
    const sheet = partsListSheet({ vehicles: [], seesPrices: true }, exampleShop, today, examplePrinting);
    expect(sheetText(sheet)).toContain('Nothing is on order');
  });
});

const row: FleetListRow = lotRow(exampleVehicle, reckonExample(exampleVehicle), {
  likelyOn: '2026-03-25',
  safeOn: '2026-04-02',
});

describe('the fleet list', () => {
  const sheet = fleetListSheet([row], exampleShop, exampleToday, examplePrinting);
  const table = sheet.blocks.find((block) => block.kind === 'table');

  it('lies across and has a strip for each row with everything it shows in words', () => {
    expect(sheet.orientation).toBe('landscape');
    expect(table?.strips?.items).toHaveLength(1);
    expect(table?.strips?.items[0]?.alternateText).toContain(`Held ${row.held.heldDays} days since 2 Mar 2026`);
    expect(table?.strips?.items[0]?.alternateText).toContain('Ready by 25 Mar 2026 in half of the runs');
    expect(sheetSchema.safeParse(sheet).success).toBe(true);
  });

  it('explains every cause it shows and no other', () => {
    const legend = sheet.blocks.find((block) => block.kind === 'strip-legend');
    expect([...(legend?.causes ?? [])].sort()).toEqual(Object.keys(row.held.byCause).sort());
  });

  it('holds neither margin nor forecast where the rows hold none', () => {
    const blanked = fleetListSheet(
      [{ ...row, money: null, forecast: null }],
      exampleShop,
      exampleToday,
      examplePrinting,
    );
    const words = sheetText(blanked);
    expect(words).not.toContain('Margin');
    expect(words).not.toContain('80 of 100');
    expect(words).not.toMatch(/\d\.\d\d/);
  });

  it('has one axis for all strips, with their marks, not further back than 140 days and not further ahead than 60', () => {
    const strip = table?.strips?.items[0];
    if (!strip) throw new Error('There is no strip.');
    expect(stripAxis([{ ...strip, breakEvenOn: null }], today, 'day-month')).toEqual({
      from: '2026-02-18',
      to: '2026-04-02',
      today,
      dayForm: 'day-month',
    });
    const old = { ...strip, boughtOn: '2025-01-01', breakEvenOn: '2027-01-01' };
    expect(stripAxis([old], today, 'day-month')).toEqual({
      from: '2025-10-29',
      to: '2026-05-17',
      today,
      dayForm: 'day-month',
    });
  });
});

describe('the state of a fleet', () => {
  const records = [
    { id: 'vehicle-one', revision: 3 },
    { id: 'vehicle-two', revision: 1 },
  ];

  it('does not depend on the order in which the records were read', () => {
    expect(fleetState([...records].reverse())).toBe(fleetState(records));
  });

  it('is another one when a record is changed, added, taken out, or two exchange their revisions', () => {
    const others = [
      [{ id: 'vehicle-one', revision: 4 }, records[1] ?? records[0]],
      [...records, { id: 'vehicle-three', revision: 1 }],
      [records[0]],
      [
        { id: 'vehicle-one', revision: 1 },
        { id: 'vehicle-two', revision: 3 },
      ],
    ].map((all) => fleetState(all.flatMap((one) => one ?? [])));
    expect(new Set([fleetState(records), ...others]).size).toBe(5);
  });
});
