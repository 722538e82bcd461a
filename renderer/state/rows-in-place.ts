// Keeps a list of rows up to date without reading it again. Pure.
import type { LotRow } from '../../app/contract/views.ts';

/** The rows with these in place of those of the same vehicles, or at the end. Pure. */
export function withRows(rows: readonly LotRow[], added: readonly LotRow[]): readonly LotRow[] {
  if (added.length === 0) return rows;
  const byId = new Map(added.map((row) => [row.id, row]));
  const there = rows.map((row) => {
    const other = byId.get(row.id);
    byId.delete(row.id);
    return other ?? row;
  });
  return [...there, ...byId.values()];
}

/** The rows with one of them replaced, added at the end, or taken out when `row` is null. Pure. */
export function withRow(rows: readonly LotRow[], id: string, row: LotRow | null): readonly LotRow[] {
  const index = rows.findIndex((candidate) => candidate.id === id);
  if (row === null) return index < 0 ? rows : rows.filter((candidate) => candidate.id !== id);
  return index < 0 ? [...rows, row] : rows.with(index, row);
}
