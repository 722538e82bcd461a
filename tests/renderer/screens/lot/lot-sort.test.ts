// The orders of the lot.
import { describe, expect, it } from 'vitest';
import { firstSort, type LotColumn, sortRows } from '../../../../renderer/screens/lot/lot-sort.ts';
import { makeRow, today } from './make-row.ts';

const numbers = (rows: ReturnType<typeof sortRows>) => rows.map((row) => row.identity.stockNumber);

describe('sorting the lot', () => {
  it('begins with the vehicle that has stood longest where it stands now; ready and sold come last', () => {
    const rows = [
      makeRow({ stockNumber: 'sold long ago', standing: 'sold', standingDays: 90 }),
      makeRow({ stockNumber: 'sold now', standing: 'sold', standingDays: 1 }),
      makeRow({ stockNumber: 'ready', standing: 'ready', standingDays: 60 }),
      makeRow({ stockNumber: 'part', standing: 'part', standingDays: 5 }),
      makeRow({ stockNumber: 'idle', standing: 'idle', standingDays: 30 }),
    ];
    expect(numbers(sortRows(rows, firstSort, today))).toEqual(['idle', 'part', 'ready', 'sold now', 'sold long ago']);
  });

  it('settles ties by the longest held, then by stock number as people count', () => {
    const rows = [
      makeRow({ stockNumber: 'L10', heldDays: 20 }),
      makeRow({ stockNumber: 'L9', heldDays: 20 }),
      makeRow({ stockNumber: 'L1', heldDays: 40 }),
    ];
    expect(numbers(sortRows(rows, firstSort, today))).toEqual(['L1', 'L9', 'L10']);
  });

  it.each<[LotColumn, boolean, string[]]>([
    ['stock', false, ['L2', 'L10', 'L30']],
    ['stock', true, ['L30', 'L10', 'L2']],
    ['vehicle', false, ['L10', 'L30', 'L2']],
    ['held', true, ['L30', 'L2', 'L10']],
    ['spent', false, ['L2', 'L10', 'L30']],
  ])('sorts by %s, descending %s', (column, isDescending, expected) => {
    const rows = [
      makeRow({ stockNumber: 'L30', make: 'Marram', heldDays: 90, spentCents: 900 }),
      makeRow({ stockNumber: 'L2', make: 'Sandrell', heldDays: 50, spentCents: 100 }),
      makeRow({ stockNumber: 'L10', make: 'Aldergate', heldDays: 10, spentCents: 500 }),
    ];
    expect(numbers(sortRows(rows, { column, isDescending }, today))).toEqual(expected);
  });

  it.each([true, false])('puts a margin that is not known last, descending %s', (isDescending) => {
    const rows = [
      makeRow({ stockNumber: 'unknown', marginLeftCents: null }),
      makeRow({ stockNumber: 'known', marginLeftCents: -5 }),
    ];
    expect(numbers(sortRows(rows, { column: 'left', isDescending }, today))).toEqual(['known', 'unknown']);
  });

  it('leaves the list it was given as it was', () => {
    const rows = [makeRow({ stockNumber: 'B' }), makeRow({ stockNumber: 'A' })];
    sortRows(rows, { column: 'stock', isDescending: false }, today);
    expect(numbers(rows)).toEqual(['B', 'A']);
  });
});
