// The store of photographs and documents beside the backups: one copy of each file for all of them, because no file ever changes. It is
// topped up at each backup; nothing is ever taken out of it, since any backup, and undo, may still need what a record names no more.
import { fail, ok, type Result } from '../domain/shared/result.ts';
import {
  attachmentPlace,
  listAttachmentPaths,
  makeFolder,
  readAttachmentFile,
  writeAttachmentFiles,
} from './attachment-files.ts';
import { pathIn } from './fleet-folder.ts';
import { problemFromError, type StorageProblem } from './storage-problem.ts';

export type ToppedUp = {
  readonly added: number;
  /** Not what their names say in any of the folders they were looked for in. */
  readonly bad: readonly string[];
};

/** The file's bytes from the first of the folders where they are what the name says; null where they are nowhere. */
export async function findGoodFile(roots: readonly string[], path: string): Promise<Buffer | null> {
  const place = attachmentPlace(path);
  if (place === null) return null;
  for (const root of roots) {
    const read = await readAttachmentFile(pathIn(root, path), place.fileName).catch(() => 'damaged' as const);
    if (typeof read !== 'string') return read;
  }
  return null;
}

/** Writes one file where it is missing or damaged, and reads it back. */
export async function copyChecked(to: string, path: string, bytes: Buffer): Promise<Result<null, StorageProblem>> {
  const place = attachmentPlace(path);
  if (place === null) return fail({ code: 'invalid', detail: `No path of a photograph or document: ${path}` });
  const { vehicleId, fileName } = place;
  const written = await writeAttachmentFiles(to, vehicleId, [{ name: fileName, bytes }]);
  if (!written.ok) return written;
  const again = await readAttachmentFile(pathIn(to, path), fileName).catch(() => 'damaged' as const);
  return typeof again === 'string'
    ? fail({ code: 'damaged', detail: `${path} did not read back as it was written.` })
    : ok(null);
}

/**
 * Copies into `place` whatever lies in any of the folders `from` and not there yet. Ends at the first file that cannot be written. With
 * `givesWay` it stands still between files for what a person does.
 */
export async function topUpStore(
  from: readonly string[],
  place: string,
  givesWay: (() => Promise<void>) | null = null,
): Promise<Result<ToppedUp, StorageProblem>> {
  try {
    const wanted = new Set((await Promise.all(from.map(listAttachmentPaths))).flat());
    if (wanted.size === 0) return ok({ added: 0, bad: [] });
    await makeFolder(place);
    const held = new Set(await listAttachmentPaths(place));
    const bad: string[] = [];
    let added = 0;
    for (const path of wanted) {
      if (held.has(path)) continue;
      await givesWay?.();
      const bytes = await findGoodFile(from, path);
      if (bytes === null) {
        bad.push(path);
        continue;
      }
      const copied = await copyChecked(place, path, bytes);
      if (!copied.ok) return copied;
      added++;
    }
    return ok({ added, bad });
  } catch (error) {
    return fail(problemFromError(error, `Copying photographs and documents to ${place}`));
  }
}
