// Trouble codes of one module as people type or paste them, and back. Drops nothing in silence: what is not understood comes back.
import type { ScanCode } from '../../../../app/domain/diagnosis/scan.ts';
import { scanCodeStatusSchema } from '../../../../app/domain/diagnosis/scan.ts';
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

type Open = { code: string; status: ScanCode['status']; words: string[] };

/**
 * Codes separated by spaces, commas or lines. A status word after a code (present, history, pending, permanent) is its status; other
 * words after it, up to the next code or the end of the line, are its description. Text before the first code of a line, and anything
 * that only looks like a code, is not understood and comes back as it was.
 */
export function readCodeText(text: string): CodeTextReading {
  const codes: ScanCode[] = [];
  const notUnderstood: string[] = [];
  for (const line of text.split(/\r?\n/)) {
    let open: Open | null = null;
    const close = () => {
      if (open !== null)
        codes.push({ code: open.code, status: open.status, words: open.words.join(' ').slice(0, longestWords) });
      open = null;
    };
    for (const token of line.split(/[\s,;]+/).filter((part) => part !== '')) {
      const parsed = parseTroubleCode(token.replace(/[.:()]+$/, ''));
      if (parsed !== null) {
        close();
        open = { code: parsed.text, status: 'present', words: [] };
        continue;
      }
      const current: Open | null = open;
      if (isNearCode(token) || current === null) {
        notUnderstood.push(token);
        continue;
      }
      const status = current.words.length === 0 ? statusOf(token) : null;
      if (status !== null) current.status = status;
      else current.words.push(token);
    }
    close();
  }
  return { codes, notUnderstood };
}

/** One code a line, as `readCodeText` reads it again. 'present' is what a code is unless said otherwise. */
export function writeCodeText(codes: readonly ScanCode[]): string {
  return codes
    .map(({ code, status, words }) =>
      [code, status === 'present' ? '' : status, words].filter((part) => part !== '').join(' '),
    )
    .join('\n');
}
