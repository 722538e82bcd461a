// A scan as its form holds it: modules with their codes as rows, what is being typed beside them, and a last empty row. Pure.

import { moduleKey } from '../../../../app/domain/diagnosis/same-module.ts';
import type { ScanCode, ScanDraft, ScanModule } from '../../../../app/domain/diagnosis/scan.ts';
import { fail, ok, type Result } from '../../../../app/domain/shared/result.ts';
import type { ChangeProblem } from '../../../../app/domain/vehicle/change-problem.ts';
import type { Typed } from '../../../state/edit-draft.ts';
import { scanText } from '../../../text/scans.ts';
import { readCodeText } from './code-text.ts';
import { readReport } from './read-report.ts';

export type CodeOrigin = { readonly line: number; readonly readAs: string };

export type CodeRow = ScanCode & {
  /** What stands in the report, where the code was read through a slip and nobody has looked at it yet. */
  readonly slip: string | null;
  /** Where in the report it was read, and as what; null when it was typed. A person may have corrected it since. */
  readonly origin: CodeOrigin | null;
};
export type ModuleRow = {
  readonly name: string;
  readonly answered: boolean;
  /** Codes being typed, not yet rows. */
  readonly typed: string;
  readonly codes: readonly CodeRow[];
};
export type ScanValue = Omit<Typed<ScanDraft>, 'modules'> & {
  readonly id: string;
  readonly modules: readonly ModuleRow[];
  /** Codes of the report that a person left out, by `leftOutKey`: reading the report again does not bring them back. */
  readonly leftOut: readonly string[];
};

export const emptyRow: ModuleRow = { name: '', answered: true, typed: '', codes: [] };

export function isEmpty(row: ModuleRow): boolean {
  return row.name.trim() === '' && row.typed.trim() === '' && row.codes.length === 0 && row.answered;
}

/** The rows with exactly one empty one at the end. */
export function withEmptyRow(rows: readonly ModuleRow[]): readonly ModuleRow[] {
  const last = rows[rows.length - 1];
  return last !== undefined && isEmpty(last) ? rows : [...rows, emptyRow];
}

/** Where in the report each code was read, by what it was read as; the first that fits is taken and not given twice. */
function originsIn(reportText: string) {
  const found = (reportText === '' ? [] : readReport(reportText).modules).flatMap(({ name, codes }) =>
    codes.map(({ code, lineNumber }) => ({ module: moduleKey(name), origin: { line: lineNumber, readAs: code } })),
  );
  return {
    take(module: string, code: string): CodeOrigin | null {
      const isSame = ({ origin }: (typeof found)[number]) => origin.readAs === code;
      const inModule = found.findIndex((one) => isSame(one) && one.module === moduleKey(module));
      const at = inModule >= 0 ? inModule : found.findIndex(isSame);
      return at < 0 ? null : (found.splice(at, 1)[0]?.origin ?? null);
    },
    rest: () => found.map(({ origin }) => origin),
  };
}

/** A code of the report that is not in the kept scan was left out, or corrected into another. */
export function scanValue(scan: ScanDraft): ScanValue {
  const origins = originsIn(scan.reportText);
  const rows = scan.modules.map(({ name, answered, codes }) => ({
    name,
    answered,
    typed: '',
    codes: codes.map((code) => ({ ...code, slip: null, origin: origins.take(name, code.code) })),
  }));
  return { ...scan, modules: withEmptyRow(rows), leftOut: origins.rest().map(leftOutKey) };
}

/** Modules of an earlier scan as rows to fill in again: the same vehicle has the same modules. */
export function rowsLike(modules: readonly ScanModule[]): readonly ModuleRow[] {
  return modules.map(({ name }) => ({ ...emptyRow, name }));
}

/** The row with what was typed as codes made into rows of codes; what is not understood stays where it was typed. */
export function settleTyped(row: ModuleRow): ModuleRow {
  if (row.typed.trim() === '') return row;
  const { codes, notUnderstood } = readCodeText(row.typed);
  const isKnown = (code: ScanCode) => row.codes.some((one) => one.code === code.code && one.status === code.status);
  const more = codes.filter((code) => !isKnown(code)).map((code) => ({ ...code, slip: null, origin: null }));
  return { ...row, typed: notUnderstood.join(' '), codes: [...row.codes, ...more] };
}

export function leftOutKey({ line, readAs }: CodeOrigin): string {
  return `${line} ${readAs}`;
}

/** Rows of the same module put together: answered when one of them says so, each code with the same status once. */
export function mergeRows(rows: readonly ModuleRow[]): readonly ModuleRow[] {
  const merged: ModuleRow[] = [];
  for (const row of rows) {
    const key = moduleKey(row.name);
    const at = key === '' ? -1 : merged.findIndex((other) => moduleKey(other.name) === key);
    const known = merged[at];
    if (known === undefined) {
      merged.push(row);
      continue;
    }
    const isNew = (code: CodeRow) => !known.codes.some((one) => one.code === code.code && one.status === code.status);
    merged[at] = {
      ...known,
      answered: known.answered || row.answered,
      typed: [known.typed, row.typed].filter((text) => text.trim() !== '').join(' '),
      codes: [...known.codes, ...row.codes.filter(isNew)],
    };
  }
  return merged;
}

function moduleProblem(row: ModuleRow): string | null {
  if (row.name.trim() === '') return scanText.moduleNameMissing;
  if (row.typed.trim() !== '') return scanText.notUnderstood(row.typed.split(/\s+/));
  if (!row.answered && row.codes.length > 0) return scanText.silentWithCodes;
  return row.codes.some((code) => code.slip !== null) ? scanText.slipsToLookAt : null;
}

function keptCode({ slip: _slip, origin: _origin, ...code }: CodeRow): ScanCode {
  return { ...code, code: code.code.trim().toUpperCase() };
}

/**
 * The scan to judge and save. Empty rows fall away, rows of one module are put together. What still has to be looked at by a person stands
 * against it, each at its row.
 */
export function finishScan(value: ScanValue): Result<unknown, readonly ChangeProblem[]> {
  const settled = value.modules.map(settleTyped);
  const problems = settled.flatMap((row, index): ChangeProblem[] => {
    const sentence = isEmpty(row) ? null : moduleProblem(row);
    return sentence === null ? [] : [{ field: `modules.${index}`, sentence }];
  });
  if (problems.length > 0) return fail(problems);
  const { leftOut: _leftOut, ...scan } = value;
  const modules = mergeRows(settled.filter((row) => !isEmpty(row))).map(({ name, answered, codes }) => ({
    name: name.trim(),
    answered,
    codes: codes.map(keptCode),
  }));
  return ok({ ...scan, modules });
}
