// Finds vehicles by what a person types: every word must be found in one of the named fields. Pure.
import type { LotRow } from '../../../app/contract/views.ts';

/** Lower case and without accents, so that a plain keyboard finds 'Šárka'. */
function plain(text: string): string {
  return text.normalize('NFD').replace(/\p{M}/gu, '').toLowerCase();
}

const textsByRow = new WeakMap<LotRow, string>();

/** Everything that is searched of one row, a line a field, so that a word never matches across two fields. */
function searchedText(row: LotRow): string {
  const known = textsByRow.get(row);
  if (known !== undefined) return known;
  const { stockNumber, vin, modelYear, make, model, colour, location, keyTag } = row.identity;
  const text = plain([stockNumber, vin, modelYear ?? '', make, model, colour, location, keyTag].join('\n'));
  textsByRow.set(row, text);
  return text;
}

export function searchWords(text: string): readonly string[] {
  return plain(text)
    .split(/\s+/)
    .filter((word) => word !== '');
}

/** True when every word is found. No words: always true. */
export function matchesWords(row: LotRow, words: readonly string[]): boolean {
  return words.every((word) => searchedText(row).includes(word));
}
