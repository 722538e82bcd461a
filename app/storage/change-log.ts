// The history of one vehicle: a file to which one line is added for each thing done, never changed. Appending only; reading it is in
// read-change-log.ts. To be called in the queue of the fleet, before the save that it tells of: then nothing is changed without a line.
import { mkdir, open } from 'node:fs/promises';
import { type HistoryEntry, historyEntrySchema } from '../domain/people/history-entry.ts';
import { identifierSchema } from '../domain/shared/identifier.ts';
import { fail, ok, type Result } from '../domain/shared/result.ts';
import { syncFolder } from './atomic-file.ts';
import { pathIn } from './fleet-folder.ts';
import { problemFromError, type StorageProblem, systemCode } from './storage-problem.ts';

export const historyFolder = 'history';

/** Longer lines would make looking at the history slow; the record itself and its backups hold the rest. */
export const mostLineBytes = 512 * 1024;

const lineFeed = 0x0a;

export function historyFile(vehicleId: string): string {
  return `${historyFolder}/${vehicleId}.jsonl`;
}

function lineOf(entry: HistoryEntry): Buffer {
  const line = Buffer.from(`${JSON.stringify(entry)}\n`, 'utf8');
  if (line.length <= mostLineBytes) return line;
  return Buffer.from(`${JSON.stringify({ ...entry, parts: [], isShortened: true })}\n`, 'utf8');
}

async function makeHistoryFolder(folder: string): Promise<void> {
  try {
    // Not recursive: a fleet folder that has gone must not be made anew by its history.
    await mkdir(pathIn(folder, historyFolder));
    await syncFolder(folder);
  } catch (error) {
    if (systemCode(error) !== 'EEXIST') throw error;
  }
}

/** True when the file ends in the middle of a line, as a power cut leaves it. */
async function endsTorn(handle: Awaited<ReturnType<typeof open>>, size: number): Promise<boolean> {
  if (size === 0) return false;
  const last = Buffer.alloc(1);
  await handle.read(last, 0, 1, size - 1);
  return last[0] !== lineFeed;
}

/** Adds one line and waits until it is on the disk. On failure the file is as long as it was, where the system allows. */
export async function appendHistory(
  folder: string,
  vehicleId: string,
  entry: HistoryEntry,
): Promise<Result<null, StorageProblem>> {
  const checked = historyEntrySchema.safeParse(entry);
  if (!checked.success || !identifierSchema.safeParse(vehicleId).success)
    return fail({ code: 'invalid', detail: `Not a line of the history of ${historyFile(vehicleId)}.` });
  const path = pathIn(folder, historyFile(vehicleId));
  try {
    await makeHistoryFolder(folder);
    const handle = await open(path, 'a+');
    try {
      const { size } = await handle.stat();
      const line = lineOf(checked.data);
      // A torn line is ended, not mended: what is there stays as it is.
      const bytes = (await endsTorn(handle, size)) ? Buffer.concat([Buffer.of(lineFeed), line]) : line;
      try {
        await handle.writeFile(bytes);
        await handle.sync();
      } catch (error) {
        await handle.truncate(size).catch(() => undefined);
        throw error;
      }
      if (size === 0) await syncFolder(pathIn(folder, historyFolder));
    } finally {
      await handle.close();
    }
    return ok(null);
  } catch (error) {
    return fail(problemFromError(error, `Writing ${historyFile(vehicleId)}`));
  }
}
