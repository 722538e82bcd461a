// The short mark on every sheet, by which an old sheet is told from the current one: made, written, read and checked. Looks nothing up.
import type { AnySheetKind } from './sheet.ts';

/** Digits and capitals without those that are taken for each other (0 O Q, 1 I L, U beside V). A prime number of them: see the check. */
export const markAlphabet = '23456789ABCDEFGHJKMNPRSTVWXYZ';
const base = markAlphabet.length;
const bodyLength = 5;
export const markLength = bodyLength + 1;

/** FNV-1a, 32 bits (Fowler, Noll, Vo; IETF draft-eastlake-fnv): spreads marks evenly. It is no secret and no proof. */
function spread(text: string): number {
  let hash = 0x811c9dc5;
  for (const byte of new TextEncoder().encode(text)) hash = Math.imul(hash ^ byte, 0x01000193) >>> 0;
  return hash;
}

/**
 * The check character: the sum of the places' values, each times its place, modulo the prime number of characters. Finds every single
 * wrong character and every exchange of two (as ISBN-10 does with 11; ISO 2108:2005, annex).
 */
function checkOf(values: readonly number[]): number {
  return values.reduce((sum, value, index) => sum + value * (index + 1), 0) % base;
}

export type Marked = {
  readonly kind: AnySheetKind;
  /** The vehicle's id, or 'fleet'. */
  readonly subjectId: string;
  readonly revision: number;
  /** ISO instant. */
  readonly printedAt: string;
};

/** Five characters from what was printed when, and a check character. Two sheets share a mark about once in 20 million. */
export function sheetMark({ kind, subjectId, revision, printedAt }: Marked): string {
  let rest = spread(`${kind}|${subjectId}|${revision}|${printedAt}`);
  const values: number[] = [];
  for (let place = 0; place < bodyLength; place += 1) {
    values.push(rest % base);
    rest = Math.floor(rest / base);
  }
  return [...values, checkOf(values)].map((value) => markAlphabet[value] ?? '').join('');
}

/** 'K7M 2PX': read out and typed in two halves. */
export function showMark(mark: string): string {
  return `${mark.slice(0, markLength / 2)} ${mark.slice(markLength / 2)}`;
}

export type ReadMark = { readonly ok: true; readonly mark: string } | { readonly ok: false; readonly sentence: string };

/** What was typed, as a mark: capitals, without spaces and hyphens. A slip is told by the check character. */
export function readMark(typed: string): ReadMark {
  const mark = typed.toUpperCase().replace(/[\s·-]/g, '');
  const strange = [...mark].find((character) => !markAlphabet.includes(character));
  if (strange !== undefined)
    return {
      ok: false,
      sentence: `A mark has no “${strange}”. It has digits from 2 and capitals without I, L, O, Q, U.`,
    };
  if (mark.length !== markLength)
    return { ok: false, sentence: `A mark has ${markLength} characters; these are ${mark.length}.` };
  const values = [...mark].map((character) => markAlphabet.indexOf(character));
  if (checkOf(values.slice(0, bodyLength)) !== values[bodyLength])
    return { ok: false, sentence: 'One character does not fit the others. Look at the foot of the sheet again.' };
  return { ok: true, mark };
}
