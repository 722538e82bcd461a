// Puts the worked-on copy of the sample fleet aside and a new one in its place: both or neither. Never deletes what somebody worked in.
import { lstat } from 'node:fs/promises';
import { dirname } from 'node:path';
import { stampOf } from '../domain/backup/backup-name.ts';
import { fail, ok, type Result } from '../domain/shared/result.ts';
import { isThere, syncFolder } from './atomic-file.ts';
import { copyBeside, removeCopy } from './copy-sample-fleet.ts';
import { removeUnfinished } from './make-backup.ts';
import { renamePatiently } from './move-aside.ts';
import { problemFromError, type StorageProblem } from './storage-problem.ts';

/** The old copy lies at `putAside` now. `undo` brings it back to its place and takes the new one away. */
export type ExchangedSample = {
  readonly putAside: string;
  readonly undo: () => Promise<Result<null, StorageProblem>>;
};

/** Gives a new copy, whole on the disk already, its place. Where it fails, everything is where it was. */
export type TakePlace = (at: string) => Promise<Result<ExchangedSample, StorageProblem>>;

/** 'sample-fleet-put-aside-2026-03-18T09-00-00', with a number where that is taken. */
async function freeName(copy: string, at: string): Promise<string> {
  const name = `${copy}-put-aside-${stampOf(at)}`;
  for (let number = 1; ; number++) {
    const candidate = number === 1 ? name : `${name}-${number}`;
    if (!(await isThere(candidate))) return candidate;
  }
}

async function exchange(copy: string, made: string, at: string): Promise<Result<ExchangedSample, StorageProblem>> {
  async function bringBack(putAside: string): Promise<void> {
    if (await isThere(copy)) await renamePatiently(copy, made);
    await renamePatiently(putAside, copy);
    await syncFolder(dirname(copy));
    await removeCopy(made);
  }
  try {
    const putAside = await freeName(copy, at);
    await renamePatiently(copy, putAside);
    try {
      await renamePatiently(made, copy);
      await syncFolder(dirname(copy));
    } catch (error) {
      await bringBack(putAside);
      throw error;
    }
    const undo = async (): Promise<Result<null, StorageProblem>> => {
      try {
        await bringBack(putAside);
        return ok(null);
      } catch (error) {
        return fail(problemFromError(error, `Bringing ${putAside} back to ${copy}`));
      }
    };
    return ok({ putAside, undo });
  } catch (error) {
    await removeCopy(made);
    return fail(problemFromError(error, `Exchanging ${copy}`));
  }
}

/**
 * Lays the new copy beside the old one first, so that a full drive is found out while nothing has been touched. What it answers is to be
 * called once nobody has the old one open.
 */
export async function prepareSample(shipped: string, copy: string): Promise<Result<TakePlace, StorageProblem>> {
  try {
    // A link could lead to a fleet that is no sample.
    if (!(await lstat(copy)).isDirectory()) return fail({ code: 'unknown', detail: `Not a folder itself: ${copy}` });
    await removeUnfinished(dirname(copy));
  } catch (error) {
    return fail(problemFromError(error, `Looking at ${copy}`));
  }
  const made = await copyBeside(shipped, copy);
  return made.ok ? ok((at) => exchange(copy, made.value.folder, at)) : made;
}
