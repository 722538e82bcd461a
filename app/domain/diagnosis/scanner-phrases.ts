// Finds the phrases in a line of pasted text that say that a module is silent or has no codes, and labels before values.
import { cutCount } from './scanner-names.ts';
import { splitPieces } from './scanner-status.ts';
import { foldText, labelWords, noCodeFields, noCodePhrases } from './scanner-words.ts';

export type Place = { readonly start: number; readonly end: number };

/** The first of the phrases in the text, as whole words. */
export function findPhrase(text: string, phrases: readonly string[]): Place | null {
  const folded = foldText(text);
  let best: Place | null = null;
  for (const phrase of phrases) {
    const start = folded.indexOf(phrase);
    const end = start + phrase.length;
    if (start < 0 || /[\p{L}\p{N}]/u.test(folded.charAt(start - 1)) || /[\p{L}\p{N}]/u.test(folded.charAt(end)))
      continue;
    if (best === null || start < best.start || (start === best.start && end > best.end)) best = { start, end };
  }
  return best;
}

/** Where the line says that there are no codes: a phrase, a count of zero, or a short word that fills the last field. */
export function findNoCodes(text: string): Place | null {
  const phrase = findPhrase(text, noCodePhrases);
  if (phrase !== null) return phrase;
  const { name, count } = cutCount(text.trim());
  const nameStart = text.indexOf(name);
  if (count === 0) return { start: nameStart + name.length, end: text.length };
  const label = readLabel(text);
  if (label?.role === 'code' && (/^0\s*$/.test(label.value) || noCodeFields.has(foldText(label.value.trim())))) {
    return { start: 0, end: text.length };
  }
  const bare = /^\s*0\s+(\p{L}+)\s*$/u.exec(text);
  if (bare?.[1] && labelWords.get(foldText(bare[1])) === 'code') return { start: 0, end: text.length };
  const last = splitPieces(text).at(-1) ?? '';
  const start = text.lastIndexOf(last);
  return last !== '' && noCodeFields.has(foldText(last)) ? { start, end: start + last.length } : null;
}

/** 'Status: stored' as the role of its label and its value; null when the label is not a known one. */
export function readLabel(
  text: string,
): { readonly role: 'code' | 'module' | 'status' | 'words'; readonly value: string } | null {
  const match = /^\s*(?:[-–—•·*>]\s*)?([^:=]{2,30}?)\s*[:=]\s*(\S.*)$/.exec(text);
  if (match === null) return null;
  const [, label = '', value = ''] = match;
  const role = labelWords.get(foldText(label).replace(/\s+/g, ' '));
  return role === undefined ? null : { role, value };
}
