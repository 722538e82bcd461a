// The orders the lot can be read in. Pure; the words for them are in text/lot.ts.
import type { LotRow } from '../../../app/contract/views.ts';
import { type Day, daysBetween } from '../../../app/domain/shared/day.ts';
import { vehicleTitle } from '../../../app/domain/vehicle/identity.ts';

export type LotColumn = 'stock' | 'vehicle' | 'standing' | 'held' | 'spent' | 'left' | 'expected' | 'move';
export type LotSort = { readonly column: LotColumn; readonly isDescending: boolean };

/**
 * What a manager looks for first: the vehicles that have stood longest where they stand now. Those that wait for nothing any more come
 * after them, ready before sold.
 */
export const firstSort: LotSort = { column: 'standing', isDescending: true };

/** The direction a column starts in: the largest number first, names from A. */
export function startsDescending(column: LotColumn): boolean {
  return column === 'standing' || column === 'held' || column === 'spent';
}

/** Whole days since the vehicle came to what it stands at today. */
export function daysStanding(row: LotRow, today: Day): number {
  return Math.max(0, daysBetween(row.held.now.since, today));
}

function rank({ held }: LotRow): number {
  return held.now.standing === 'sold' ? 2 : held.now.standing === 'ready' ? 1 : 0;
}

const byText = new Intl.Collator('en', { numeric: true, sensitivity: 'base' }).compare;

type Key = number | string | null;

function keyOf(row: LotRow, column: LotColumn, today: Day): Key {
  switch (column) {
    case 'stock':
      return row.identity.stockNumber;
    case 'vehicle':
      return vehicleTitle(row.identity);
    case 'standing':
      return daysStanding(row, today);
    case 'held':
      return row.held.heldDays;
    case 'spent':
      return row.money?.spentCents ?? null;
    case 'left':
      return row.money?.marginLeftCents ?? null;
    case 'expected':
      return row.money?.marginExpectedCents ?? null;
    case 'move':
      return row.nextMove === null ? null : `${row.nextMove.who} ${row.nextMove.what}`;
  }
}

function compareKeys(a: Exclude<Key, null>, b: Exclude<Key, null>): number {
  return typeof a === 'number' && typeof b === 'number' ? a - b : byText(String(a), String(b));
}

/** A new list in this order. Rows without a value come last in either direction; ties go to the longest held, then by stock number. */
export function sortRows(rows: readonly LotRow[], { column, isDescending }: LotSort, today: Day): readonly LotRow[] {
  const sign = isDescending ? -1 : 1;
  return [...rows].sort((a, b) => {
    if (column === 'standing' && rank(a) !== rank(b)) return rank(a) - rank(b);
    const [keyA, keyB] = [keyOf(a, column, today), keyOf(b, column, today)];
    if (keyA === null || keyB === null) {
      if (keyA !== keyB) return keyA === null ? 1 : -1;
    } else {
      const order = compareKeys(keyA, keyB);
      // Nobody looks for the vehicle sold longest ago: among the sold the latest leads.
      const isAmongSold = column === 'standing' && rank(a) === 2;
      if (order !== 0) return isAmongSold ? -sign * order : sign * order;
    }
    return b.held.heldDays - a.held.heldDays || byText(a.identity.stockNumber, b.identity.stockNumber);
  });
}
