// Compares two scans of the same vehicle: what became of each code and each module. A code that is gone is not called repaired here: that
// takes a test since the clear, and a module that was heard.
import type { ScanCodeStatus } from './scan.ts';
import { foldText } from './scanner-words.ts';

export type ScannedCode = {
  readonly code: string;
  readonly status: ScanCodeStatus;
  /** True where the status byte says that its test has not run since the clear (ISO 14229-1 Annex D.2, bit 4). */
  readonly isUnproven?: boolean;
};

export type ScannedModule = {
  readonly name: string;
  readonly answered: boolean;
  readonly codes: readonly ScannedCode[];
};

export type ScanContent = {
  readonly modules: readonly ScannedModule[];
  /** True while inspection monitors are incomplete, so tests are still to run; false when all ran; missing where nobody looked. */
  readonly areTestsOutstanding?: boolean;
};

/**
 * 'gone': no longer stored by a module that answered. 'cleared-not-proven': gone, or stored without failing, while its test has not run since
 * the clear. 'not-heard': the module did not answer the later scan or is not in it, so nothing is known.
 */
export type CodeChangeKind = 'gone' | 'cleared-not-proven' | 'stayed' | 'new' | 'not-heard';

export type CodeChange = {
  readonly module: string;
  readonly code: string;
  readonly change: CodeChangeKind;
  readonly before: ScanCodeStatus | null;
  readonly after: ScanCodeStatus | null;
  readonly sentence: string;
};

export type ModuleChangeKind = 'came-back' | 'fell-silent' | 'still-silent' | 'only-before' | 'only-after';

export type ModuleChange = { readonly module: string; readonly change: ModuleChangeKind; readonly sentence: string };

export type ScanComparison = {
  readonly codes: readonly CodeChange[];
  /** Modules whose answering changed or that still do not answer; those that answered both times are left out. */
  readonly modules: readonly ModuleChange[];
};

/**
 * What became of every code and module from `before` to `after`. Modules are the same when their names are, without regard to case,
 * accents and punctuation; a code that a module lists twice counts once, with its most serious status. Common practice, no source; the
 * meaning of "not proven" follows ISO 14229-1 Annex D.2.
 */
export function compareScans(before: ScanContent, after: ScanContent): ScanComparison {
  const beforeModules = mergeModules(before.modules);
  const afterModules = mergeModules(after.modules);
  const keys = new Set([...beforeModules.keys(), ...afterModules.keys()]);
  const codes: CodeChange[] = [];
  const modules: ModuleChange[] = [];
  for (const key of keys) {
    const old = beforeModules.get(key) ?? null;
    const now = afterModules.get(key) ?? null;
    const name = now?.name ?? old?.name ?? '';
    const moduleChange = changeOfModule(name, old, now);
    if (moduleChange !== null) modules.push(moduleChange);
    for (const code of new Set([...(old?.codes.keys() ?? []), ...(now?.codes.keys() ?? [])])) {
      const codeBefore = old?.codes.get(code) ?? null;
      const codeAfter = now?.codes.get(code) ?? null;
      const change = changeOfCode(codeBefore, codeAfter, now, after.areTestsOutstanding ?? false);
      codes.push({
        module: name,
        code,
        change,
        before: codeBefore?.status ?? null,
        after: codeAfter?.status ?? null,
        sentence: sayCodeChange(change, codeBefore, codeAfter, after.areTestsOutstanding ?? null),
      });
    }
  }
  return { codes, modules };
}

type MergedModule = { readonly name: string; answered: boolean; readonly codes: Map<string, ScannedCode> };

const seriousness: readonly ScanCodeStatus[] = ['unknown', 'history', 'pending', 'permanent', 'present'];

function mergeModules(modules: readonly ScannedModule[]): Map<string, MergedModule> {
  const merged = new Map<string, MergedModule>();
  for (const { name, answered, codes } of modules) {
    const key = foldText(name).replace(/[^\p{L}\p{N}]+/gu, '');
    const module: MergedModule = merged.get(key) ?? { name, answered: false, codes: new Map() };
    merged.set(key, module);
    module.answered ||= answered;
    for (const code of codes) {
      const known = module.codes.get(code.code);
      const isGraver = known === undefined || seriousness.indexOf(code.status) > seriousness.indexOf(known.status);
      if (isGraver) module.codes.set(code.code, code);
    }
  }
  return merged;
}

function changeOfModule(name: string, before: MergedModule | null, after: MergedModule | null): ModuleChange | null {
  const make = (change: ModuleChangeKind, sentence: string) => ({ module: name, change, sentence });
  if (after === null) return make('only-before', 'Not in the later scan: what it holds now is not known.');
  if (before === null) {
    return after.answered
      ? make('only-after', 'Not in the earlier scan: its codes may be older than they look.')
      : make('only-after', 'Not in the earlier scan, and it does not answer now.');
  }
  if (before.answered && !after.answered) return make('fell-silent', 'It answered before and does not answer now.');
  if (!before.answered && after.answered) return make('came-back', 'It did not answer before and answers now.');
  return after.answered ? null : make('still-silent', 'It did not answer either time.');
}

function changeOfCode(
  before: ScannedCode | null,
  after: ScannedCode | null,
  moduleAfter: MergedModule | null,
  areTestsOutstanding: boolean,
): CodeChangeKind {
  if (after === null) {
    if (moduleAfter === null || !moduleAfter.answered) return 'not-heard';
    return areTestsOutstanding ? 'cleared-not-proven' : 'gone';
  }
  // Listed by the module only because its test has not run yet; a code that fails is here whatever that bit says.
  if (after.isUnproven === true && (after.status === 'unknown' || after.status === 'history'))
    return 'cleared-not-proven';
  return before === null ? 'new' : 'stayed';
}

function sayCodeChange(
  change: CodeChangeKind,
  before: ScannedCode | null,
  after: ScannedCode | null,
  areTestsOutstanding: boolean | null,
): string {
  switch (change) {
    case 'gone':
      return areTestsOutstanding === null
        ? 'No longer stored. Whether its test has run since the clear was not looked at.'
        : 'No longer stored, and all monitors have run since the clear.';
    case 'cleared-not-proven':
      return 'Cleared, but not proven: its test has not run since. Drive, then scan again.';
    case 'not-heard':
      return 'Not known: its module was not heard in the later scan.';
    case 'new':
      return `New since the earlier scan (${after?.status ?? 'unknown'}).`;
    case 'stayed':
      return before?.status === after?.status
        ? `Still there (${after?.status ?? 'unknown'}).`
        : `Still there, ${before?.status ?? 'unknown'} before and ${after?.status ?? 'unknown'} now.`;
  }
}
