// What a gate is: one thing that must be true before a vehicle is offered. How each is judged is in gates.ts.
import type { Day } from '../shared/day.ts';
import type { FactList, Section } from '../vehicle/change.ts';

export type Actor = 'manager' | 'technician' | 'sales' | 'outside';

/** One thing left to do under a gate: what, whose move it is, since when, and where in the record it is entered. */
export type GateItem = {
  readonly text: string;
  readonly who: Actor;
  readonly since: Day | null;
  readonly place: { readonly list: FactList; readonly id: string | null } | { readonly section: Section };
};

export type GateState = 'met' | 'open' | 'stale' | 'not-needed';

export type Gate = {
  /** Fixed key, or 'check:<id>' for a check of the shop's list. */
  readonly key: string;
  readonly title: string;
  readonly state: GateState;
  /** The day on which it was last met; null when open, stale, or when no day tells it. */
  readonly metOn: Day | null;
  readonly items: readonly GateItem[];
};

export function isHolding(gate: Gate): boolean {
  return gate.state === 'open' || gate.state === 'stale';
}
