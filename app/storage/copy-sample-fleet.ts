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

/** Answers how many vehicles were copied. `to` must not exist or be an empty folder; it appears only when all is there. */
export async function copySampleFleet(from: string, to: string): Promise<Result<number, StorageProblem>> {
  const making = join(dirname(to), `.unfinished-${randomUUID()}`);
  try {
    if (!(await isFolder(from))) return fail({ code: 'not-found', detail: `There is no sample fleet at ${from}.` });
    const isTaken = (await namesIn(to)).length > 0;
    if (isTaken) return fail({ code: 'unknown', detail: `Something is at ${to} already; nothing was copied.` });
    await mkdir(join(making, vehiclesFolder), { recursive: true });
    const names = (await namesIn(join(from, vehiclesFolder))).filter(isRecordName);
    const paths = [shopFile, ...(await listLogos(from)), ...names.map((name) => `${vehiclesFolder}/${name}`)];
    await mapAtMost(paths, 16, async (path) => createFile(pathIn(making, path), await readFile(pathIn(from, path))));
    await syncFolder(join(making, vehiclesFolder));
    // An empty folder makes way; anything else refuses to be removed, and then so does the rename.
    await rmdir(to).catch(() => undefined);
    await renamePatiently(making, to);
    await syncFolder(dirname(to));
    return ok(names.length);
  } catch (error) {
    await rm(making, { recursive: true, force: true }).catch(() => undefined);
    return fail(problemFromError(error, `Copying ${from} to ${to}`));
  }
}
