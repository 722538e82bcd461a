// Lays a working copy of a sample fleet where nothing is yet. Copies records and the logo only: no lock, no backups, no quarantine.
import { randomUUID } from 'node:crypto';
import { mkdir, readFile, rm, rmdir } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { fail, ok, type Result } from '../domain/shared/result.ts';
import { mapAtMost } from './at-most.ts';
import { syncFolder } from './atomic-file.ts';
import { isFolder, namesIn, pathIn, shopFile, vehiclesFolder } from './fleet-folder.ts';
import { listLogos } from './logo-file.ts';
import { createFile, renamePatiently } from './move-aside.ts';
import { isRecordName } from './read-fleet.ts';
import { problemFromError, type StorageProblem } from './storage-problem.ts';

export type UnfinishedCopy = { readonly folder: string; readonly vehicles: number };

/** Copies into a new folder beside `to`, under a name that nobody takes for a fleet. All of it is on the disk, or nothing is left. */
export async function copyBeside(from: string, to: string): Promise<Result<UnfinishedCopy, StorageProblem>> {
  const folder = join(dirname(to), `.unfinished-${randomUUID()}`);
  try {
    if (!(await isFolder(from))) return fail({ code: 'not-found', detail: `There is no sample fleet at ${from}.` });
    await mkdir(join(folder, vehiclesFolder), { recursive: true });
    const names = (await namesIn(join(from, vehiclesFolder))).filter(isRecordName);
    const paths = [shopFile, ...(await listLogos(from)), ...names.map((name) => `${vehiclesFolder}/${name}`)];
    await mapAtMost(paths, 16, async (path) => createFile(pathIn(folder, path), await readFile(pathIn(from, path))));
    await syncFolder(join(folder, vehiclesFolder));
    await syncFolder(folder);
    return ok({ folder, vehicles: names.length });
  } catch (error) {
    await removeCopy(folder);
    return fail(problemFromError(error, `Copying ${from} beside ${to}`));
  }
}

/** For an unfinished copy only: nobody has worked in it. */
export async function removeCopy(folder: string): Promise<void> {
  await rm(folder, { recursive: true, force: true }).catch(() => undefined);
}

/** Answers how many vehicles were copied. `to` must not exist or be an empty folder; it appears only when all is there. */
export async function copySampleFleet(from: string, to: string): Promise<Result<number, StorageProblem>> {
  let making: string | null = null;
  try {
    const isTaken = (await namesIn(to)).length > 0;
    if (isTaken) return fail({ code: 'unknown', detail: `Something is at ${to} already; nothing was copied.` });
    const copied = await copyBeside(from, to);
    if (!copied.ok) return copied;
    making = copied.value.folder;
    // An empty folder makes way; anything else refuses to be removed, and then so does the rename.
    await rmdir(to).catch(() => undefined);
    await renamePatiently(making, to);
    await syncFolder(dirname(to));
    return ok(copied.value.vehicles);
  } catch (error) {
    if (making !== null) await removeCopy(making);
    return fail(problemFromError(error, `Copying ${from} to ${to}`));
  }
}
