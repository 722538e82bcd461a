// Where backups lie: in the fleet folder, and in a second folder when one is set (another drive, a share).
import { mkdir } from 'node:fs/promises';
import { basename, join } from 'node:path';
import { type BackupName, compareBackupNames } from '../domain/backup/backup-name.ts';
import { fail, ok, type Result } from '../domain/shared/result.ts';
import { backupNames } from './backup-contents.ts';
import { backupsFolder, isFolder } from './fleet-folder.ts';
import { problemFromError, type StorageProblem } from './storage-problem.ts';

export type BackupPlaces = {
  readonly fleetFolder: string;
  readonly first: string;
  /** The folder that a person set, and the one made inside it for this fleet. */
  readonly second: { readonly folder: string; readonly place: string } | null;
};

export function backupPlaces(fleetFolder: string, secondFolder: string | null): BackupPlaces {
  const second =
    secondFolder === null
      ? null
      : { folder: secondFolder, place: join(secondFolder, `${basename(fleetFolder)}-backups`) };
  return { fleetFolder, first: join(fleetFolder, backupsFolder), second };
}

/** Refuses when the person's folder itself is not there: an unplugged drive must not be written to its mount point. */
export async function readySecondPlace(folder: string, place: string): Promise<Result<null, StorageProblem>> {
  try {
    if (!(await isFolder(folder)))
      return fail({ code: 'folder-gone', detail: `The second folder is not there: ${folder}` });
    await mkdir(place, { recursive: true });
    return ok(null);
  } catch (error) {
    return fail(problemFromError(error, `Making ${place}`));
  }
}

export type PlacedBackup = { readonly place: string; readonly where: 'fleet' | 'second'; readonly name: BackupName };

/** Oldest first. A backup that lies in both places is listed once, where it is nearer. A second place out of reach is passed over. */
export async function listPlaces({ first, second }: BackupPlaces): Promise<PlacedBackup[]> {
  const near = (await backupNames(first)).map((name) => ({ place: first, where: 'fleet' as const, name }));
  if (second === null) return near.sort((a, b) => compareBackupNames(a.name, b.name));
  const nearIds = new Set(near.map((entry) => entry.name.id));
  const far = (await backupNames(second.place).catch(() => []))
    .filter((name) => !nearIds.has(name.id))
    .map((name) => ({ place: second.place, where: 'second' as const, name }));
  return [...near, ...far].sort((a, b) => compareBackupNames(a.name, b.name));
}
