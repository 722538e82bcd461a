// The comparison of two scans as rows to read: what needs somebody first, what is gone last. What became of a code is judged in
// app/domain/diagnosis, not here.
import {
  type CodeChange,
  type CodeChangeKind,
  compareScans,
  contentOf,
  type ModuleChange,
} from '../../../../app/domain/diagnosis/compare-scans.ts';
import { moduleKey } from '../../../../app/domain/diagnosis/same-module.ts';
import type { Scan, ScanCode } from '../../../../app/domain/diagnosis/scan.ts';

export const changeOrder: readonly CodeChangeKind[] = ['new', 'stayed', 'cleared-not-proven', 'not-heard', 'gone'];

export type ComparisonCode = CodeChange & {
  /** As the later scan lists it, else the earlier one: its words and its status byte. */
  readonly listed: ScanCode | null;
};
export type ComparisonGroup = { readonly kind: CodeChangeKind; readonly codes: readonly ComparisonCode[] };
export type ComparisonReading = {
  readonly modules: readonly ModuleChange[];
  readonly groups: readonly ComparisonGroup[];
};

function listedIn(scan: Scan, module: string | null, code: string): ScanCode | null {
  if (module === null) return null;
  const key = moduleKey(module);
  const codes = scan.modules.filter((one) => moduleKey(one.name) === key).flatMap((one) => one.codes);
  return codes.find((one) => one.code === code) ?? null;
}

export function readComparison(before: Scan, after: Scan): ComparisonReading {
  const { codes, modules } = compareScans(contentOf(before), contentOf(after));
  const groups = changeOrder.map((kind) => ({
    kind,
    codes: codes
      .filter((code) => code.change === kind)
      .map((code) => ({
        ...code,
        listed: listedIn(after, code.module, code.code) ?? listedIn(before, code.moduleBefore, code.code),
      })),
  }));
  return { modules, groups: groups.filter((group) => group.codes.length > 0) };
}
