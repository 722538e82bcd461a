// What an archive of the whole fleet holds: its table of contents, and which paths may be in it at all.

import { z } from 'zod';
import { instantSchema } from '../domain/shared/day.ts';
import { attachmentPlace, isAttachmentFile } from './attachment-files.ts';
import { isBackedUp } from './backup-contents.ts';
import { shopFile, vehicleIdOf } from './fleet-folder.ts';
import { keyFileNames, whyBadCopy } from './other-files.ts';
import { readRecord } from './record-file.ts';
import { recordKinds } from './record-kind.ts';

export const archiveFormat = 'lotwright-archive';
/** Written last: an archive that was cut off has none. */
export const archiveContentsFile = 'contents.json';

/**
 * An archive is made to be handed on. The vault and people's keys stay behind unless somebody asks for them: without them nobody can
 * even try pass phrases at it.
 */
export const keptOutUnlessAsked: readonly string[] = keyFileNames;

/** Only paths that this program itself gives, so nothing can lead out of the folder it is unpacked into. */
export function isArchived(path: string): boolean {
  return isBackedUp(path) || attachmentPlace(path) !== null;
}

export const archiveContentsSchema = z
  .strictObject({
    format: z.literal(archiveFormat),
    version: z.int().min(1),
    madeAt: instantSchema,
    fileCount: z.int().min(1),
    files: z.array(
      z.strictObject({
        path: z.string().refine(isArchived, 'Nothing of a fleet has this path.'),
        sha256: z.string().regex(/^[0-9a-f]{64}$/),
        bytes: z.int().min(0),
      }),
    ),
    /** Files that could not be read when it was made. */
    missing: z.array(z.string()),
  })
  .refine(({ files, fileCount }) => files.length === fileCount, 'The number of files is not what it says.');
export type ArchiveContents = z.infer<typeof archiveContentsSchema>;

/** Why these bytes are no good copy; null when they are. */
export function whyBadArchived(path: string, bytes: Buffer): string | null {
  const attachment = attachmentPlace(path);
  if (attachment !== null) return isAttachmentFile(attachment.fileName, bytes) ? null : 'It is not as it was written.';
  const id = vehicleIdOf(path);
  if (path !== shopFile && id === null) return whyBadCopy(path, bytes);
  const read = id === null ? readRecord(bytes, recordKinds.shop, null) : readRecord(bytes, recordKinds.vehicle, id);
  return read.ok ? null : read.error.reason;
}
