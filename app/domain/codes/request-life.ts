// Where a code request stands, derived from its dated facts: drafted, asked, chased, answered, tried, closed. Decides nothing.
import { type Day, laterDay } from '../shared/day.ts';
import type { CodeKindFacts } from './code-kinds.ts';
import type { Chase, CodeTry, RequestFacts } from './request-facts.ts';

export type RequestStanding =
  | { readonly state: 'drafted'; readonly since: Day }
  | { readonly state: 'asked'; readonly since: Day; readonly expectedOn: Day | null }
  | { readonly state: 'chased'; readonly since: Day; readonly times: number; readonly expectedOn: Day | null }
  | { readonly state: 'answered'; readonly since: Day; readonly triesLeft: number | null }
  | { readonly state: 'refused'; readonly since: Day }
  | { readonly state: 'wrong'; readonly since: Day; readonly triesLeft: number | null }
  /** `until` null: the device did not say for how long. */
  | { readonly state: 'locked'; readonly since: Day; readonly until: string | null }
  | { readonly state: 'right'; readonly since: Day }
  | { readonly state: 'closed'; readonly since: Day; readonly why: string };
export type RequestState = RequestStanding['state'];

/** A few words for a column. */
export const requestStateNames: Readonly<Record<RequestState, string>> = {
  drafted: 'not asked yet',
  asked: 'asked',
  chased: 'chased',
  answered: 'here, not tried',
  refused: 'refused',
  wrong: 'tried, wrong',
  locked: 'device locked',
  right: 'works',
  closed: 'closed',
};

function lockRanOut(attempt: CodeTry, now: string): boolean {
  return attempt.lockedUntil !== null && attempt.lockedUntil <= now;
}

/**
 * How many wrong codes the device will still take: what it showed last, less the wrong tries since; else what is usual for the kind,
 * less the wrong tries; null when nobody knows. A lock that has run out, and a right code, begin the count anew (own definition, common
 * practice, no source: the maker's service information comes first). `now` is an ISO instant.
 */
export function triesLeft(
  tries: readonly CodeTry[],
  kind: Pick<CodeKindFacts, 'triesAllowed'> | null,
  now: string,
): number | null {
  let left = kind?.triesAllowed ?? null;
  for (const attempt of tries) {
    if (attempt.result === 'right' || lockRanOut(attempt, now)) left = kind?.triesAllowed ?? null;
    else left = attempt.triesLeft ?? (left === null ? null : Math.max(0, left - 1));
  }
  return left;
}

function standingAfterTry(
  last: CodeTry,
  request: Pick<RequestFacts, 'tries'>,
  kind: Pick<CodeKindFacts, 'triesAllowed'> | null,
  now: string,
): RequestStanding {
  if (last.result === 'right') return { state: 'right', since: last.triedOn };
  const left = triesLeft(request.tries, kind, now);
  const isLocked = last.lockedUntil === null ? left === 0 : last.lockedUntil > now;
  if (isLocked) return { state: 'locked', since: last.triedOn, until: last.lockedUntil };
  return { state: 'wrong', since: last.triedOn, triesLeft: left };
}

/** Where the request stands at the instant `now` (ISO). `kind` null: the shop does not know this kind any more. */
export function requestStanding(
  request: RequestFacts,
  kind: Pick<CodeKindFacts, 'triesAllowed'> | null,
  now: string,
): RequestStanding {
  const { askedOn, answeredOn, outcome, chases } = request;
  if (request.closedOn !== null) return { state: 'closed', since: request.closedOn, why: request.closedWhy };
  const lastTry = request.tries.at(-1);
  if (lastTry) return standingAfterTry(lastTry, request, kind, now);
  if (answeredOn !== null && outcome === 'refused') return { state: 'refused', since: answeredOn };
  if (answeredOn !== null) return { state: 'answered', since: answeredOn, triesLeft: triesLeft([], kind, now) };
  if (askedOn === null) return { state: 'drafted', since: request.notedOn };
  const expectedOn = promisedFor(request);
  if (chases.length === 0) return { state: 'asked', since: askedOn, expectedOn };
  const since = chases.map((chase) => chase.chasedOn).reduce(laterDay);
  return { state: 'chased', since, times: chases.length, expectedOn };
}

/** The days of tries that had failed, up to a right one or the closing; the last run is open (`until` null) while nothing else works. */
export function failedRuns({
  tries,
  closedOn,
}: Pick<RequestFacts, 'tries' | 'closedOn'>): readonly { readonly from: Day; readonly until: Day | null }[] {
  const runs: { from: Day; until: Day | null }[] = [];
  let from: Day | null = null;
  for (const { result, triedOn } of tries) {
    if (result === 'wrong') from ??= triedOn;
    else if (from !== null) {
      runs.push({ from, until: triedOn });
      from = null;
    }
  }
  if (from !== null) runs.push({ from, until: closedOn });
  return runs;
}

/** Since when a code that was given has not worked; null when it works, was not tried, or nobody wants it any more. */
export function failsSince(request: Pick<RequestFacts, 'tries' | 'closedOn'>): Day | null {
  return failedRuns(request).find(({ until }) => until === null)?.from ?? null;
}

/** The day it is expected: as promised when chased last, else as expected when asked; null when nobody has named one. */
export function promisedFor(request: {
  readonly chases: readonly Pick<Chase, 'chasedOn' | 'promisedOn'>[];
  readonly expectedOn: Day | null;
}): Day | null {
  if (request.chases.length === 0) return request.expectedOn;
  const latest = [...request.chases].sort((a, b) => (a.chasedOn < b.chasedOn ? -1 : a.chasedOn > b.chasedOn ? 1 : 0));
  return latest.findLast((chase) => chase.promisedOn !== null)?.promisedOn ?? request.expectedOn;
}
