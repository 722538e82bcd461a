// A new chase and a new try as their rows first show them. Pure: today, who and identity are passed in.
import type { AskWay, Chase, CodeTry } from '../../../../app/domain/codes/request-facts.ts';
import type { Day } from '../../../../app/domain/shared/day.ts';

/** In the way it was asked; a letter is chased by telephone. */
export function freshChase(
  id: string,
  { today, by, how }: { readonly today: Day; readonly by: string; readonly how: AskWay | null },
): Chase {
  return { id, chasedOn: today, by, how: how === null || how === 'letter' ? 'phone' : how, promisedOn: null, note: '' };
}

export function freshTry(
  id: string,
  { today, by, result }: { readonly today: Day; readonly by: string; readonly result: CodeTry['result'] },
): CodeTry {
  return { id, triedOn: today, by, result, triesLeft: null, lockedUntil: null, note: '' };
}
