// The rows of a purchase list out of its text, whatever separates its columns. The only file that loads papaparse.
import Papa from 'papaparse';
import { fail, ok, type Result } from '../domain/shared/result.ts';

export type Separator = ',' | ';' | '\t' | '|';
export type ReadList = {
  readonly separator: Separator;
  readonly headers: readonly string[];
  readonly rows: readonly (readonly string[])[];
};

const separators: readonly Separator[] = [';', '\t', ',', '|'];
const mostRows = 5_000;
const mostColumns = 200;

/** How many columns most of the first rows have with this separator; 1 where it separates nothing. */
function columnsWith(text: string, separator: Separator): number {
  const { data } = Papa.parse<string[]>(text, { delimiter: separator, preview: 20, skipEmptyLines: 'greedy' });
  const widths = data.map((row) => row.length);
  const head = widths[0] ?? 1;
  const alike = widths.filter((width) => width === head).length;
  return head > 1 && alike >= widths.length * 0.6 ? head : 1;
}

/** The separator by which the most columns agree. One column only: the comma. */
function separatorOf(text: string): Separator {
  let best: Separator = ',';
  let most = 1;
  for (const separator of separators) {
    const columns = columnsWith(text, separator);
    if (columns > most) [best, most] = [separator, columns];
  }
  return best;
}

/** Empty rows are left out. Refused with a sentence: nothing but a head line, a quote never closed, too many rows or columns. */
export function readList(given: string): Result<ReadList, string> {
  const marked = given.replace(/^\uFEFF/, '');
  // Spreadsheets name the separator in a line of its own before the head line.
  const named = /^sep=(.)\r?\n/i.exec(marked);
  const text = named === null ? marked : marked.slice(named[0].length);
  const separator = separators.find((one) => one === named?.[1]) ?? separatorOf(text.slice(0, 200_000));
  const { data, errors } = Papa.parse<string[]>(text, { delimiter: separator, skipEmptyLines: 'greedy' });
  const open = errors.find(({ type }) => type === 'Quotes');
  if (open !== undefined)
    return fail(
      `A quotation mark in row ${(open.row ?? 0) + 1} is never closed, so where its cell ends is not known. Save the list again as CSV.`,
    );
  const [headers = [], ...rows] = data;
  if (rows.length === 0)
    return fail('This list has no rows under its first line. The first line is taken for the names of the columns.');
  if (rows.length > mostRows)
    return fail(
      `This list has ${rows.length} rows; at most ${mostRows} are taken at once. Split it into several lists.`,
    );
  if (headers.length > mostColumns)
    return fail(`This list has ${headers.length} columns; at most ${mostColumns} are read.`);
  return ok({ separator, headers: headers.map((header) => header.trim().slice(0, 120)), rows });
}
