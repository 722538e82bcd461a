// Tells the history of the vehicles of one open fleet: an entry for each change, on the disk before the change that it tells of.
// Called in the fleet's queue only. Never rewrites: what stands there, stays.
import { changedParts, type HistoryKind, presencePart } from '../domain/people/history-entry.ts';
import { fail } from '../domain/shared/result.ts';
import type { Vehicle } from '../domain/vehicle/vehicle.ts';
import { appendHistory } from './change-log.ts';
import type { Announce, Outcome } from './fleet-records.ts';
import { readHistory } from './read-change-log.ts';
import type { StorageProblem } from './storage-problem.ts';

/** Who does it and what a person would call it. Never the value of a code. */
export type Telling = {
  readonly by: string;
  readonly kind: HistoryKind;
  readonly label: string;
  /** Why, where a reason is owed. */
  readonly reason?: string;
  /** For what leaves the record as it is: the fact it is about, 'codeRequests/request-1'. */
  readonly about?: string;
};

type Setting = {
  readonly folder: string;
  readonly clock: () => string;
  readonly guard: () => Promise<StorageProblem | null>;
};

function partsBetween(before: Vehicle | null, after: Vehicle | null) {
  if (before !== null && after !== null) return changedParts(before, after);
  return before === after ? [] : [presencePart(after !== null)];
}

/** Names the fact without a change in it. */
function aboutPart({ about }: Telling): ReturnType<typeof changedParts> {
  return about === undefined ? [] : [{ place: about, before: null, after: null }];
}

export class FleetHistory {
  private readonly setting: Setting;

  constructor({ folder, clock, guard }: Setting) {
    this.setting = { folder, clock, guard };
  }

  /** What is handed to the records: the entry is written when nothing else stands against the change. */
  announcing(vehicleId: string, telling: Telling): Announce {
    return (before, after, revision) => this.append(vehicleId, telling, revision, partsBetween(before, after));
  }

  /** An entry about something that leaves the record as it is: a look at a code. */
  async note(vehicleId: string, telling: Telling): Outcome<null> {
    const refusal = await this.setting.guard();
    return refusal ? fail(refusal) : this.append(vehicleId, telling, null, aboutPart(telling));
  }

  /** The latest revision that the history tells of; 0 for none. A record put back must not repeat one of those before it. */
  async latestRevision(vehicleId: string): Promise<number> {
    const page = await readHistory(this.setting.folder, vehicleId, { place: null, count: 40, savedRevision: null });
    if (!page.ok) return 0;
    return Math.max(0, ...page.value.lines.map((line) => line.revision ?? 0));
  }

  private append(
    vehicleId: string,
    { by, kind, label, reason = '' }: Telling,
    revision: number | null,
    parts: ReturnType<typeof changedParts>,
  ): Outcome<null> {
    const { folder, clock } = this.setting;
    const told = parts.length > mostParts ? [] : parts;
    const isShortened = told.length < parts.length;
    const entry = { at: clock(), by, kind, label: oneLine(label), reason: oneLine(reason), revision };
    return appendHistory(folder, vehicleId, { ...entry, parts: told, isShortened });
  }
}

/** As many as an entry may carry. */
const mostParts = 500;
const longestLabel = 300;

/** A label too long for its line is cut: that must not stand in the way of the change it tells of. */
function oneLine(text: string): string {
  const line = text.replace(/\s+/g, ' ').trim();
  return line.length > longestLabel ? `${line.slice(0, longestLabel - 1)}…` : line;
}
