// One line of a vehicle's history: who did what when, and what stood there before and after. Facts only; written in storage.
// Code values have no place in it: the record that it is taken from has none.
import { z } from 'zod';
import { instantSchema } from '../shared/day.ts';
import { identifierSchema } from '../shared/identifier.ts';
import { lineSchema } from '../shared/text.ts';
import { type FactList, factListSchema, type Section } from '../vehicle/change.ts';
import type { Vehicle } from '../vehicle/vehicle.ts';

export const historyKindSchema = z.enum([
  'take-in',
  'change',
  'undo',
  'redo',
  'withdraw',
  'bring-back',
  'restore',
  'put-code',
  'look-at-code',
  'destroy-code',
]);
export type HistoryKind = z.infer<typeof historyKindSchema>;

export const changedPartSchema = z.strictObject({
  /** 'purchase' for a section, 'parts/part-12' for a fact. */
  place: z.string().max(80),
  /** Null where it was not there before, or is not there any more. */
  before: z.json(),
  after: z.json(),
});
export type ChangedPart = z.infer<typeof changedPartSchema>;

export const historyEntrySchema = z.strictObject({
  at: instantSchema,
  by: identifierSchema,
  kind: historyKindSchema,
  label: lineSchema(400),
  /** Why, where a reason is owed (looking at a code). */
  reason: lineSchema(300),
  /** The revision that the save was to give the record; null for what changes no record. */
  revision: z.int().min(1).nullable(),
  parts: z.array(changedPartSchema).max(500),
  /** True when the parts were too long to keep and were left out. */
  isShortened: z.boolean(),
});
export type HistoryEntry = z.infer<typeof historyEntrySchema>;

const sections: readonly Section[] = ['identity', 'purchase', 'arrival', 'targets', 'sale'];

function plain(value: unknown): ChangedPart['before'] {
  return z.json().parse(value ?? null);
}

/** Keys in whatever order: both records came through the same schema, but one may have come from a file. */
function isSame(a: unknown, b: unknown): boolean {
  if (a === b) return true;
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return false;
  const [keysOfA, keysOfB] = [Object.keys(a), Object.keys(b)];
  if (Array.isArray(a) !== Array.isArray(b) || keysOfA.length !== keysOfB.length) return false;
  return keysOfA.every((key) => key in b && isSame(Reflect.get(a, key), Reflect.get(b, key)));
}

function changedFacts(before: Vehicle, after: Vehicle, list: FactList): ChangedPart[] {
  const was = new Map<string, unknown>(before[list].map((fact) => [fact.id, fact]));
  const is = new Map<string, unknown>(after[list].map((fact) => [fact.id, fact]));
  return [...new Set([...was.keys(), ...is.keys()])].flatMap((id): ChangedPart[] => {
    const [old, present] = [was.get(id), is.get(id)];
    return isSame(old, present) ? [] : [{ place: `${list}/${id}`, before: plain(old), after: plain(present) }];
  });
}

/** Every section and fact in which two states of a vehicle differ; for a change as well as for taking it back. */
export function changedParts(before: Vehicle, after: Vehicle): ChangedPart[] {
  const inSections = sections.flatMap((section): ChangedPart[] =>
    isSame(before[section], after[section])
      ? []
      : [{ place: section, before: plain(before[section]), after: plain(after[section]) }],
  );
  return [...inSections, ...factListSchema.options.flatMap((list) => changedFacts(before, after, list))];
}

/** The place that tells whether the vehicle was in the fleet. */
export const presencePlace = 'in-fleet';

/** For taking in, withdrawing and bringing back. */
export function presencePart(isInFleet: boolean): ChangedPart {
  return { place: presencePlace, before: !isInFleet, after: isInFleet };
}

/** Whether the vehicle was in the fleet after this entry; null when the entry does not say. */
export function presenceAfter(entry: HistoryEntry): boolean | null {
  const part = entry.parts.find(({ place }) => place === presencePlace);
  return typeof part?.after === 'boolean' ? part.after : null;
}
