// From a pasted report to the rows of the form, and from its lines to what stands beside each. Pure; the reading itself is in
// app/domain/diagnosis. What a person corrected in the rows is kept when the report is read again.
import type { LineUse, ScannerTextReading } from '../../../../app/domain/diagnosis/scanner-reading.ts';
import { type CodeRow, isEmpty, leftOutKey, type ModuleRow, mergeRows, withEmptyRow } from './scan-draft.ts';

/** Text as the record can hold it: line ends of one kind, form feeds as line ends, other control characters as spaces. */
export function plainReport(text: string): string {
  // biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are taken out of pasted text on purpose.
  return text.replace(/\r\n?|[\f\v\u2028\u2029]/g, '\n').replace(/[\u0000-\u0008\u000e-\u001f\u007f]/g, ' ');
}

/** The rows that a reading gives. */
export function rowsOf(reading: ScannerTextReading): readonly ModuleRow[] {
  return reading.modules.map(({ name, answered, codes }) => ({
    name,
    answered,
    typed: '',
    codes: codes.map(({ code, status, words, statusByte, isUnproven, wasCorrected, originalText, lineNumber }) => ({
      code,
      status,
      words,
      statusByte,
      isUnproven,
      slip: wasCorrected ? originalText : null,
      origin: { line: lineNumber, readAs: code },
    })),
  }));
}

/**
 * The rows with those of the report added: a module that is there already takes what is new to it. A code that already has a row is that
 * row, however a person corrected it since; one that was left out stays out.
 */
export function addRows(
  rows: readonly ModuleRow[],
  found: readonly ModuleRow[],
  leftOut: readonly string[],
): readonly ModuleRow[] {
  const origins = rows.flatMap((row) => row.codes.flatMap(({ origin }) => (origin === null ? [] : [origin])));
  const settled = new Set([...leftOut, ...origins.map(leftOutKey)]);
  const fresh = found
    .map((row) => ({
      ...row,
      codes: row.codes.filter(({ origin }) => origin === null || !settled.has(leftOutKey(origin))),
    }))
    .filter((row) => row.codes.length > 0 || row.name !== '');
  return withEmptyRow(mergeRows([...rows.filter((row) => !isEmpty(row)), ...fresh]));
}

/**
 * Makes a line of the report the name of a module: the codes read between it and the next module's line move to that module, with whatever
 * a person corrected in them. A row without a name that is left without codes falls away.
 */
export function promoteLine(
  rows: readonly ModuleRow[],
  name: string,
  { from, before }: { readonly from: number; readonly before: number },
): readonly ModuleRow[] {
  const belongs = ({ origin }: CodeRow) => origin !== null && origin.line > from && origin.line < before;
  const moved = rows.flatMap((row) => row.codes.filter(belongs));
  const rest = rows
    .map((row) => ({ ...row, codes: row.codes.filter((code) => !belongs(code)) }))
    .filter((row) => row.name !== '' || row.typed !== '' || row.codes.length > 0);
  return withEmptyRow(mergeRows([...rest, { name, answered: true, typed: '', codes: moved }]));
}

export type ReportLine = {
  readonly lineNumber: number;
  readonly text: string;
  readonly use: LineUse;
  /** Names of the modules that begin at this line, or that it says are silent. */
  readonly modules: readonly string[];
  readonly codes: readonly { readonly code: string; readonly wasCorrected: boolean; readonly originalText: string }[];
};

/** The lines of the report that are not blank, each with what was read there. */
export function reportLines(reading: ScannerTextReading): readonly ReportLine[] {
  const codes = reading.modules.flatMap((module) => module.codes);
  return reading.lines
    .filter((line) => line.use !== 'blank')
    .map(({ lineNumber, text, use }) => ({
      lineNumber,
      text,
      use,
      modules: reading.modules
        .filter((module) => module.lineNumber === lineNumber && module.name !== '')
        .map((module) => module.name),
      codes: codes.filter((code) => code.lineNumber === lineNumber),
    }));
}

/** How much was read, in numbers. */
export function countReading(reading: ScannerTextReading) {
  const codes = reading.modules.flatMap((module) => module.codes);
  return {
    lines: reading.lines.filter((line) => line.use !== 'blank').length,
    modules: reading.modules.filter((module) => module.name !== '').length,
    silent: reading.modules.filter((module) => !module.answered).length,
    codes: codes.length,
    slips: codes.filter((code) => code.wasCorrected).length,
    notRead: reading.notUnderstood.length,
  };
}
