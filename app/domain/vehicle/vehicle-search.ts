// Finding by what a person types: every word must be found in one of the fields. Pure; which fields is the caller's business.

/** Lower case and without accents, so that a plain keyboard finds 'Šárka'. */
function plain(text: string): string {
  return text.normalize('NFD').replace(/\p{M}/gu, '').toLowerCase();
}

/** What is searched, a line a field, so that a word never matches across two fields. */
export function searchedText(fields: readonly (string | number | null)[]): string {
  return plain(fields.map((field) => field ?? '').join('\n'));
}

export function searchWords(typed: string): readonly string[] {
  return plain(typed)
    .split(/\s+/)
    .filter((word) => word !== '');
}

/** True when every word is found. No words: always true. */
export function holdsEveryWord(searched: string, words: readonly string[]): boolean {
  return words.every((word) => searched.includes(word));
}
