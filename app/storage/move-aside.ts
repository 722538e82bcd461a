// Puts files where nothing is yet: creating and moving without ever overwriting. Throws the system's errors; callers map them.
import { open, rename, unlink } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { syncFolder } from './atomic-file.ts';
import { systemCode } from './storage-problem.ts';

const pausesMilliseconds = process.platform === 'win32' ? [20, 100, 400, 1000, 2000] : [20, 100];

/** A virus scanner may hold a file for a moment on Windows. Replaces what is at `to`: look first. */
export async function renamePatiently(from: string, to: string): Promise<void> {
  for (const milliseconds of pausesMilliseconds) {
    try {
      return await rename(from, to);
    } catch (error) {
      if (!['EPERM', 'EACCES', 'EBUSY'].includes(systemCode(error) ?? '')) throw error;
      await pause(milliseconds);
    }
  }
  return rename(from, to);
}

/** @throws EEXIST when something has this name already. */
export async function createFile(path: string, content: string | Buffer): Promise<void> {
  const handle = await open(path, 'wx');
  try {
    await handle.writeFile(content);
    await handle.sync();
  } finally {
    await handle.close();
  }
}

/**
 * Moves a file into a folder under the first free of `names`, and tells which. The name is reserved by creating it first, because a
 * rename alone replaces what is there.
 */
export async function moveAside(from: string, toFolder: string, names: Iterable<string>): Promise<string> {
  for (const name of names) {
    const to = join(toFolder, name);
    try {
      await (await open(to, 'wx')).close();
    } catch (error) {
      if (systemCode(error) === 'EEXIST') continue;
      throw error;
    }
    try {
      await renamePatiently(from, to);
    } catch (error) {
      await unlink(to);
      throw error;
    }
    await syncFolder(toFolder);
    await syncFolder(dirname(from));
    return name;
  }
  throw new Error(`No free name for ${from} in ${toFolder}`);
}
