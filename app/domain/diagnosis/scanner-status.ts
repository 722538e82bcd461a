// What a piece of pasted text says about a code's status. A text counts only when all of it is status words, or when it ends in words
// that mean nothing else; everything less certain stays unknown.
import type { ScanCodeStatus } from './scan.ts';
import {
  doubtfulStatusWords,
  fillerWords,
  foldText,
  labelWords,
  statusByPhrase,
  unprovenPhrases,
} from './scanner-words.ts';
import { readStatusByte } from './status-byte.ts';

export type FoundStatus = {
  readonly status: ScanCodeStatus;
  readonly text: string;
  /** Null where the status stands in words. */
  readonly statusByte: number | null;
};

/** True when the text says in words that a code's test has not run since the clear. */
export function saysUnproven(text: string): boolean {
  const folded = foldText(text);
  return unprovenPhrases.some((phrase) => folded.includes(phrase));
}

const rank: readonly ScanCodeStatus[] = ['present', 'permanent', 'pending', 'history'];
const longestPhrase = 4;

/** Splits at everything that sets one thing off from the next: bars, brackets, commas, wide gaps, dashes between spaces. */
export function splitPieces(text: string): readonly string[] {
  return splitFields(text.replace(/[()[\]{}]/g, '|'));
}

/** The same, but a bracket stays with what it stands beside: 'Body (front)' is one field. */
export function splitFields(text: string): readonly string[] {
  return text
    .split(/[|;\t,<>/=:"]|\s{2,}|\s[-–—•·>]+(?=\s|$)|^[-–—•·>]+\s|\.{2,}/)
    .map((piece) => piece.trim().replace(/^[-–—•·*]+\s*|\s*[-–—•·*.!]+$/g, ''))
    .filter((piece) => piece !== '');
}

/** The status when the whole text is made of status words and fillers with at least one status word; else null. */
export function statusOfWholeText(text: string): ScanCodeStatus | null {
  const words = foldText(text)
    .split(/[^\p{L}\p{N}']+/u)
    .filter((word) => word !== '');
  if (words.length === 0 || words.length > 12) return null;
  const statuses: ScanCodeStatus[] = [];
  for (let index = 0; index < words.length; ) {
    const length = phraseLengthAt(words, index);
    if (length > 0) {
      const status = statusByPhrase.get(words.slice(index, index + length).join(' '));
      if (status !== undefined) statuses.push(status);
      index += length;
    } else if (fillerWords.has(words[index] ?? '')) {
      index += 1;
    } else {
      return null;
    }
  }
  return rank.find((status) => statuses.includes(status)) ?? null;
}

function phraseLengthAt(words: readonly string[], index: number): number {
  for (let length = Math.min(longestPhrase, words.length - index); length > 0; length -= 1) {
    if (statusByPhrase.has(words.slice(index, index + length).join(' '))) return length;
  }
  return 0;
}

/** The status that a code's surroundings give, with the words that gave it; null when they give none. */
export function findStatus(text: string): FoundStatus | null {
  const pieces = splitPieces(text);
  const found: FoundStatus[] = [];
  for (const [index, piece] of pieces.entries()) {
    const isLabelled = labelWords.get(foldText(pieces[index - 1] ?? '')) === 'status';
    const byte = isLabelled ? /^(?:0x)?([0-9a-f]{2})h?$/i.exec(piece) : null;
    const statusByte = byte?.[1] ? Number.parseInt(byte[1], 16) : null;
    const status = statusByte === null ? statusOfWholeText(piece) : readStatusByte(statusByte).status;
    if (status !== null) found.push({ status, text: piece, statusByte });
  }
  if (found.length === 0) return findStatusAtEnd(pieces.at(-1) ?? '');
  const status = rank.find((one) => found.some((each) => each.status === one)) ?? 'unknown';
  const statusByte = found.find((one) => one.statusByte !== null)?.statusByte ?? null;
  return { status, text: found.map((one) => one.text).join(', '), statusByte };
}

/** "Cylinder 1 misfire STORED": the last words of a description, when they cannot belong to it. */
function findStatusAtEnd(text: string): FoundStatus | null {
  const words = text.split(/\s+/).filter((word) => word !== '');
  for (let length = Math.min(longestPhrase, words.length - 1); length > 0; length -= 1) {
    const tail = words.slice(-length);
    const folded = foldText(tail.join(' '));
    const status = statusByPhrase.get(folded);
    if (status !== undefined && !doubtfulStatusWords.has(folded))
      return { status, text: tail.join(' '), statusByte: null };
  }
  return null;
}
