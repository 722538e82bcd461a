// Makes one backup: into a temp folder, read again and checked, then renamed into place. An unfinished one is never taken for a copy.
import { randomUUID } from 'node:crypto';
import { mkdir, readFile, rm } from 'node:fs/promises';
import { basename, dirname, join, posix } from 'node:path';
import { type BackupReason, backupName } from '../domain/backup/backup-name.ts';
import { fail, ok, type Result } from '../domain/shared/result.ts';
import { mapAtMost } from './at-most.ts';
import { isThere, syncFolder } from './atomic-file.ts';
import { listAttachmentPaths } from './attachment-files.ts';
import {
  type BackupContents,
  type BackupFile,
  contentsFile,
  readBackupBytes,
  readContents,
} from './backup-contents.ts';
import { contentHash } from './content-hash.ts';
import { namesIn, pathIn, vehiclesFolder } from './fleet-folder.ts';
import { createFile, renamePatiently } from './move-aside.ts';
import { problemFromError, type StorageProblem, systemCode } from './storage-problem.ts';

/** A backup that a person waits for, or that is looked at again. */
const filesAtOnce = 16;
/** One that is made beside the work. */
const filesAtOnceBeside = 2;
const unfinishedPattern = /^\.unfinished-[0-9a-f-]{36}$/;

export type FileToKeep = {
  readonly path: string;
  /** Of a record; null for other files. */
  readonly revision: number | null;
  readonly savedAt: string | null;
  /** The file's bytes, known to be good; null when there are none such just now. */
  readonly read: () => Promise<Buffer | null>;
};

export type BackupPlan = {
  readonly reason: BackupReason;
  readonly madeAt: string;
  readonly madeFrom: string;
  readonly files: readonly FileToKeep[];
  readonly missing: readonly string[];
  /** Paths of the photographs and documents that the records name. */
  readonly attachments: readonly string[];
  /** For one that nobody waits for: between its files it stands still for what a person does. Null: as fast as it can be made. */
  readonly givesWay: (() => Promise<void>) | null;
};

/** Removes what an interrupted run left. These are copies only; nothing else has such a name. */
export async function removeUnfinished(place: string): Promise<void> {
  for (const name of await namesIn(place)) {
    if (unfinishedPattern.test(name)) await rm(join(place, name), { recursive: true, force: true });
  }
}

/** Takes a backup's name away first, so that one removed by half is never taken for a copy. */
export async function removeBackup(place: string, id: string): Promise<void> {
  const going = join(place, `.unfinished-${randomUUID()}`);
  await renamePatiently(join(place, id), going);
  await rm(going, { recursive: true, force: true });
}

async function eachFile<File, Outcome>(
  files: readonly File[],
  givesWay: BackupPlan['givesWay'],
  job: (file: File) => Promise<Outcome>,
): Promise<Outcome[]> {
  if (givesWay === null) return mapAtMost(files, filesAtOnce, job);
  return mapAtMost(files, filesAtOnceBeside, async (file) => {
    await givesWay();
    return job(file);
  });
}

async function keepFile(making: string, file: FileToKeep): Promise<BackupFile | null> {
  const bytes = await file.read();
  if (bytes === null) return null;
  await createFile(pathIn(making, file.path), bytes);
  const { path, revision, savedAt } = file;
  return { path, sha256: contentHash(bytes), bytes: bytes.length, revision, savedAt };
}

/** Reads everything back from the disk. The first thing that is not as written is the answer. */
export async function whyNotGood(
  place: string,
  id: string,
  givesWay: BackupPlan['givesWay'] = null,
): Promise<StorageProblem | null> {
  const contents = await readContents(place, id);
  if (!contents.ok) return contents.error;
  const checked = await eachFile(contents.value.files, givesWay, (file) => readBackupBytes(place, id, file));
  const bad = checked.find((result) => !result.ok);
  return bad && !bad.ok ? bad.error : null;
}

async function promote(place: string, making: string, madeAt: string, reason: BackupReason): Promise<string> {
  for (let number = 1; ; number++) {
    const id = backupName(madeAt, reason, number);
    if (await isThere(join(place, id))) continue;
    await renamePatiently(making, join(place, id));
    await syncFolder(place);
    return id;
  }
}

/** Answers the new backup's id. On failure the place is as it was. */
export async function makeBackup(place: string, plan: BackupPlan): Promise<Result<string, StorageProblem>> {
  const making = join(place, `.unfinished-${randomUUID()}`);
  try {
    // Not recursive: a fleet folder that has gone must not be made anew by its backup. Only the last part may be missing.
    await mkdir(place).catch((error) => {
      if (systemCode(error) !== 'EEXIST') throw error;
    });
    await mkdir(making);
    const folders = new Set([vehiclesFolder, ...plan.files.map((file) => posix.dirname(file.path))]);
    for (const folder of folders) await mkdir(pathIn(making, folder), { recursive: true });
    const kept = await eachFile(plan.files, plan.givesWay, (file) => keepFile(making, file));
    const files = kept.filter((file) => file !== null);
    const had = new Set(files.map((file) => file.path));
    const notHad = plan.files.map((file) => file.path).filter((path) => !had.has(path));
    const inStore = new Set(plan.attachments.length === 0 ? [] : await listAttachmentPaths(place));
    const contents: BackupContents = {
      format: 'lotwright-backup',
      version: 1,
      reason: plan.reason,
      madeAt: plan.madeAt,
      madeFrom: plan.madeFrom,
      fileCount: files.length,
      vehicleCount: files.filter((file) => file.path.startsWith(`${vehiclesFolder}/`)).length,
      files,
      missing: [...new Set([...plan.missing, ...notHad])],
      attachments: plan.attachments.map((path) => ({ path, isHeld: inStore.has(path) })),
    };
    await createFile(join(making, contentsFile), `${JSON.stringify(contents, null, 2)}\n`);
    for (const folder of folders) await syncFolder(pathIn(making, folder));
    await syncFolder(making);
    const bad = await whyNotGood(dirname(making), basename(making), plan.givesWay);
    if (bad) {
      await rm(making, { recursive: true, force: true });
      return fail({ code: 'damaged', detail: `The backup did not read back as it was written: ${bad.detail}` });
    }
    return ok(await promote(place, making, plan.madeAt, plan.reason));
  } catch (error) {
    await rm(making, { recursive: true, force: true }).catch(() => undefined);
    return fail(problemFromError(error, `Making a backup in ${place}`));
  }
}

/** Repeats a finished backup in a second place, checked in the same way. */
export async function repeatBackup(
  place: string,
  id: string,
  secondPlace: string,
  givesWay: BackupPlan['givesWay'] = null,
): Promise<Result<string, StorageProblem>> {
  const contents = await readContents(place, id);
  if (!contents.ok) return contents;
  const { reason, madeAt, madeFrom, missing } = contents.value;
  const attachments = contents.value.attachments.map(({ path }) => path);
  const files = contents.value.files.map((file) => ({
    ...file,
    read: () => readFile(pathIn(join(place, id), file.path)),
  }));
  const again = await makeBackup(secondPlace, { reason, madeAt, madeFrom, missing, attachments, files, givesWay });
  if (!again.ok) return again;
  const copied = await readContents(secondPlace, again.value);
  const isSame = copied.ok && JSON.stringify(copied.value.files) === JSON.stringify(contents.value.files);
  return isSame ? again : fail({ code: 'damaged', detail: `${id} could not be repeated as it was written.` });
}
