// A new chase and a new try as their rows first show them. Pure: today, who and identity are passed in.
import type { CodeKindFacts } from '../../../../app/domain/codes/code-kinds.ts';
import type { AskWay, Chase, CodeTry } from '../../../../app/domain/codes/request-facts.ts';
import type { Day } from '../../../../app/domain/shared/day.ts';

/** In the way it was asked; a letter is chased by telephone. */
export function freshChase(
  id: string,
  { today, by, how }: { readonly today: Day; readonly by: string; readonly how: AskWay | null },
): Chase {
  return { id, chasedOn: today, by, how: how === null || how === 'letter' ? 'phone' : how, promisedOn: null, note: '' };
}

/** Until when a unit is locked by a wrong try now, as its kind of code says; null where nothing is known. */
export function lockedAfter(kind: Pick<CodeKindFacts, 'lockOutMinutes'> | null, now: string): string | null {
  const minutes = kind?.lockOutMinutes ?? null;
  return minutes === null ? null : new Date(Date.parse(now) + minutes * 60_000).toISOString();
}

export function freshTry(
  id: string,
  {
    today,
    by,
    result,
    lockedUntil = null,
  }: {
    readonly today: Day;
    readonly by: string;
    readonly result: CodeTry['result'];
    readonly lockedUntil?: string | null;
  },
): CodeTry {
  return { id, triedOn: today, by, result, triesLeft: null, lockedUntil, note: '' };
}
