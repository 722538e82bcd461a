// The comparison of two scans as rows of a table, a module each. What became of a code is judged in app/domain/diagnosis, not here.
import {
  type CodeChangeKind,
  compareScans,
  type ModuleChangeKind,
} from '../../../../app/domain/diagnosis/compare-scans.ts';
import type { Scan } from '../../../../app/domain/diagnosis/scan.ts';

export const codeColumns: readonly CodeChangeKind[] = ['gone', 'cleared-not-proven', 'stayed', 'new', 'not-heard'];

export type ComparisonRow = {
  readonly module: string;
  readonly answer: ModuleChangeKind | null;
  readonly codes: Readonly<Record<CodeChangeKind, readonly string[]>>;
};

/** Modules about which there is something to say, in the order of the comparison, and how many there are beside them. */
export function comparisonRows(
  before: Scan,
  after: Scan,
): { readonly rows: readonly ComparisonRow[]; readonly quiet: number } {
  const { codes, modules } = compareScans(before, after);
  const names = [...new Set([...modules, ...codes].map((change) => change.module))];
  const rows = names.map((module): ComparisonRow => {
    const of = (kind: CodeChangeKind) =>
      codes.filter((code) => code.module === module && code.change === kind).map(({ code }) => code);
    return {
      module,
      answer: modules.find((change) => change.module === module)?.change ?? null,
      codes: {
        gone: of('gone'),
        'cleared-not-proven': of('cleared-not-proven'),
        stayed: of('stayed'),
        new: of('new'),
        'not-heard': of('not-heard'),
      },
    };
  });
  return { rows, quiet: Math.max(0, after.modules.length - rows.filter((row) => row.answer !== 'only-before').length) };
}

/** Columns in which some row has a code; the others would only be empty. */
export function usedColumns(rows: readonly ComparisonRow[]): readonly CodeChangeKind[] {
  return codeColumns.filter((kind) => rows.some((row) => row.codes[kind].length > 0));
}
