// The shop's own turnaround history, and what it answers when asked how much longer something will take. Draws nothing at random.
import { type Day, dayNumber } from '../shared/day.ts';
import type { TurnaroundCase } from './turnaround-cases.ts';
import type { TurnaroundKind, TurnaroundSettings } from './turnaround-settings.ts';

/** Cases of one group, earliest ended first, so that what was known on a day is the beginning of the list. */
type Group = { readonly ended: number[]; readonly days: number[]; readonly late: (number | null)[] };

export type TurnaroundHistory = { readonly groups: ReadonlyMap<string, Group> };

/** The group of all cases of a kind. */
export const everyCase = 'all';

function keyOf(kind: TurnaroundKind, group: string): string {
  return `${kind}|${group}`;
}

/** Sorts the cases into their groups. Cases of the whole fleet, sold vehicles included, belong together in one history. */
export function turnaroundHistory(cases: Iterable<TurnaroundCase>): TurnaroundHistory {
  const sorted = [...cases].sort((a, b) => (a.endedOn < b.endedOn ? -1 : a.endedOn > b.endedOn ? 1 : 0));
  const groups = new Map<string, Group>();
  for (const { kind, groups: names, days, lateDays, endedOn } of sorted)
    for (const name of [...names, everyCase]) {
      const key = keyOf(kind, name);
      const group = groups.get(key) ?? { ended: [], days: [], late: [] };
      group.ended.push(dayNumber(endedOn));
      group.days.push(days);
      group.late.push(lateDays);
      groups.set(key, group);
    }
  return { groups };
}

export type TurnaroundQuestion = {
  readonly kind: TurnaroundKind;
  /** Narrow to wide, as in the cases. */
  readonly groups: readonly string[];
  /** How long it has gone on already. */
  readonly elapsedDays: number;
  /** Days from today to the promised day, negative when it has passed; null without a promise. */
  readonly promisedInDays: number | null;
};

export type TurnaroundAnswer = {
  /** Days still to go, one for each case, each as likely as any other; ascending, never empty. */
  readonly daysToGo: readonly number[];
  /** What they rest on, for people: earlier turnarounds, how earlier promises were kept, a promise taken at its word, or a setting. */
  readonly basis: 'turnaround' | 'promises' | 'promise' | 'setting';
  readonly group: string;
  /** How many earlier cases; 0 for a promise taken at its word and for a setting. */
  readonly cases: number;
};

function knownCount({ ended }: Group, before: number): number {
  let low = 0;
  let high = ended.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((ended[middle] ?? before) < before) low = middle + 1;
    else high = middle;
  }
  return low;
}

function answerFrom(
  basis: TurnaroundAnswer['basis'],
  group: string,
  daysToGo: number[],
  cases = daysToGo.length,
): TurnaroundAnswer {
  return { daysToGo: daysToGo.sort((a, b) => a - b), basis, group, cases };
}

/** The narrowest group with enough cases that fit; each case gives the days still to go, or null when it does not fit. */
function narrowest(
  history: TurnaroundHistory,
  { kind, groups }: TurnaroundQuestion,
  { before, fewestCases }: { readonly before: number; readonly fewestCases: number },
  toGo: (days: number, late: number | null) => number | null,
): { readonly name: string; readonly days: number[] } | null {
  for (const name of [...groups, everyCase]) {
    const group = history.groups.get(keyOf(kind, name));
    if (!group) continue;
    const count = knownCount(group, before);
    const days: number[] = [];
    for (let at = 0; at < count; at += 1) {
      const left = toGo(group.days[at] ?? 0, group.late[at] ?? null);
      if (left !== null) days.push(left);
    }
    if (days.length >= fewestCases) return { name, days };
  }
  return null;
}

/**
 * How many more days, as the shop knew on `asOf` (cases that ended before that day). In turn, each from the narrowest group with
 * enough cases:
 * 1. a promise: earlier promises were kept so many days late; when it has passed, only those that came as late as today or later;
 * 2. a promise that still stands and no history of promises: the promised day;
 * 3. earlier cases that took at least as long as this one has already;
 * 4. it has gone on longer than any: as if it began today, by all cases or the setting, at least one more day;
 * 5. the setting, less the days gone by.
 * Own definition ("common practice, no source"); resampling earlier cases is the empirical distribution.
 */
export function askTurnaround(
  history: TurnaroundHistory,
  question: TurnaroundQuestion,
  asOf: Day,
  settings: TurnaroundSettings,
): TurnaroundAnswer {
  const { kind, elapsedDays, promisedInDays } = question;
  const scope = { before: dayNumber(asOf), fewestCases: settings.fewestCases };
  if (promisedInDays !== null) {
    const found = narrowest(history, question, scope, (_days, late) => {
      if (late === null) return null;
      const left = promisedInDays + late;
      return left >= 0 ? left : promisedInDays >= 0 ? 0 : null;
    });
    if (found) return answerFrom('promises', found.name, found.days);
    if (promisedInDays >= 0) return answerFrom('promise', everyCase, [promisedInDays], 0);
  }
  const lasting = narrowest(history, question, scope, (days) => (days >= elapsedDays ? days - elapsedDays : null));
  if (lasting) return answerFrom('turnaround', lasting.name, lasting.days);
  const setting = settings.days[kind];
  if (elapsedDays < setting || elapsedDays === 0) return answerFrom('setting', everyCase, [setting - elapsedDays], 0);
  const anew = narrowest(history, { ...question, groups: [] }, scope, (days) => Math.max(1, days));
  if (anew) return answerFrom('turnaround', anew.name, anew.days);
  return answerFrom('setting', everyCase, [Math.max(1, setting)], 0);
}

/** The middle one; of an even number the earlier of the two. */
export function medianOf(ascending: readonly number[]): number {
  return ascending[Math.floor((ascending.length - 1) / 2)] ?? 0;
}

/** The smallest that at least 80 of 100 do not exceed (nearest rank); 0 of none. */
export function eightiethOf(ascending: readonly number[]): number {
  return ascending[Math.max(0, Math.ceil((80 * ascending.length) / 100) - 1)] ?? 0;
}

/** The days of each case of this group that the shop knew on `asOf`, ascending, and how late those with a promise came. */
export function knownCases(
  history: TurnaroundHistory,
  kind: TurnaroundKind,
  name: string,
  asOf: Day,
): { readonly days: readonly number[]; readonly late: readonly number[] } {
  const group = history.groups.get(keyOf(kind, name));
  if (!group) return { days: [], late: [] };
  const count = knownCount(group, dayNumber(asOf));
  return {
    days: group.days.slice(0, count).sort((a, b) => a - b),
    late: group.late.slice(0, count).filter((late) => late !== null),
  };
}

export type GroupSummary = {
  readonly kind: TurnaroundKind;
  readonly group: string;
  readonly cases: number;
  readonly medianDays: number;
  readonly longestDays: number;
  /** Of the cases with a promise, how many came after it. */
  readonly promised: number;
  readonly late: number;
};

/** Each group of these kinds as known on `asOf`, the slowest first: who keeps the shop waiting. */
export function turnaroundSummary(
  history: TurnaroundHistory,
  kinds: readonly TurnaroundKind[],
  asOf: Day,
): readonly GroupSummary[] {
  const before = dayNumber(asOf);
  const rows: GroupSummary[] = [];
  for (const [key, group] of history.groups) {
    const at = key.indexOf('|');
    const kind = kinds.find((one) => one === key.slice(0, at));
    const cases = knownCount(group, before);
    if (kind === undefined || cases === 0) continue;
    const days = group.days.slice(0, cases).sort((a, b) => a - b);
    const promised = group.late.slice(0, cases).filter((late) => late !== null);
    rows.push({
      kind,
      group: key.slice(at + 1),
      cases,
      medianDays: medianOf(days),
      longestDays: days[days.length - 1] ?? 0,
      promised: promised.length,
      late: promised.filter((late) => late > 0).length,
    });
  }
  return rows.sort((a, b) => b.medianDays - a.medianDays || b.longestDays - a.longestDays);
}
