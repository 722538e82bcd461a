// One thing that still stands between a vehicle and being ready. Which there are is in open-work.ts, how long they take in turnaround.ts.
import type { NamedKinds } from '../codes/code-name.ts';
import type { GateItem } from '../readiness/gate.ts';
import { type Day, daysBetween } from '../shared/day.ts';
import type { Vehicle } from '../vehicle/vehicle.ts';
import type { Cause } from './cause.ts';
import type { TurnaroundQuestion } from './turnaround.ts';
import { turnaroundDays } from './turnaround-cases.ts';
import type { TurnaroundKind, TurnaroundSettings } from './turnaround-settings.ts';
import type { WorkingCalendar } from './working-calendar.ts';

/** One thing still to come. First it waits, then it is worked on (minutes of an open shop); either may be nothing. */
export type OpenItem = {
  readonly id: string;
  readonly what: string;
  /** What a day spent on it is charged to. */
  readonly cause: Cause;
  readonly place: GateItem['place'];
  /** The items that come before it, by id. */
  readonly after: readonly string[];
  /** What to ask the history about the wait; null when it waits for nothing but the items before it. */
  readonly wait: TurnaroundQuestion | null;
  readonly minutes: number;
};

/** An item before it is known which of those before it are still open. */
export type Sketch = Omit<OpenItem, 'after'> & { readonly after: readonly (string | null)[] };

export type Sitting = {
  readonly vehicle: Vehicle;
  readonly today: Day;
  readonly settings: TurnaroundSettings;
  readonly calendar: WorkingCalendar;
  /** For naming codes as the shop does. */
  readonly codeKinds?: NamedKinds | undefined;
  /** The item that everything else waits for while the vehicle is not here. */
  readonly arrival: string | null;
};

type Asked = { readonly since?: Day | null; readonly promisedOn?: Day | null };

/** What to ask the history today about something that began on `since`, or begins later (null). */
export function question(
  kind: TurnaroundKind,
  groups: readonly string[],
  { today, calendar }: Pick<Sitting, 'today' | 'calendar'>,
  { since = null, promisedOn = null }: Asked = {},
): TurnaroundQuestion {
  return {
    kind,
    groups,
    elapsedDays: since === null ? 0 : turnaroundDays(kind, since, today, calendar),
    promisedInDays: promisedOn === null ? null : daysBetween(today, promisedOn),
  };
}

/** The id of the item that ends the wait for something; other items name it as what they come after. */
export const itemIds = {
  part: (id: string) => `part:${id}`,
  code: (id: string) => `code:${id}`,
  sublet: (id: string) => `sublet:${id}`,
  job: (id: string) => `job:${id}`,
  repair: (id: string) => `repair:${id}`,
} as const;
