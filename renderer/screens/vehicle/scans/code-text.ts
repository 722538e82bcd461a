// Trouble codes of one module as people type or paste them, and back. Drops nothing in silence: what is not understood comes back.
import type { ScanCode } from '../../../../app/domain/diagnosis/scan.ts';
import { plainCode, scanCodeStatusSchema } from '../../../../app/domain/diagnosis/scan.ts';
import { parseTroubleCode } from '../../../../app/domain/diagnosis/trouble-code.ts';

export type CodeTextReading = { readonly codes: readonly ScanCode[]; readonly notUnderstood: readonly string[] };

const statuses: readonly string[] = scanCodeStatusSchema.options;
const longestWords = 160;

/** Looks as if a code was meant: a letter of a code and digits after it, or a slip such as O for 0. */
function isNearCode(token: string): boolean {
  return /^[PCBU][0-9O][0-9A-FO]{2,4}\b/i.test(token) || /^[PCBU]\d/i.test(token);
}

function statusOf(token: string): ScanCode['status'] | null {
  const word = token.toLowerCase().replace(/[^a-z]/g, '');
  const status = statuses.find((candidate) => candidate === word);
  return status === undefined ? null : (status as ScanCode['status']);
}

type Open = { code: string; status: ScanCode['status'] | null; isUnproven: boolean; words: string[] };

/** What a code is unless said otherwise: there now; but of one whose test has not run nothing is known. */
function closeCode({ code, status, isUnproven, words }: Open): ScanCode {
  const known = status ?? (isUnproven ? 'unknown' : 'present');
  return { ...plainCode(code, known, words.join(' ').slice(0, longestWords)), isUnproven };
}

/**
 * Codes separated by spaces, commas or lines. A status word after a code (present, history, pending, permanent) is its status, 'untested'
 * says that its test has not run since the clear; other words after it, up to the next code or the end of the line, are its description.
 * Text before the first code of a line, and anything that only looks like a code, is not understood and comes back as it was.
 */
export function readCodeText(text: string): CodeTextReading {
  const codes: ScanCode[] = [];
  const notUnderstood: string[] = [];
  for (const line of text.split(/\r?\n/)) {
    const open: Open[] = [];
    for (const token of line.split(/[\s,;]+/).filter((part) => part !== '')) {
      const parsed = parseTroubleCode(token.replace(/[.:()]+$/, ''));
      if (parsed !== null) {
        open.push({ code: parsed.text, status: null, isUnproven: false, words: [] });
        continue;
      }
      const current = open.at(-1);
      if (isNearCode(token) || current === undefined) {
        notUnderstood.push(token);
        continue;
      }
      const isFirstWord = current.words.length === 0;
      const status = isFirstWord ? statusOf(token) : null;
      if (status !== null) current.status = status;
      else if (isFirstWord && token.toLowerCase() === 'untested') current.isUnproven = true;
      else current.words.push(token);
    }
    codes.push(...open.map(closeCode));
  }
  return { codes, notUnderstood };
}
