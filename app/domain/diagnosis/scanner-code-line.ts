// Reads one line of pasted text that has trouble codes in it: the codes, their status and the words beside them. Knows nothing about the
// lines around it; that is scanner-reader.ts.
import { type CodeToken, findCodeTokens } from './scanner-codes.ts';
import { type Columns, cellOf } from './scanner-columns.ts';
import { isAcronym, trimName } from './scanner-names.ts';
import type { FoundCode } from './scanner-reading.ts';
import { type FoundStatus, findStatus, saysUnproven, splitPieces, statusOfWholeText } from './scanner-status.ts';
import { foldText, labelWords } from './scanner-words.ts';
import { readStatusByte } from './status-byte.ts';

export type OpenCode = { -readonly [Key in keyof FoundCode]: FoundCode[Key] };
export type Line = {
  readonly text: string;
  readonly indent: number;
  readonly tokens: readonly CodeToken[];
  readonly isBlank: boolean;
};

const longestWords = 160;
/** Only this much of a line beside a code is looked at for names and status; the rest of a longer line is kept as text. */
export const nearby = 240;

/** One line without control characters, with its depth and its codes. A tab counts as four places. */
export function readLine(raw: string): Line {
  // biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are taken out of pasted text on purpose.
  const text = raw.replace(/[\u0000-\u0008\u000e-\u001f\u007f]/g, ' ');
  const lead = /^[\s\u200b\ufeff]*/.exec(text)?.[0] ?? '';
  const indent = [...lead].reduce((width, character) => width + (character === '\t' ? 4 : 1), 0);
  return { text, indent, tokens: findCodeTokens(text), isBlank: !/[\p{L}\p{N}]/u.test(text) };
}

type Surroundings = {
  readonly columns: Columns | null;
  /** The text before the first code, and the status that it gave. */
  readonly before: string;
  readonly statusBefore: FoundStatus | null;
  readonly sectionStatus: FoundStatus | null;
  readonly moduleName: string;
};

/** The codes of a line with what stands beside each. */
export function readCodesOfLine(line: Line, index: number, around: Surroundings): readonly OpenCode[] {
  const cell = around.columns === null ? null : cellOf(line.text, around.columns, 'words');
  const codes = line.tokens.map((token, place) => {
    const end = Math.min(line.tokens[place + 1]?.start ?? line.text.length, token.end + nearby);
    const after = line.text.slice(token.end, end);
    const found = around.statusBefore ?? findStatus(after) ?? around.sectionStatus;
    const lead = place === 0 ? describeLead(around.before, around.moduleName) : '';
    const beside = cutStatus(`${lead} ${after}`, found?.text ?? '');
    return {
      code: token.code,
      status: found?.status ?? 'unknown',
      statusText: found?.text ?? '',
      statusByte: found?.statusByte ?? null,
      isUnproven: saysUnproven(after) || isUnprovenByte(found?.statusByte ?? null),
      words: shorten(cell !== null && cell !== '' ? cell : beside),
      lineNumber: index + 1,
      wasCorrected: token.wasCorrected,
      originalText: token.originalText,
    };
  });
  shareStatus(codes, line);
  return codes;
}

/** 'P0301, P0302 and P0303 (stored)': codes with nothing but separators behind them have the status of the next one. */
function shareStatus(codes: readonly OpenCode[], line: Line): void {
  for (let place = codes.length - 2; place >= 0; place -= 1) {
    const code = codes[place];
    const next = codes[place + 1];
    const gap = line.text.slice(line.tokens[place]?.end, line.tokens[place + 1]?.start);
    if (code === undefined || next === undefined || code.statusText !== '') continue;
    if (gap.length < 12 && /^[\s,;/&+-]*(?:and|und|et|y|e|i|en)?[\s,;/&+-]*$/i.test(gap)) {
      code.status = next.status;
      code.statusText = next.statusText;
      code.statusByte = next.statusByte;
      code.isUnproven ||= next.isUnproven;
      if (code.words === '' || /^(?:and|und|et|y|e|i|en)$/i.test(code.words)) code.words = next.words;
    }
  }
}

function isUnprovenByte(statusByte: number | null): boolean {
  return statusByte !== null && readStatusByte(statusByte).isUnproven;
}

export function takeStatus(code: OpenCode, found: FoundStatus): void {
  code.status = found.status;
  code.statusText = found.text;
  code.statusByte = found.statusByte;
  code.isUnproven ||= isUnprovenByte(found.statusByte);
}

export function fitsColumns(line: Line, columns: Columns): boolean {
  const cell = cellOf(line.text, columns, 'code');
  return cell !== null && line.tokens.some((token) => cell.includes(token.originalText));
}

export function statusInCell(text: string, columns: Columns): FoundStatus | null {
  const cell = cellOf(text, columns, 'status');
  return cell === null || cell === '' ? null : findStatus(`status: ${cell}`);
}

/** In a row that begins with the code, a second field in capitals is the module: 'P0420 | ECM | ...'. */
export function moduleAfterCode(line: Line): string | null {
  const [token] = line.tokens;
  if (token === undefined || line.tokens.length !== 1 || /[\p{L}\p{N}]/u.test(line.text.slice(0, token.start)))
    return null;
  const field = /^\s*[|;\t]\s*([^|;\t]{2,7}?)\s*[|;\t]/.exec(line.text.slice(token.end, token.end + nearby))?.[1] ?? '';
  return isAcronym(field) && statusOfWholeText(field) === null ? field : null;
}

/** The words beside a code without the status at their end, which is kept on its own. */
function cutStatus(words: string, statusText: string): string {
  const bare = words.replace(/[\s|;,.)\]]+$/, '');
  if (statusText === '' || !bare.endsWith(statusText)) return words;
  return bare.slice(0, -statusText.length).replace(/[\s|;,:.([/–—-]+$/, '');
}

/** What stands before the first code without the module's name, labels and numbering: a description put in front. */
function describeLead(before: string, moduleName: string): string {
  const pieces = splitPieces(before).filter((piece) => {
    const name = trimName(piece);
    return (
      /\p{L}/u.test(name) && name !== moduleName && !labelWords.has(foldText(name)) && statusOfWholeText(name) === null
    );
  });
  return pieces.join(', ');
}

export function shorten(text: string): string {
  const words = text
    .replace(/\s+/g, ' ')
    .replace(/^[\s\-–—:;,.|)\]]+/, '')
    .trimEnd()
    .replace(/[\s|;,]+$/, '');
  return words.length <= longestWords ? words : `${words.slice(0, longestWords - 1)}…`;
}
