// What the page gets to see of damaged files and backups before anything is put back: in words, for the manager.
import { z } from 'zod';
import { backupReasonSchema } from '../domain/backup/backup-name.ts';
import { instantSchema } from '../domain/shared/day.ts';
import { identifierSchema } from '../domain/shared/identifier.ts';

export const safetyViewSchema = z.strictObject({
  /** Files that could not be used, or have gone. */
  troubles: z
    .array(
      z.strictObject({
        id: z.string(),
        fileName: z.string(),
        sentence: z.string(),
        /** Path inside the fleet folder of the file that was put aside; null: it lies where it was, or is missing. */
        quarantinedAs: z.string().nullable(),
        lastGoodCopyAt: instantSchema.nullable(),
      }),
    )
    .readonly(),
  /** Newest first. */
  backups: z
    .array(
      z.strictObject({
        id: z.string(),
        madeAt: instantSchema,
        reason: backupReasonSchema,
        where: z.enum(['fleet', 'second']),
        vehicleCount: z.int(),
        /** Photographs and documents of its vehicles that were not kept with it. */
        attachmentsNotHeld: z.int(),
        isGood: z.boolean(),
      }),
    )
    .readonly(),
  /** Why the backups could not be listed; empty otherwise. */
  sentence: z.string(),
  /** The second folder; null: none is set. */
  second: z.strictObject({ folder: z.string(), isThere: z.boolean() }).nullable(),
});
export type SafetyView = z.infer<typeof safetyViewSchema>;

export const putBackPreviewSchema = z.strictObject({
  /** What the copy is of: 'D-2, Merrowick Tarn', 'Settings', 'history/v-1.jsonl'. */
  what: z.string(),
  /** Comes: there is nothing now. Goes: the copy has none of it. Mends: a file that is no record comes back, and no record changes. */
  effect: z.enum(['comes', 'changes', 'same', 'goes', 'mends']),
  changes: z.array(z.strictObject({ what: z.string(), from: z.string(), to: z.string() })).readonly(),
  /** More changes than are told here. */
  isShortened: z.boolean(),
});
export type PutBackPreview = z.infer<typeof putBackPreviewSchema>;

export const backupPreviewSchema = z.strictObject({
  vehicles: z
    .array(
      z.strictObject({ id: identifierSchema, name: z.string(), effect: z.enum(['comes', 'changes', 'same', 'goes']) }),
    )
    .readonly(),
  /** Files of it that are not as they were written, and so are not put back. */
  damaged: z
    .array(
      z.strictObject({
        path: z.string(),
        name: z.string(),
        sentence: z.string(),
        /** False for a vehicle that is not in the fleet now: it cannot come back from this backup. */
        isThereNow: z.boolean(),
      }),
    )
    .readonly(),
  /** Parts of the settings that would be others, by their names. */
  settings: z.array(z.string()).readonly(),
});
export type BackupPreview = z.infer<typeof backupPreviewSchema>;
