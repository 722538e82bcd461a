// Judges whether a piece of pasted text may be the name of a control module, and trims it to the name. A name is always a part of the
// text, never made up.
import { splitFields, statusOfWholeText } from './scanner-status.ts';
import {
  codeNouns,
  descriptionWords,
  foldText,
  labelWords,
  moduleWords,
  reportWords,
  severalModulesWords,
} from './scanner-words.ts';

const longestName = 60;
const mostWords = 8;
/** Longer lines are no headings; the patterns below need not look at them. */
const longestLine = 200;

/** Without bullets, numbering, frames and the colon at the end. '' when nothing is left. */
export function trimName(text: string): string {
  let name = text;
  for (let before = ''; before !== name; ) {
    before = name;
    name = name.replace(/^[\s\-–—=#*•·>»|;:,.~_+"'\])]+/u, '').replace(/[\s\-–—=#*•·<>«|;:,.~_+"'[(]+$/u, '');
    if (/^\[[^[\]]*\]$/.test(name) || /^\([^()]*\)$/.test(name)) name = name.slice(1, -1);
    const numbered = /^[[(]?\d{1,3}[\])]?(?:\s*[.):\-–—]\s*|\s+)(?=.*\p{L})/u.exec(name);
    if (numbered !== null) name = name.slice(numbered[0].length);
    if (/\]$/.test(name) && !name.includes('[')) name = name.slice(0, -1);
    if (/\)$/.test(name) && !name.includes('(')) name = name.slice(0, -1);
  }
  return name;
}

/** Cuts a count of codes off the end of a heading: 'Brakes: 2 faults', 'Brakes (2)'. Null count when there is none. */
export function cutCount(text: string): { readonly name: string; readonly count: number | null } {
  const match = /^(.*?\p{L}.*?)\s*(?:[,:–—-]\s*|[([]\s*|\s)(\d{1,3})\s*(\p{L}+)?(?:\s\p{L}+)?\s*[)\]]?\s*:?\s*$/u.exec(
    text,
  );
  if (match === null) return { name: text, count: null };
  const [, name = text, digits = '', noun] = match;
  const isCount = noun === undefined ? /[([]\s*\d+\s*[)\]]\s*:?\s*$/.test(text) : codeNouns.has(foldText(noun));
  return isCount ? { name, count: Number(digits) } : { name: text, count: null };
}

export type NameStrength = 'strong' | 'weak' | 'none';

/** How much a whole line without a code looks like the heading of a module. */
export function strengthOfHeading(line: string): NameStrength {
  if (line.length > longestLine) return 'none';
  const { name: withoutCount, count } = cutCount(line.trim());
  const name = trimName(withoutCount);
  const words = wordsOf(name);
  if (name === '' || !/\p{L}/u.test(name) || name.length > longestName || words.length > mostWords) return 'none';
  if (isAboutReport(line) || words.some((word) => descriptionWords.has(word))) return 'none';
  if (/[.!?]$/.test(line.trim()) || statusOfWholeText(name) !== null || labelWords.has(foldText(name))) return 'none';
  const isFramed = /^\s*(?:[[=#*>»]|-{2,})/.test(line) || /:\s*$/.test(line);
  if (/:\s*\S/.test(withoutCount) && !words.some((word) => moduleWords.has(word))) return 'none';
  return count !== null || isFramed || words.some((word) => moduleWords.has(word)) || isAcronym(name)
    ? 'strong'
    : 'weak';
}

/** The module named in front of a code on the same line, or null. `text` is everything before the first code. */
export function moduleBeforeCode(text: string): string | null {
  const candidates = splitFields(text).filter(mayBeName);
  const isSetOff = /(?:[|;\t,:\])>"]\s*|\s{2,}|\s[-–—]+\s*)$/.test(text);
  const best = candidates.find((piece) => wordsOf(piece).some((word) => moduleWords.has(word))) ?? candidates[0];
  if (best === undefined) return null;
  // Not set off by anything, a name must be short and end in its noun: 'Engine P0301', not 'The engine says P0301'.
  const words = wordsOf(best);
  const isLikely = words.length <= 3 && moduleWords.has(words.at(-1) ?? '') && text.trimEnd().endsWith(best);
  return isSetOff || isLikely || isAcronym(best) ? trimName(best) : null;
}

/** True for text that could name a module: has a letter, is short, and is no label, status, description or line about the report. */
export function mayBeName(text: string): boolean {
  const name = trimName(text);
  const words = wordsOf(name);
  return (
    /\p{L}.*\p{L}/u.test(name) &&
    !namesSeveral(name) &&
    name.length <= longestName &&
    words.length <= mostWords &&
    !labelWords.has(foldText(name)) &&
    statusOfWholeText(name) === null &&
    !isAboutReport(name) &&
    !words.some((word) => descriptionWords.has(word)) &&
    !(/\d/.test(name) && /^(?:0x)?[0-9a-f]{2,4}h?$/i.test(name))
  );
}

/** 'All modules', 'modules that': about several modules at once. */
export function namesSeveral(text: string): boolean {
  return wordsOf(text).some((word) => severalModulesWords.has(word));
}

/** Lines about the report, the vehicle or the device: dates, times, VINs, volts, and the words for them. */
export function isAboutReport(text: string): boolean {
  if (/\b\d{1,4}[./-]\d{1,2}[./-]\d{1,4}\b|\b\d{1,2}:\d{2}\b|\b[A-HJ-NPR-Z0-9]{17}\b|\d\s?(?:km|mi|V|°C)\b/.test(text))
    return true;
  return wordsOf(text).some((word) => reportWords.has(word));
}

/** 'ECM', 'ABS2': two to six capitals and at most one digit. */
export function isAcronym(text: string): boolean {
  return /^\p{Lu}{2,6}\d?$/u.test(text);
}

function wordsOf(text: string): readonly string[] {
  return foldText(text)
    .split(/[^\p{L}\p{N}']+/u)
    .filter((word) => word !== '');
}
