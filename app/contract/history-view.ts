// What the page gets of a vehicle's history: lines in words, already without what the role may not see.
import { z } from 'zod';
import { instantSchema } from '../domain/shared/day.ts';

export const historyPlaceSchema = z.strictObject({
  offset: z.int().min(0),
  lowestRevision: z.int().nullable(),
  isInFleet: z.boolean().nullable(),
});

export const historyViewSchema = z.strictObject({
  /** Newest first. */
  lines: z
    .array(
      z.strictObject({
        at: instantSchema,
        by: z.string(),
        what: z.string(),
        reason: z.string(),
        /** False: the record does not hold it. */
        wasSaved: z.boolean(),
        changes: z.array(z.strictObject({ what: z.string(), from: z.string(), to: z.string() })).readonly(),
        /** More was changed than is told here. */
        isShortened: z.boolean(),
      }),
    )
    .readonly(),
  /** Sentences about lines that could not be read. */
  faults: z.array(z.string()).readonly(),
  /** To be handed back for the next older page; null: there is none. */
  older: historyPlaceSchema.nullable(),
});
export type HistoryView = z.infer<typeof historyViewSchema>;
