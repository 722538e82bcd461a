// Writes a whole file so that a reader finds either the old text or the new one, never a part of it. Never overwrites in place.
import { lstat, open, stat } from 'node:fs/promises';
import { basename, dirname } from 'node:path';
import { Readable } from 'node:stream';
import { writeFile } from 'atomically';
import { fail, ok, type Result } from '../domain/shared/result.ts';
import { problemFromError, type StorageProblem, systemCode } from './storage-problem.ts';

/** The library shortens names near its limit of 128 (with its own ending) and then writes another file than asked, in silence. */
const longestName = 100;

/** How long the library tries again when the system says busy. Scanners hold files on Windows; elsewhere a refusal is final. */
const patienceMilliseconds = process.platform === 'win32' ? 7500 : 1500;

/** The endings of the library's temp files: left behind by a killed process, never read as records. */
export const tempFilePattern = /\.tmp-\d{10}[a-f0-9]{6}$/;

const unsupportedSync = new Set(['EISDIR', 'EPERM', 'EACCES', 'EINVAL', 'ENOTSUP', 'ENOSYS', 'EBADF']);

/** Makes renames in this folder survive a power cut, where the system can (Windows cannot open a folder for this). */
export async function syncFolder(folder: string): Promise<void> {
  if (process.platform === 'win32') return;
  try {
    const handle = await open(folder, 'r');
    try {
      await handle.sync();
    } finally {
      await handle.close();
    }
  } catch (error) {
    if (!unsupportedSync.has(systemCode(error) ?? '')) throw error;
  }
}

/** Whether something is there under this name, of whatever kind. */
export async function isThere(path: string): Promise<boolean> {
  try {
    await lstat(path);
    return true;
  } catch (error) {
    if (systemCode(error) === 'ENOENT') return false;
    throw error;
  }
}

async function whyNotWritable(path: string): Promise<StorageProblem | null> {
  const name = basename(path);
  if (Buffer.byteLength(name) > longestName) return { code: 'unknown', detail: `The name is too long: ${name}` };
  // The library would create a missing folder in silence: an unplugged drive would be written to its empty mount point.
  const folder = await stat(dirname(path));
  if (!folder.isDirectory()) return { code: 'folder-gone', detail: `Not a folder: ${dirname(path)}` };
  if (!(await isThere(path))) return null;
  const target = await stat(path);
  return target.isFile() ? null : { code: 'unknown', detail: `Not a file, so not replaced: ${path}` };
}

/**
 * Temp file beside the target, fsync, rename, folder fsync. Resolves only when all of it is done. On any failure the target is what it
 * was. The bytes go in as a stream: given a string or buffer the library makes one write call, does not look at how much of it was
 * taken, and on a nearly full disk renames a cut-off file over a good one.
 */
export async function writeFileAtomically(path: string, bytes: Buffer): Promise<Result<null, StorageProblem>> {
  try {
    const refusal = await whyNotWritable(path);
    if (refusal) return fail(refusal);
    await writeFile(path, Readable.from([bytes]), { timeout: patienceMilliseconds, fsync: true, fsyncWait: true });
    await syncFolder(dirname(path));
    return ok(null);
  } catch (error) {
    return fail(problemFromError(error, `Writing ${path}`));
  }
}
