// Charges every day a vehicle is held to exactly one cause. The sum over the causes is the days held, always.

import type { Readiness } from '../readiness/gates.ts';
import { compareDays, type Day, dayFromNumber, dayNumber, daysBetween } from '../shared/day.ts';
import type { Vehicle } from '../vehicle/vehicle.ts';
import { type Cause, type Standing, waitCauses } from './cause.ts';
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
function endOf(wait: Wait, today: Day): Day {
  if (wait.until !== null) return wait.until;
  return wait.expectedOn !== null && wait.expectedOn >= today ? wait.expectedOn : noEnd;
}

/** True when `a` is charged before `b`: it ends later; on the same day the earlier in the fixed order of causes. */
function outlasts(a: Wait, b: Wait, today: Day): boolean {
  const byEnd = compareDays(endOf(a, today), endOf(b, today));
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

type Charge = { readonly cause: Cause; readonly what: string; readonly expectedOn: Day | null };

/** What it would take to move an idle vehicle: the first open item whose move is the shop's own. */
function nextOwnMove(readiness: Readiness): string {
  const items = readiness.gates.flatMap((gate) => gate.items);
  return (items.find((item) => item.who !== 'outside') ?? items[0])?.text ?? '';
}

/**
 * The rule for one day, first that applies:
 * 1. work, a scan or a programming attempt booked on it: in work;
 * 2. before the arrival: in transit;
 * 3. all gates green by then: ready;
 * 4. of the waits open on it, the one that ends last (an open wait without a promise that still stands counts as latest), ties by
 *    the fixed order of causes;
 * 5. else idle.
 * Own definition of this project ("common practice, no source").
 */
function chargeDay(
  day: Day,
  facts: {
    readonly vehicle: Vehicle;
    readonly readiness: Readiness;
    readonly waits: readonly Wait[];
    readonly workDays: ReadonlyMap<Day, string>;
    readonly today: Day;
  },
): Charge {
  const { vehicle, readiness, waits, workDays, today } = facts;
  const work = workDays.get(day);
  if (work !== undefined) return { cause: 'work', what: work, expectedOn: null };
  const { arrivedOn, expectedOn } = vehicle.arrival;
  if (arrivedOn === null || day < arrivedOn) return { cause: 'transit', what: vehicle.purchase.source, expectedOn };
  if (readiness.readyOn !== null && day >= readiness.readyOn) return { cause: 'ready', what: '', expectedOn: null };
  let longest: Wait | null = null;
  for (const wait of waits) {
    if (day < wait.from || (wait.until !== null && day >= wait.until)) continue;
    if (longest === null || outlasts(wait, longest, today)) longest = wait;
  }
  if (longest !== null)
    return { cause: longest.cause, what: longest.what, expectedOn: longest.until === null ? longest.expectedOn : null };
  return { cause: 'idle', what: day === today ? nextOwnMove(readiness) : '', expectedOn: null };
}

/**
 * Days held by cause from the day of purchase to the sale or to today. The first day is day 0 unless `countsFirstDay`; then the last
 * day counts too. `heldDays` is whole days, never negative: a vehicle bought today is held 0 days.
 */
export function chargeHeldDays(
  vehicle: Vehicle,
  readiness: Readiness,
  { today, countsFirstDay }: { readonly today: Day; readonly countsFirstDay: boolean },
): HeldDays {
  const { boughtOn } = vehicle.purchase;
  const lastDay = vehicle.sale?.soldOn ?? today;
  const heldDays = Math.max(0, daysBetween(boughtOn, lastDay) + (countsFirstDay ? 1 : 0));
  const facts = { vehicle, readiness, waits: waitsOf(vehicle, readiness), workDays: workDaysOf(vehicle), today };
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
  return { heldDays, stretches, byCause, now: standingNow(vehicle, facts, stretches) };
}

function standingNow(
  vehicle: Vehicle,
  facts: Parameters<typeof chargeDay>[1],
  stretches: readonly Stretch[],
): HeldDays['now'] {
  if (vehicle.sale !== null)
    return { standing: 'sold', since: vehicle.sale.soldOn, what: vehicle.sale.buyer, expectedOn: null };
  const { cause, what, expectedOn } = chargeDay(facts.today, facts);
  let since = facts.today;
  for (let index = stretches.length - 1; index >= 0; index -= 1) {
    const stretch = stretches[index];
    if (stretch?.cause !== cause) break;
    since = stretch.from;
  }
  return { standing: cause, since, what, expectedOn };
}
