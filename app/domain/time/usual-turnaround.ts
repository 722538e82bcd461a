// How long somebody outside usually takes, from the shop's own finished cases: by provider and kind, for people. Forecasts ask turnaround.ts.
import type { Day } from '../shared/day.ts';
import { eightiethOf, everyCase, knownCases, medianOf, type TurnaroundHistory } from './turnaround.ts';
import type { TurnaroundKind } from './turnaround-settings.ts';

export type Usual = {
  /** As named in turnaround-cases.ts, or all cases of the kind. */
  readonly group: string;
  readonly cases: number;
  /** Calendar days from asking to having it. */
  readonly medianDays: number;
  readonly eightiethDays: number;
  /** Of the cases with a promise, how many came after the first one. */
  readonly promised: number;
  readonly late: number;
};

function usualOf(history: TurnaroundHistory, kind: TurnaroundKind, group: string, asOf: Day): Usual {
  const { days, late } = knownCases(history, kind, group, asOf);
  return {
    group,
    cases: days.length,
    medianDays: medianOf(days),
    eightiethDays: eightiethOf(days),
    promised: late.length,
    late: late.filter((each) => each > 0).length,
  };
}

/** Of the narrowest group with enough cases; null when not even all cases of the kind are enough. `groups` narrow to wide. */
export function usualTurnaround(
  history: TurnaroundHistory,
  { kind, groups }: { readonly kind: TurnaroundKind; readonly groups: readonly string[] },
  { asOf, fewestCases }: { readonly asOf: Day; readonly fewestCases: number },
): Usual | null {
  for (const group of [...groups, everyCase]) {
    const usual = usualOf(history, kind, group, asOf);
    if (usual.cases >= fewestCases) return usual;
  }
  return null;
}

/** Whose cases these are, of the groups that turnaround-cases.ts names. */
export function amongWhom(group: string): 'provider-and-kind' | 'provider' | 'kind' | 'all' {
  if (group === everyCase) return 'all';
  if (!group.startsWith('provider: ')) return 'kind';
  return group.includes(', kind: ') ? 'provider-and-kind' : 'provider';
}

/** Of exactly this group, however few; null when there is no case. */
export function turnaroundOfGroup(
  history: TurnaroundHistory,
  kind: TurnaroundKind,
  group: string,
  asOf: Day,
): Usual | null {
  const usual = usualOf(history, kind, group, asOf);
  return usual.cases === 0 ? null : usual;
}
