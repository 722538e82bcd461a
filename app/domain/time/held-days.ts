// Charges every day a vehicle is held to exactly one cause. The sum over the causes is the days held, always.

import type { NamedKinds } from '../codes/code-name.ts';
import type { Check } from '../fleet/shop.ts';
import { compareDays, type Day, dayFromNumber, dayNumber, daysBetween } from '../shared/day.ts';
import type { Vehicle } from '../vehicle/vehicle.ts';
import { type Cause, type Standing, waitCauses } from './cause.ts';
import { type StageSpan, spanOn, stageSpans } from './stages.ts';
import { type Wait, waitsOf } from './waits.ts';

/** A run of days charged to the same cause for the same reason. */
export type Stretch = { readonly cause: Cause; readonly from: Day; readonly days: number; readonly what: string };

export type HeldDays = {
  readonly heldDays: number;
  /** Without gaps from the day of purchase, in order. */
  readonly stretches: readonly Stretch[];
  readonly byCause: Readonly<Partial<Record<Cause, number>>>;
  /** What it stands at today, since when, and until when if anybody has said. */
  readonly now: {
    readonly standing: Standing;
    readonly since: Day;
    readonly what: string;
    readonly expectedOn: Day | null;
  };
};

const noEnd = '9999-12-31';

/** The day a wait ended, is expected to end, or never so far. A promise that has passed unkept counts as no promise. */
export function endOf(wait: Wait, lastDay: Day): Day {
  if (wait.until !== null) return wait.until;
  return wait.expectedOn !== null && wait.expectedOn >= lastDay ? wait.expectedOn : noEnd;
}

/** True when `a` is charged before `b`: it ends later; on the same day the earlier in the fixed order of causes. */
export function outlasts(a: Wait, b: Wait, lastDay: Day): boolean {
  const byEnd = compareDays(endOf(a, lastDay), endOf(b, lastDay));
  if (byEnd !== 0) return byEnd > 0;
  const byCause = waitCauses.indexOf(a.cause) - waitCauses.indexOf(b.cause);
  return byCause !== 0 ? byCause < 0 : a.from < b.from;
}

function workDaysOf(vehicle: Vehicle): ReadonlyMap<Day, string> {
  const days = new Map<Day, string>();
  for (const scan of vehicle.scans) days.set(scan.takenOn, 'scan');
  for (const attempt of vehicle.attempts) days.set(attempt.on, 'programming attempt');
  for (const labour of vehicle.labour) days.set(labour.workedOn, labour.what);
  return days;
}

type Facts = {
  readonly vehicle: Vehicle;
  readonly spans: readonly StageSpan[];
  readonly waits: readonly Wait[];
  readonly workDays: ReadonlyMap<Day, string>;
  /** Today, or the day of the sale: what was promised for later than that still stood. */
  readonly lastDay: Day;
};

type Charge = { readonly cause: Cause; readonly what: string; readonly wait: Wait | null };

function longestWait({ waits, lastDay }: Facts, day: Day): Wait | null {
  let longest: Wait | null = null;
  for (const wait of waits) {
    if (day < wait.from || (wait.until !== null && day >= wait.until)) continue;
    if (longest === null || outlasts(wait, longest, lastDay)) longest = wait;
  }
  return longest;
}

/**
 * The rule for one day, first that applies:
 * 1. work, a scan or a programming attempt booked on it: in work;
 * 2. before the arrival: in transit;
 * 3. all gates green by the end of it, as the record stood then: ready;
 * 4. of the waits open on it, the one that ends last (an open wait without a promise that still stands counts as latest), ties by
 *    the fixed order of causes;
 * 5. else idle, with the next thing that could have been done.
 * Own definition of this project ("common practice, no source").
 */
function chargeDay(day: Day, facts: Facts): Charge {
  const { vehicle, spans, workDays } = facts;
  const work = workDays.get(day);
  if (work !== undefined) return { cause: 'work', what: work, wait: null };
  const { arrivedOn } = vehicle.arrival;
  if (arrivedOn === null || day < arrivedOn) return { cause: 'transit', what: vehicle.purchase.source, wait: null };
  const span = spanOn(spans, day);
  if (span?.stage === 'ready') return { cause: 'ready', what: '', wait: null };
  const wait = longestWait(facts, day);
  if (wait !== null) return { cause: wait.cause, what: wait.what, wait };
  return { cause: 'idle', what: span?.nextText() ?? '', wait: null };
}

/**
 * Days held by cause from the day of purchase to the sale or to today. The first day is day 0 unless `countsFirstDay`; then the last
 * day counts too. `heldDays` is whole days, never negative: a vehicle bought today is held 0 days. The checklist is needed because a
 * day is ready, to verify or to present by the gates as they stood on it.
 */
export function chargeHeldDays(
  vehicle: Vehicle,
  checklist: readonly Check[],
  {
    today,
    countsFirstDay,
    codeKinds,
  }: { readonly today: Day; readonly countsFirstDay: boolean; readonly codeKinds?: NamedKinds },
): HeldDays {
  const { boughtOn } = vehicle.purchase;
  const lastDay = vehicle.sale?.soldOn ?? today;
  const heldDays = Math.max(0, daysBetween(boughtOn, lastDay) + (countsFirstDay ? 1 : 0));
  const spans = stageSpans(vehicle, checklist, lastDay, codeKinds);
  const facts: Facts = {
    vehicle,
    spans,
    waits: waitsOf(vehicle, spans, codeKinds),
    workDays: workDaysOf(vehicle),
    lastDay,
  };
  const stretches: Stretch[] = [];
  const byCause: Partial<Record<Cause, number>> = {};
  const firstNumber = dayNumber(boughtOn);
  for (let index = 0; index < heldDays; index += 1) {
    const day = dayFromNumber(firstNumber + index);
    const { cause, what } = chargeDay(day, facts);
    byCause[cause] = (byCause[cause] ?? 0) + 1;
    const last = stretches[stretches.length - 1];
    if (last && last.cause === cause && last.what === what)
      stretches[stretches.length - 1] = { ...last, days: last.days + 1 };
    else stretches.push({ cause, from: day, days: 1, what });
  }
  return { heldDays, stretches, byCause, now: standingNow(facts, stretches) };
}

/** A wait has stood since it began, though work on other things was booked in between; anything else since its run of days began. */
function standingNow(facts: Facts, stretches: readonly Stretch[]): HeldDays['now'] {
  const { sale, arrival } = facts.vehicle;
  if (sale !== null) return { standing: 'sold', since: sale.soldOn, what: sale.buyer, expectedOn: null };
  const { cause, what, wait } = chargeDay(facts.lastDay, facts);
  if (wait !== null) return { standing: cause, since: wait.from, what, expectedOn: wait.expectedOn };
  let since = facts.lastDay;
  for (let index = stretches.length - 1; index >= 0; index -= 1) {
    const stretch = stretches[index];
    if (stretch?.cause !== cause) break;
    since = stretch.from;
  }
  return { standing: cause, since, what, expectedOn: cause === 'transit' ? arrival.expectedOn : null };
}
