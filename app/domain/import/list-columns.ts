// Which column of a purchase list means what: the facts a list may bring, and a guess from the words in its head line. Pure.
import { z } from 'zod';
import { listWords } from './list-words.ts';

export const listFacts = [
  'vin',
  'stockNumber',
  'modelYear',
  'make',
  'model',
  'body',
  'colour',
  'odometer',
  'boughtOn',
  'source',
  'price',
  'fees',
  'transport',
  'asking',
  'arrivedOn',
  'expectedOn',
  'location',
  'keyTag',
  'keysReceived',
] as const;
export const listFactSchema = z.enum(listFacts);
export type ListFact = z.infer<typeof listFactSchema>;

/** For each column of the list the fact it brings, or null: not used. */
export const listMatchSchema = z.array(listFactSchema.nullable()).max(200);
export type ListMatch = z.infer<typeof listMatchSchema>;

/** Lower case, without accents and signs, words apart by one space: 'N° de Châssis (VIN)' is 'n de chassis vin'. */
export function plainHeader(text: string): string {
  return text
    .normalize('NFD')
    .replace(/\p{M}/gu, '')
    .replace(/([a-z])([A-Z])/g, '$1 $2')
    .toLowerCase()
    .replaceAll('ß', 'ss')
    .replaceAll('ł', 'l')
    .replace(/[^a-z0-9]+/g, ' ')
    .trim();
}

/** How well a header names a fact: 3 the whole of it, 2 all of it but a unit or sign, 1 words of it; 0 not at all. */
function fitOf(header: string, fact: ListFact): number {
  const words = listWords[fact];
  if (words.includes(header)) return 3;
  const bare = header
    .replace(/\b(usd|eur|gbp|cad|chf|pln|net|netto|brutto|gross|no|nr|number|km|mi|in|the)\b/g, '')
    .replace(/\s+/g, ' ')
    .trim();
  if (bare !== '' && words.includes(bare)) return 2;
  const padded = ` ${header} `;
  return words.some((word) => word.length >= 3 && padded.includes(` ${word} `)) ? 1 : 0;
}

/**
 * The guess for each column: every fact at most once, best fits first, then from the left. Columns whose words say nothing stay
 * unused. `remembered` is what a person chose for the same head line before, and goes before every guess.
 */
export function guessColumns(headers: readonly string[], remembered: ListMatch | null = null): ListMatch {
  if (remembered !== null && remembered.length === headers.length) return [...remembered];
  const plain = headers.map(plainHeader);
  const fits = plain.flatMap((header, column) =>
    listFacts.flatMap((fact) => {
      const how = header === '' ? 0 : fitOf(header, fact);
      return how === 0 ? [] : [{ column, fact, how }];
    }),
  );
  fits.sort((a, b) => b.how - a.how || a.column - b.column);
  const match: ListMatch = headers.map(() => null);
  const taken = new Set<ListFact>();
  for (const { column, fact } of fits) {
    if (match[column] !== null || taken.has(fact)) continue;
    match[column] = fact;
    taken.add(fact);
  }
  return match;
}

/** What a list with the same head line is known by, whoever sent it. */
export function headerKey(headers: readonly string[]): string {
  return headers.map(plainHeader).join('|').slice(0, 2000);
}
