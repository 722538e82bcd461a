// Two scans of one vehicle held against each other, module by module: what is gone, what stayed, what is new, who fell silent.
import type { Scan } from '../../../../app/domain/diagnosis/scan.ts';
import { compareDays } from '../../../../app/domain/shared/day.ts';

export type ModuleComparison = {
  readonly name: string;
  /** 'fell-silent': answered before, not after. 'came-back': the other way round. 'missing': not in one of the two scans. */
  readonly answer: 'answers' | 'silent' | 'fell-silent' | 'came-back' | 'only-before' | 'only-after';
  readonly gone: readonly string[];
  readonly stayed: readonly string[];
  readonly fresh: readonly string[];
};

function keyOf(name: string): string {
  return name.trim().toLowerCase();
}

/** The scans to hold against each other: the first before the repair, and the last after it. Null until both are there. */
export function scansToCompare(scans: readonly Scan[]): { readonly before: Scan; readonly after: Scan } | null {
  const sorted = [...scans].sort((a, b) => compareDays(a.takenOn, b.takenOn) || (a.entered.at < b.entered.at ? -1 : 1));
  const before = sorted.find((scan) => scan.kind !== 'post-repair');
  const after = sorted.findLast((scan) => scan.kind === 'post-repair');
  return before === undefined || after === undefined ? null : { before, after };
}

/** Modules in the order of the earlier scan, then those only in the later. Codes are compared by their whole text. */
export function compareScans(before: Scan, after: Scan): readonly ModuleComparison[] {
  const names = [...before.modules, ...after.modules].map((module) => module.name);
  const unique = names.filter((name, at) => names.findIndex((other) => keyOf(other) === keyOf(name)) === at);
  return unique.map((name): ModuleComparison => {
    const earlier = before.modules.find((module) => keyOf(module.name) === keyOf(name));
    const later = after.modules.find((module) => keyOf(module.name) === keyOf(name));
    const had = new Set(earlier?.codes.map(({ code }) => code) ?? []);
    const has = new Set(later?.codes.map(({ code }) => code) ?? []);
    return {
      name,
      answer: answerOf(earlier, later),
      // A module that does not answer has not lost its codes: nobody could ask it.
      gone: later?.answered ? [...had].filter((code) => !has.has(code)) : [],
      stayed: [...had].filter((code) => has.has(code)),
      fresh: [...has].filter((code) => !had.has(code)),
    };
  });
}

type Seen = { readonly answered: boolean } | undefined;

function answerOf(earlier: Seen, later: Seen): ModuleComparison['answer'] {
  if (later === undefined) return 'only-before';
  if (earlier === undefined) return 'only-after';
  if (earlier.answered === later.answered) return later.answered ? 'answers' : 'silent';
  return later.answered ? 'came-back' : 'fell-silent';
}
