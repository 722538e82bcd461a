// Compares two scans of the same vehicle: what became of each code and each module. A code that is gone is not called repaired here: that
// takes a test since the clear, and a module that was heard.
import { type TestOfCode, testOfCode } from './monitor-of-code.ts';
import { type MonitorReading, monitorWords, readMonitors } from './readiness-monitors.ts';
import { type MergedModule, matchModules, mergeModules } from './same-module.ts';
import type { Scan, ScanCodeStatus } from './scan.ts';
import { readStatusByte } from './status-byte.ts';

export type ScannedCode = {
  readonly code: string;
  readonly status: ScanCodeStatus;
  /** True where the status byte says that its test has not run since the clear (ISO 14229-1 Annex D.2, bit 4). */
  readonly isUnproven?: boolean;
  readonly statusByte?: number | null;
};

export type ScannedModule = {
  readonly name: string;
  readonly answered: boolean;
  readonly codes: readonly ScannedCode[];
};

export type ScanContent = {
  readonly modules: readonly ScannedModule[];
  /** The inspection monitors at that scan; missing or null where nobody looked, or where the vehicle has none. */
  readonly monitors?: MonitorReading | null;
};

/** What of a kept scan is compared. */
export function contentOf(scan: Pick<Scan, 'modules' | 'monitorBytes'>): ScanContent {
  return { modules: scan.modules, monitors: scan.monitorBytes === null ? null : readMonitors(scan.monitorBytes) };
}

/**
 * 'gone': no longer stored by a module that answered. 'cleared-not-proven': gone, or stored without failing, while its test has not run since
 * the clear. 'not-heard': the module did not answer the later scan or is not in it, so nothing is known.
 */
export type CodeChangeKind = 'gone' | 'cleared-not-proven' | 'stayed' | 'new' | 'not-heard';

export type CodeChange = {
  /** As the later scan names it, else the earlier one. */
  readonly module: string;
  /** As the earlier scan names it; null where it was not in it. */
  readonly moduleBefore: string | null;
  readonly code: string;
  readonly change: CodeChangeKind;
  readonly before: ScanCodeStatus | null;
  readonly after: ScanCodeStatus | null;
  /** Gone, and its test is known to have run since the clear without failing. */
  readonly isProven: boolean;
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
 * accents and punctuation, or when each scan has exactly one of their kind; a code that a module lists twice counts once, with its most
 * serious status. Common practice, no source; the meaning of "not proven" follows ISO 14229-1 Annex D.2 and the monitors of SAE J1979.
 */
export function compareScans(before: ScanContent, after: ScanContent): ScanComparison {
  const pairs = matchModules(mergeModules(before.modules), mergeModules(after.modules));
  const codes: CodeChange[] = [];
  const modules: ModuleChange[] = [];
  for (const { old, now } of pairs) {
    const name = now?.name ?? old?.name ?? '';
    const moduleChange = changeOfModule(name, old, now);
    if (moduleChange !== null) modules.push(moduleChange);
    for (const code of new Set([...(old?.codes.keys() ?? []), ...(now?.codes.keys() ?? [])])) {
      const codeBefore = old?.codes.get(code) ?? null;
      const codeAfter = now?.codes.get(code) ?? null;
      const test = testOfCode(code, after.monitors ?? null);
      const change = changeOfCode(codeBefore, codeAfter, now, test);
      codes.push({
        module: name,
        moduleBefore: old?.name ?? null,
        code,
        change,
        before: codeBefore?.status ?? null,
        after: codeAfter?.status ?? null,
        isProven: change === 'gone' && (codeAfter !== null || test.state === 'run'),
        sentence: sayCodeChange(change, codeBefore, codeAfter, test),
      });
    }
  }
  return { codes, modules };
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

/** Listed by the module, but only because its test has run since the clear and passed. */
function isProved(code: ScannedCode): boolean {
  return code.status === 'unknown' && typeof code.statusByte === 'number' && readStatusByte(code.statusByte).isProved;
}

function changeOfCode(
  before: ScannedCode | null,
  after: ScannedCode | null,
  moduleAfter: MergedModule | null,
  test: TestOfCode,
): CodeChangeKind {
  if (after === null) {
    if (moduleAfter === null || !moduleAfter.answered) return 'not-heard';
    return test.state === 'outstanding' ? 'cleared-not-proven' : 'gone';
  }
  // Listed by the module only because its test has not run yet; a code that fails is here whatever that bit says.
  if (after.isUnproven === true && (after.status === 'unknown' || after.status === 'history'))
    return 'cleared-not-proven';
  if (isProved(after)) return 'gone';
  return before === null ? 'new' : 'stayed';
}

function sayCodeChange(
  change: CodeChangeKind,
  before: ScannedCode | null,
  after: ScannedCode | null,
  test: TestOfCode,
): string {
  switch (change) {
    case 'gone':
      if (after !== null) return 'Its test has run since the clear and passed.';
      if (test.state === 'not-known')
        return 'No longer stored. Whether its test has run since the clear was not looked at.';
      return test.monitor === null
        ? 'No longer stored, and all monitors have run since the clear.'
        : `No longer stored, and its monitor (${monitorWords[test.monitor]}) has run since the clear.`;
    case 'cleared-not-proven':
      return after === null && test.monitor !== null
        ? `Cleared, but not proven: its monitor (${monitorWords[test.monitor]}) has not run since. Drive, then scan again.`
        : 'Cleared, but not proven: its test has not run since. Drive, then scan again.';
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
