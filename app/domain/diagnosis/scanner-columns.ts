// Tables in pasted text: finds the row of headings and then gives the cells of the rows below it. Knows nothing about codes' meaning.
import { foldText, labelWords } from './scanner-words.ts';

export type ColumnRole = 'code' | 'module' | 'status' | 'words';

export type Columns = {
  readonly delimiter: '|' | '\t' | ';' | ',' | 'gaps';
  readonly roles: readonly (ColumnRole | null)[];
  /** Where each column starts, for columns set off by gaps. */
  readonly starts: readonly number[];
};

const delimiters = ['|', '\t', ';', ',', 'gaps'] as const;

/** The columns, when the line is a row of headings: at least a code and one more, or a module and a status. */
export function readColumnHeadings(line: string): Columns | null {
  for (const delimiter of delimiters) {
    const starts = delimiter === 'gaps' ? [...line.matchAll(/\S+(?: \S+)*/g)].map((match) => match.index) : [];
    const cells = delimiter === 'gaps' ? cellsAt(line, starts) : splitDelimited(line, delimiter);
    if (cells.length < 2) continue;
    const roles = cells.map((cell) => labelWords.get(foldText(cell)) ?? null);
    const known = new Set(roles.filter((role) => role !== null));
    if (known.size >= 2 && (known.has('code') || (known.has('module') && known.has('status')))) {
      return { delimiter, roles, starts };
    }
  }
  return null;
}

/** The cell of this role in a row, '' when empty, null when the row does not fit the columns or has no such column. */
export function cellOf(line: string, columns: Columns, role: ColumnRole): string | null {
  const index = columns.roles.indexOf(role);
  if (index < 0) return null;
  if (columns.delimiter !== 'gaps') {
    const cells = splitDelimited(line, columns.delimiter);
    return cells.length < 2 ? null : (cells[index] ?? null);
  }
  // A column begins after a space in every row that keeps to the headings.
  const isAligned = columns.starts.every(
    (start) => start === 0 || start >= line.length || /\s/.test(line.charAt(start - 1)),
  );
  return isAligned ? (cellsAt(line, columns.starts)[index] ?? null) : null;
}

function cellsAt(line: string, starts: readonly number[]): readonly string[] {
  return starts.map((start, index) => line.slice(start, starts[index + 1]).trim());
}

function splitDelimited(line: string, delimiter: string): readonly string[] {
  const cells: string[] = [];
  let cell = '';
  let isQuoted = false;
  for (const character of line) {
    if (character === '"') isQuoted = !isQuoted;
    else if (character === delimiter && !isQuoted) {
      cells.push(cell.trim());
      cell = '';
    } else cell += character;
  }
  return [...cells, cell.trim()];
}
