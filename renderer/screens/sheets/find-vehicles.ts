// Which vehicles the sheets screen offers: those that hold every word typed, not sold first. Pure.
import type { LotRow } from '../../../app/contract/views.ts';
import type { Standing } from '../../../app/domain/time/cause.ts';
import { holdsEveryWord, searchedText, searchWords } from '../../../app/domain/vehicle/vehicle-search.ts';

export const vehicleFilters = ['stock', 'ready', 'work', 'waiting', 'idle', 'sold', 'all'] as const;
export type VehicleFilter = (typeof vehicleFilters)[number];

const waitsOutside: readonly Standing[] = ['transit', 'part', 'code', 'sublet', 'paper'];

function passes(row: LotRow, filter: VehicleFilter): boolean {
  const { standing } = row.held.now;
  switch (filter) {
    case 'all':
      return true;
    case 'sold':
      return standing === 'sold';
    case 'stock':
      return standing !== 'sold';
    case 'ready':
      return standing === 'ready';
    case 'idle':
      return standing === 'idle';
    case 'work':
      return standing === 'work' || standing === 'programming';
    case 'waiting':
      return waitsOutside.includes(standing);
  }
}

const byNumber = new Intl.Collator('en', { numeric: true });

/** Vehicles in stock by stock number, then sold ones; all of them when nothing is typed. */
export function findVehicles(rows: readonly LotRow[], typed: string, filter: VehicleFilter = 'all'): readonly LotRow[] {
  const words = searchWords(typed);
  const found = rows.filter((row) => {
    if (!passes(row, filter)) return false;
    const { identity } = row;
    const { stockNumber, vin, modelYear, make, model, colour } = identity;
    return holdsEveryWord(searchedText([stockNumber, vin, modelYear, make, model, colour]), words);
  });
  const isSold = (row: LotRow) => row.held.now.standing === 'sold';
  return found.toSorted(
    (a, b) => Number(isSold(a)) - Number(isSold(b)) || byNumber.compare(a.identity.stockNumber, b.identity.stockNumber),
  );
}

/** The chosen with one more or one less. */
export function toggled(chosen: ReadonlySet<string>, id: string): ReadonlySet<string> {
  const after = new Set(chosen);
  if (!after.delete(id)) after.add(id);
  return after;
}
