// Finds trouble codes in one line of pasted text. A code is either written there letter for letter, or read through a slip of text
// recognition (O for 0) and then flagged; none is ever put together from pieces.
import { labelWords } from './scanner-words.ts';

export type CodeToken = {
  /** 'P0301' or 'P0301-11'. */
  readonly code: string;
  /** Exactly as in the line. */
  readonly originalText: string;
  readonly wasCorrected: boolean;
  readonly start: number;
  readonly end: number;
};

/** What text recognition mixes up (common experience, no source). Only from letters that no code has to digits. */
const slips: Readonly<Record<string, string>> = { O: '0', o: '0', Q: '0', I: '1', l: '1', S: '5', Z: '2' };

const unslip = (text: string) => text.replace(/[OoQIlSZ]/g, (letter) => slips[letter] ?? letter);
const isNumber = (text: string) => /^[PCBU][0-3][0-9A-F]{3}$/i.test(text);
const isFailureType = (text: string) => /^[0-9][0-9A-F]$/i.test(text);

/** The codes of a line from left to right. P0000 is padding, not a code. Text like a part number (A-B1234-567) is left alone. */
export function findCodeTokens(line: string): readonly CodeToken[] {
  const found: CodeToken[] = [];
  const tokens = [...line.matchAll(/[\p{L}\p{N}]+/gu)];
  for (const [index, match] of tokens.entries()) {
    const word = match[0];
    if (word.length !== 5 && word.length !== 7) continue;
    const start = match.index;
    const number = readNumber(word);
    if (number === null) continue;
    const previous = tokens[index - 1];
    const isAttached = previous !== undefined && /^[-_]$/.test(line.slice(previous.index + previous[0].length, start));
    const isAfterCode = previous !== undefined && found.at(-1)?.end === previous.index + previous[0].length;
    if (isAttached && !isAfterCode && !labelWords.has(previous[0].toLowerCase())) continue;
    const next = tokens[index + 1];
    const end = start + word.length;
    const gap = next === undefined ? '' : line.slice(end, next.index);
    const follower = word.length === 5 && next !== undefined && /^[-:]$/.test(gap) ? next[0] : '';
    const failureType = readFailureType(follower);
    if (failureType === null && /^[-_]$/.test(gap) && /^\d/.test(next?.[0] ?? '')) continue;
    const isWide = failureType !== null && next !== undefined;
    const wholeEnd = isWide ? next.index + follower.length : end;
    const originalText = line.slice(start, wholeEnd);
    const code = isWide ? `${number.code}-${failureType.hex}` : number.code;
    const wasCorrected = number.wasCorrected || (failureType?.wasCorrected ?? false);
    found.push({ code, originalText, wasCorrected, start, end: wholeEnd });
  }
  return found;
}

type Piece<Name extends string> = { readonly [Key in Name]: string } & { readonly wasCorrected: boolean };

function readNumber(word: string): Piece<'code'> | null {
  const digits = word.slice(1).replace(/\D/g, '').length;
  for (const wasCorrected of [false, true]) {
    // A word with fewer than two real digits is more likely a word than a misread code.
    if (wasCorrected && (digits < 2 || !/^[PCBU]/.test(word))) return null;
    const read = (wasCorrected ? `${word.charAt(0)}${unslip(word.slice(1))}` : word).toUpperCase();
    const number = read.slice(0, 5);
    const rest = read.slice(5);
    if (!isNumber(number) || number === 'P0000' || (rest !== '' && !isFailureType(rest))) continue;
    return { code: rest === '' ? number : `${number}-${rest}`, wasCorrected };
  }
  return null;
}

function readFailureType(word: string): Piece<'hex'> | null {
  if (word.length !== 2) return null;
  if (isFailureType(word)) return { hex: word.toUpperCase(), wasCorrected: false };
  const read = unslip(word).toUpperCase();
  return /\d|^[OoQ]{2}$/.test(word) && isFailureType(read) ? { hex: read, wasCorrected: true } : null;
}
