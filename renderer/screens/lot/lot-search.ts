// Which fields of a row the search of the lot looks in. The matching itself is in domain/vehicle/vehicle-search.ts.
import type { LotRow } from '../../../app/contract/views.ts';
import { holdsEveryWord, searchedText } from '../../../app/domain/vehicle/vehicle-search.ts';

const textsByRow = new WeakMap<LotRow, string>();

function textOf(row: LotRow): string {
  const known = textsByRow.get(row);
  if (known !== undefined) return known;
  const { stockNumber, vin, modelYear, make, model, colour, location, keyTag } = row.identity;
  const text = searchedText([stockNumber, vin, modelYear, make, model, colour, location, keyTag]);
  textsByRow.set(row, text);
  return text;
}

/** True when every word is found. No words: always true. */
export function matchesWords(row: LotRow, words: readonly string[]): boolean {
  return holdsEveryWord(textOf(row), words);
}
