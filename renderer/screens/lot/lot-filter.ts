// Which rows the lot shows: those found by the search and of the standings asked for. Pure.
import type { LotRow } from '../../../app/contract/views.ts';
import { causesInOrder, type Standing } from '../../../app/domain/time/cause.ts';
import { searchWords } from '../../../app/domain/vehicle/vehicle-search.ts';
import { matchesWords } from './lot-search.ts';

/** In the order of the legend: the causes along the way, sold last. */
export const standingsInOrder: readonly Standing[] = [...causesInOrder, 'sold'];

export type LotFilter = {
  readonly search: string;
  /** Empty: everything but what is sold. */
  readonly standings: ReadonlySet<Standing>;
};

export type Found = {
  readonly shown: readonly LotRow[];
  /** How many the search finds of each standing, whether shown or not. */
  readonly counts: Readonly<Partial<Record<Standing, number>>>;
};

export function filterRows(rows: readonly LotRow[], { search, standings }: LotFilter): Found {
  const words = searchWords(search);
  const counts: Partial<Record<Standing, number>> = {};
  const shown = rows.filter((row) => {
    if (!matchesWords(row, words)) return false;
    const { standing } = row.held.now;
    counts[standing] = (counts[standing] ?? 0) + 1;
    return standings.size === 0 ? standing !== 'sold' : standings.has(standing);
  });
  return { shown, counts };
}

export function withToggled(standings: ReadonlySet<Standing>, standing: Standing): ReadonlySet<Standing> {
  const next = new Set(standings);
  if (!next.delete(standing)) next.add(standing);
  return next;
}
