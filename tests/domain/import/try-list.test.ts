// A purchase list tried out: what is good, and what stands against the rest.
import { describe, expect, it } from 'vitest';
import { type ListReading, type ListSetting, tryList } from '../../../app/domain/import/try-list.ts';

const names = ['Stock', 'VIN', 'Date', 'Price'];
const reading: ListReading = {
  match: ['stockNumber', 'vin', 'boughtOn', 'price'],
  decimalForms: ['point', 'point', 'point', 'point'],
  dayForms: ['year-first', 'year-first', 'year-first', 'year-first'],
  odometerUnit: 'mi',
  boughtOn: null,
  vinReason: '',
  numbersStock: true,
};
const setting: ListSetting = {
  today: '2026-03-18',
  market: 'US',
  fleet: [
    { stockNumber: 'LW-1001', vin: '1M8GDM9A1KP000008', isSold: false },
    { stockNumber: 'LW-0900', vin: '1M8GDM9AXKP000010', isSold: true },
  ],
  paperKind: 'Title',
};
const vin = '1M8GDM9A3KP000009';
const problemsOf = (rows: string[][], changes: Partial<ListReading> = {}) =>
  tryList(rows, names, { ...reading, ...changes }, setting).map(({ problems }) => problems.join(' '));

describe('a row', () => {
  it('with all it needs is good', () => {
    const [row] = tryList([['A1', '1m8gdm9a3 kp000009', '2026-03-01', '6,400']], names, reading, setting);
    expect(row?.problems).toEqual([]);
    expect(row?.takeIn).toMatchObject({
      identity: { stockNumber: 'A1', vin, modelYear: 1989 },
      purchase: { boughtOn: '2026-03-01', priceCents: 640_000, feesCents: 0 },
    });
  });

  it.each([
    [['A1', vin, '2026-03-01', ''], 'price is missing'],
    [['A1', vin, '', '100'], 'day of purchase is missing'],
    [['A1', vin, '2026-03-19', '100'], 'in the future'],
    [['A1', vin, '01.03.2026', '100'], 'no day as that column is read'],
    [['A1', vin, '2026-03-01', 'on call'], '“on call” in the column Price is no amount'],
    [['A1', vin, '2026-03-01', '-5'], 'below zero'],
    [['A1', '1M8GDM9A4KP000009', '2026-03-01', '100'], 'Place 9 should be'],
    [['A1', '', '2026-03-01', '100'], 'VIN'],
    [['A1', '1M8GDM9A3', '2026-03-01', '100'], '17 characters'],
    [['lw-1001', vin, '2026-03-01', '100'], 'belongs to another vehicle'],
    [['A1', '1M8GDM9A1KP000008', '2026-03-01', '100'], 'in the lot already, as stock number LW-1001'],
    [['A-number-that-is-far-too-long', vin, '2026-03-01', '100'], 'Stock number: '],
  ])('%j is not taken in: %s', (cells, sentence) => {
    const [row] = tryList([cells], names, reading, setting);
    expect(row?.problems.join(' ')).toContain(sentence);
    expect(row?.takeIn).toBeNull();
  });

  it('is good once a reason is given for its VIN', () => {
    const rows = [['A1', '1M8GDM9A4KP000009', '2026-03-01', '100']];
    expect(tryList(rows, names, reading, setting)[0]?.needsReason).toBe(true);
    const [row] = tryList(rows, names, { ...reading, vinReason: 'Read off the plate twice' }, setting);
    expect(row).toMatchObject({ problems: [], needsReason: false });
    expect(row?.takeIn?.identity.vinReason).toBe('Read off the plate twice');
  });

  it('with a good VIN keeps no reason', () => {
    const [row] = tryList([['A1', vin, '2026-03-01', '1']], names, { ...reading, vinReason: 'Plate' }, setting);
    expect(row?.takeIn?.identity.vinReason).toBe('');
  });

  it('may carry the VIN of a vehicle that was sold before', () => {
    expect(problemsOf([['A1', '1M8GDM9AXKP000010', '2026-03-01', '100']])).toEqual(['']);
  });
});

describe('rows of one list', () => {
  it('may not share a VIN or a stock number: the later one says which row was first', () => {
    const [first, sameVin, sameStock] = problemsOf([
      ['A1', vin, '2026-03-01', '100'],
      ['A2', vin, '2026-03-01', '100'],
      ['a1', '1M8GDM9AXKP000010', '2026-03-01', '100'],
    ]);
    expect(first).toBe('');
    expect(sameVin).toContain('stands in row 1 already');
    expect(sameStock).toContain('Stock number a1 stands in row 1 already');
  });

  it('without a stock number are numbered on from the fleet', () => {
    const rows = tryList(
      [
        ['', vin, '2026-03-01', '100'],
        ['', '1M8GDM9AXKP000010', '2026-03-01', '100'],
      ],
      names,
      reading,
      setting,
    );
    expect(rows.map(({ stockNumber }) => stockNumber)).toEqual(['LW-1002', 'LW-1003']);
  });

  it('share one day where none has its own', () => {
    expect(problemsOf([['A1', vin, '', '100']], { boughtOn: '2026-03-02' })).toEqual(['']);
  });
});
