// How long code providers take, from the shop's own answered requests, and when to chase next. No working calendar in here.
import { addDays, type Day, daysBetween, laterDay } from '../shared/day.ts';
import type { RequestFacts } from './request-facts.ts';
import { promisedFor } from './request-life.ts';

export type AskedAndAnswered = Pick<RequestFacts, 'kind' | 'askedOf' | 'askedOn' | 'answeredOn'>;

export type CodeTurnaround = {
  /** As it was written most recently. */
  readonly provider: string;
  readonly kind: string;
  readonly count: number;
  /** Calendar days from asking to the answer, given or refused. The median may be a half. */
  readonly medianDays: number;
  readonly eightiethDays: number;
};

/** Providers are told apart by name, whatever the case and the spaces. */
function providerKey(name: string): string {
  return name.trim().replace(/\s+/g, ' ').toLowerCase();
}

/** The middle value; the mean of the two middle ones where the count is even. */
function medianOf(sorted: readonly number[]): number {
  const middle = Math.floor(sorted.length / 2);
  const upper = sorted[middle] ?? 0;
  return sorted.length % 2 === 1 ? upper : ((sorted[middle - 1] ?? 0) + upper) / 2;
}

/** Nearest rank: the smallest value that at least this share of all values does not exceed. `percent` in whole percent. */
function percentileOf(sorted: readonly number[], percent: number): number {
  return sorted[Math.max(0, Math.ceil((percent * sorted.length) / 100) - 1)] ?? 0;
}

/**
 * Turnaround by provider and kind over the requests that were asked and answered. Requests still open are left out, so a provider who has
 * lately become slow looks quicker than he is. Sorted by provider and kind.
 */
export function codeTurnaround(history: readonly AskedAndAnswered[]): readonly CodeTurnaround[] {
  const groups = new Map<string, { provider: string; latest: Day; kind: string; days: number[] }>();
  for (const { kind, askedOf, askedOn, answeredOn } of history) {
    if (askedOn === null || answeredOn === null || answeredOn < askedOn || providerKey(askedOf) === '') continue;
    const key = JSON.stringify([providerKey(askedOf), kind]);
    const group = groups.get(key) ?? { provider: askedOf.trim(), latest: askedOn, kind, days: [] };
    if (askedOn >= group.latest) Object.assign(group, { provider: askedOf.trim(), latest: askedOn });
    group.days.push(daysBetween(askedOn, answeredOn));
    groups.set(key, group);
  }
  return [...groups.entries()]
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([, { provider, kind, days }]) => {
      const sorted = [...days].sort((a, b) => a - b);
      return {
        provider,
        kind,
        count: sorted.length,
        medianDays: medianOf(sorted),
        eightiethDays: percentileOf(sorted, 80),
      };
    });
}

/** The line for this provider and kind; null when nothing was ever answered. */
export function turnaroundOf(
  turnaround: readonly CodeTurnaround[],
  provider: string,
  kind: string,
): CodeTurnaround | null {
  const key = providerKey(provider);
  return turnaround.find((line) => line.kind === kind && providerKey(line.provider) === key) ?? null;
}

/** Days after asking when nothing is known about the provider (common practice, no source). */
export const firstChaseAfterDays = 3;
/** Days between two chases when the provider names no day (common practice, no source). */
export const nextChaseAfterDays = 2;

/**
 * The day to chase next, not before today; null when the request was not asked, is answered or closed. The day after a promised or
 * expected day; else the day after which four of five answers of this provider and kind had come, counted from asking; after a chase
 * without a promise two days on. Own definition.
 */
export function nextChaseOn(
  request: Pick<RequestFacts, 'kind' | 'askedOf' | 'askedOn' | 'answeredOn' | 'closedOn' | 'expectedOn' | 'chases'>,
  turnaround: readonly CodeTurnaround[],
  today: Day,
): Day | null {
  const { askedOn, chases } = request;
  if (askedOn === null || request.answeredOn !== null || request.closedOn !== null) return null;
  const lastChase = chases.map((chase) => chase.chasedOn).reduce(laterDay, askedOn);
  const promised = promisedFor(request);
  // A promise that was already over when the provider was chased last has been dealt with.
  if (promised !== null && promised >= lastChase) return laterDay(addDays(promised, 1), today);
  if (chases.length > 0) return laterDay(addDays(lastChase, nextChaseAfterDays), today);
  const usual = turnaroundOf(turnaround, request.askedOf, request.kind);
  const wait = usual === null ? firstChaseAfterDays : usual.eightiethDays + 1;
  return laterDay(addDays(askedOn, wait), today);
}
