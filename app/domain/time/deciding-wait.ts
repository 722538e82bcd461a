// Which open wait decides the next day of a vehicle that is held: by the rule of held-days.ts, as if no work were booked on it.
import type { NamedKinds } from '../codes/code-name.ts';
import type { Day } from '../shared/day.ts';
import type { Vehicle } from '../vehicle/vehicle.ts';
import type { Standing } from './cause.ts';
import { endOf, outlasts } from './held-days.ts';
import { type Wait, waitsOf } from './waits.ts';

/** A wait for one part, code or sublet work. */
export type OutsideWait = Wait & { readonly factId: string };

export type Deciding = {
  /** What the next day is charged to, and for what. */
  readonly cause: Standing;
  readonly what: string;
  /** The parts, codes and sublet work that end last together; empty when something else decides. */
  readonly factIds: readonly string[];
};

/**
 * Every wait open today. No stage of proving or presenting is among them: while a part, a code or sublet work is owed, the work is not
 * finished. `kinds`: the shop's kinds of codes, for what a wait for a code is called.
 */
export function openWaits(vehicle: Vehicle, kinds?: NamedKinds): readonly Wait[] {
  return vehicle.sale === null ? waitsOf(vehicle, [], kinds).filter(({ until }) => until === null) : [];
}

export function isOutside(wait: Wait): wait is OutsideWait {
  return wait.factId !== undefined;
}

/**
 * What decides the next day of a vehicle for which something is owed from outside: the wait that ends last. Several parts, codes or sublet
 * works that end last on the same day, or that nobody has promised, decide it together. Own definition, as in held-days.ts.
 */
export function decidingWait(vehicle: Vehicle, waits: readonly Wait[], today: Day): Deciding {
  if (vehicle.sale !== null) return { cause: 'sold', what: '', factIds: [] };
  if (vehicle.arrival.arrivedOn === null) return { cause: 'transit', what: vehicle.purchase.source, factIds: [] };
  let last: Wait | null = null;
  for (const wait of waits) if (last === null || outlasts(wait, last, today)) last = wait;
  if (last === null) return { cause: 'idle', what: '', factIds: [] };
  const end = endOf(last, today);
  const together = isOutside(last) ? waits.filter(isOutside).filter((wait) => endOf(wait, today) === end) : [];
  return { cause: last.cause, what: last.what, factIds: together.map(({ factId }) => factId) };
}
