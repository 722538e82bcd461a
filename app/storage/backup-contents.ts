// The table of contents of one backup, and reading a single record out of it with its check. Changes nothing.
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { z } from 'zod';
import { type BackupName, backupReasonSchema, readBackupName } from '../domain/backup/backup-name.ts';
import { instantSchema } from '../domain/shared/day.ts';
import { fail, ok, type Result } from '../domain/shared/result.ts';
import { attachmentPlace } from './attachment-files.ts';
import { contentHash } from './content-hash.ts';
import { namesIn, pathIn, shopFile, vehicleIdOf } from './fleet-folder.ts';
import { isOtherFile } from './other-files.ts';
import { type ReadRecord, readJson, readRecord } from './record-file.ts';
import type { RecordKind } from './record-kind.ts';
import { problemFromError, type StorageProblem, systemCode } from './storage-problem.ts';

export const contentsFile = 'contents.json';

/** True for the path of a record as this program names it, and of every other file that backups hold. */
export function isBackedUp(path: string): boolean {
  return path === shopFile || vehicleIdOf(path) !== null || isOtherFile(path);
}

const contentsSchema = z
  .strictObject({
    format: z.literal('lotwright-backup'),
    version: z.literal(1),
    reason: backupReasonSchema,
    madeAt: instantSchema,
    /** The fleet folder it was made from: two fleets may share one second folder, and each tidies only its own. */
    madeFrom: z.string(),
    fileCount: z.int(),
    vehicleCount: z.int(),
    files: z.array(
      z.strictObject({
        path: z.string().refine(isBackedUp, 'Nothing that a backup holds has this path.'),
        sha256: z.string().regex(/^[0-9a-f]{64}$/),
        bytes: z.int(),
        /** Of a record; null for other files. */
        revision: z.int().nullable(),
        savedAt: instantSchema.nullable(),
      }),
    ),
    /** Files that were known but damaged or missing when it was made. */
    missing: z.array(z.string()),
    /** Photographs and documents that its records name, and whether the store beside the backups held them then. Earlier backups had none. */
    attachments: z
      .array(
        z.strictObject({
          path: z.string().refine((path) => attachmentPlace(path) !== null, 'No photograph or document has this path.'),
          isHeld: z.boolean(),
        }),
      )
      .default([]),
  })
  .refine((contents) => contents.files.length === contents.fileCount, 'The number of files is not what it says.');
export type BackupContents = z.infer<typeof contentsSchema>;
export type BackupFile = BackupContents['files'][number];

export async function readContents(place: string, id: string): Promise<Result<BackupContents, StorageProblem>> {
  const path = join(place, id, contentsFile);
  try {
    const contents = contentsSchema.safeParse(JSON.parse(await readFile(path, 'utf8')));
    return contents.success
      ? ok(contents.data)
      : fail({ code: 'damaged', detail: `${path}: ${contents.error.message}` });
  } catch (error) {
    if (error instanceof SyntaxError) return fail({ code: 'damaged', detail: `${path}: ${error.message}` });
    return fail(problemFromError(error, `Reading ${path}`));
  }
}

/** Names of the backups in a place, oldest first as text; unfinished ones and other people's folders are not among them. */
export async function backupNames(place: string): Promise<BackupName[]> {
  return (await namesIn(place)).flatMap((name) => readBackupName(name) ?? []);
}

/** With a sentence for whoever chooses what to put back. */
export type BackupFileProblem = StorageProblem & { readonly sentence: string };

function whyChanged(path: string, bytes: Uint8Array): string {
  const json = path.endsWith('.json') ? readJson(bytes) : ok(null);
  return json.ok ? 'It has changed since it was written.' : json.error.reason;
}

/** One file of a backup, refused unless its bytes are those that were written. */
export async function readBackupBytes(
  place: string,
  id: string,
  file: BackupFile,
): Promise<Result<Buffer, BackupFileProblem>> {
  try {
    const bytes = await readFile(pathIn(join(place, id), file.path));
    if (contentHash(bytes) === file.sha256) return ok(bytes);
    const detail = `${id}/${file.path} has changed since it was written.`;
    return fail({ code: 'damaged', detail, sentence: whyChanged(file.path, bytes) });
  } catch (error) {
    const { detail } = problemFromError(error, `Reading ${id}/${file.path}`);
    const sentence = systemCode(error) === 'ENOENT' ? 'It has gone from the backup.' : 'It cannot be read.';
    return fail({ code: 'damaged', detail, sentence });
  }
}

export async function readBackupRecord<Data>(
  place: string,
  id: string,
  file: BackupFile,
  kind: RecordKind<Data>,
  expectedId: string | null,
): Promise<Result<ReadRecord<Data>, BackupFileProblem>> {
  const bytes = await readBackupBytes(place, id, file);
  if (!bytes.ok) return bytes;
  const read = readRecord(bytes.value, kind, expectedId);
  if (read.ok) return read;
  const code = read.error.kind === 'newer-version' ? 'newer-version' : 'damaged';
  const { reason } = read.error;
  return fail({ code, detail: `${id}/${file.path}: ${reason}`, sentence: reason });
}
