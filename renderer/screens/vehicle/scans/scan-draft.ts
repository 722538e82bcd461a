// A scan as its form holds it: the codes of each module as text, and a last empty row to type the next module in. Pure.
import type { ScanDraft, ScanModule } from '../../../../app/domain/diagnosis/scan.ts';
import { fail, ok, type Result } from '../../../../app/domain/shared/result.ts';
import type { ChangeProblem } from '../../../../app/domain/vehicle/change-problem.ts';
import type { Typed } from '../../../state/edit-draft.ts';
import { scanText } from '../../../text/vehicle-entries.ts';
import { readCodeText, writeCodeText } from './code-text.ts';

export type ModuleRow = { readonly name: string; readonly answered: boolean; readonly codes: string };
export type ScanValue = Omit<Typed<ScanDraft>, 'modules'> & {
  readonly id: string;
  readonly modules: readonly ModuleRow[];
};

const emptyRow: ModuleRow = { name: '', answered: true, codes: '' };

function isEmpty(row: ModuleRow): boolean {
  return row.name.trim() === '' && row.codes.trim() === '';
}

/** The rows with exactly one empty one at the end. */
export function withEmptyRow(rows: readonly ModuleRow[]): readonly ModuleRow[] {
  const last = rows[rows.length - 1];
  return last !== undefined && isEmpty(last) ? rows : [...rows, emptyRow];
}

export function scanValue(scan: ScanDraft): ScanValue {
  const rows = scan.modules.map(({ name, answered, codes }) => ({ name, answered, codes: writeCodeText(codes) }));
  return { ...scan, modules: withEmptyRow(rows) };
}

/** Modules of an earlier scan as rows to fill in again: the same vehicle has the same modules. */
export function rowsLike(modules: readonly ScanModule[]): readonly ModuleRow[] {
  return modules.map(({ name }) => ({ ...emptyRow, name }));
}

function moduleProblem(row: ModuleRow, rows: readonly ModuleRow[]): string | null {
  if (row.name.trim() === '') return scanText.moduleNameMissing;
  const same = rows.filter((other) => other.name.trim().toLowerCase() === row.name.trim().toLowerCase());
  if (same.length > 1) return scanText.moduleTwice;
  const { notUnderstood } = readCodeText(row.codes);
  return notUnderstood.length > 0 ? scanText.notUnderstood(notUnderstood) : null;
}

/** The scan to judge and save. Empty rows fall away; a silent module has no codes, since nobody could ask it. */
export function finishScan(value: ScanValue): Result<unknown, readonly ChangeProblem[]> {
  const problems = value.modules.flatMap((row, index): ChangeProblem[] => {
    const sentence = isEmpty(row) ? null : moduleProblem(row, value.modules);
    return sentence === null ? [] : [{ field: `modules.${index}`, sentence }];
  });
  if (problems.length > 0) return fail(problems);
  const modules = value.modules
    .filter((row) => !isEmpty(row))
    .map(({ name, answered, codes }) => ({
      name: name.trim(),
      answered,
      codes: answered ? readCodeText(codes).codes : [],
    }));
  return ok({ ...value, modules });
}
