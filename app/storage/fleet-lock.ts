// The note in a fleet folder that says who has it open, so that two desks never write to it at once. Refreshed while held.
import { randomUUID } from 'node:crypto';
import { readFile, rename, stat, unlink } from 'node:fs/promises';
import { join } from 'node:path';
import { z } from 'zod';
import { instantSchema } from '../domain/shared/day.ts';
import { writeFileAtomically } from './atomic-file.ts';
import { isFolder, lockFile, vehiclesFolder } from './fleet-folder.ts';
import { createFile } from './move-aside.ts';
import { problemFromError, type StorageProblem, systemCode } from './storage-problem.ts';

export type LockOwner = { readonly user: string; readonly host: string; readonly processId: number };
export type LockHolder = LockOwner & { readonly since: string; readonly refreshedAt: string };

/** After this long without a refresh a person may take the fleet over from another desk. */
export const staleAfterMinutes = 10;
export const refreshEveryMilliseconds = 60_000;

/** A note that does not read is one being written, for this long; after that it is what a power cut left. */
const unreadableGraceMilliseconds = 10_000;

const noteSchema = z.strictObject({
  format: z.literal('lotwright-in-use'),
  version: z.int(),
  user: z.string(),
  host: z.string(),
  processId: z.int(),
  since: instantSchema,
  refreshedAt: instantSchema,
  token: z.string(),
});
type Note = z.infer<typeof noteSchema>;

export type FleetLock = {
  /** Null while the fleet is still ours to write. */
  readonly check: () => Promise<StorageProblem | null>;
  readonly refresh: () => Promise<StorageProblem | null>;
  readonly release: () => Promise<void>;
};

export type LockOutcome =
  | { readonly kind: 'held'; readonly lock: FleetLock }
  | { readonly kind: 'taken'; readonly holder: LockHolder | null; readonly canTakeOver: boolean }
  | { readonly kind: 'failed'; readonly problem: StorageProblem };

/** Tokens of the locks that this very process holds: a process id alone cannot tell them from a crashed run's. */
const ownTokens = new Set<string>();

function noteBytes(note: Note): Buffer {
  return Buffer.from(`${JSON.stringify(note, null, 2)}\n`);
}

/** Null: no note. 'unreadable': there is one, but it does not say who. */
async function readNote(path: string): Promise<Note | 'unreadable' | null> {
  try {
    return noteSchema.parse(JSON.parse(await readFile(path, 'utf8')));
  } catch (error) {
    if (systemCode(error) === 'ENOENT') return null;
    if (systemCode(error) !== null) throw error;
    return 'unreadable';
  }
}

function isProcessAlive(processId: number): boolean {
  try {
    process.kill(processId, 0);
    return true;
  } catch (error) {
    return systemCode(error) !== 'ESRCH';
  }
}

/** How long ago the note was written, both times taken from the drive itself: desks on a share disagree about the time. */
async function ageMilliseconds(folder: string, path: string): Promise<number> {
  const probe = join(folder, `.${lockFile}.${randomUUID()}`);
  await createFile(probe, '');
  try {
    return (await stat(probe)).mtimeMs - (await stat(path)).mtimeMs;
  } finally {
    await unlink(probe);
  }
}

type Claim = 'free' | 'may-take-over' | 'taken';

async function claimOn(note: Note | 'unreadable', owner: LockOwner, age: number): Promise<Claim> {
  if (note === 'unreadable') return age > unreadableGraceMilliseconds ? 'free' : 'taken';
  if (ownTokens.has(note.token)) return 'taken';
  if (note.host === owner.host) {
    const isCrashedRun = note.processId === owner.processId || !isProcessAlive(note.processId);
    if (isCrashedRun) return 'free';
  }
  return age > staleAfterMinutes * 60_000 ? 'may-take-over' : 'taken';
}

/** Removes the note that was judged, and no other: another desk may have been faster. */
async function removeNote(folder: string, path: string, judged: Note | 'unreadable'): Promise<void> {
  const aside = join(folder, `.${lockFile}.${randomUUID()}`);
  await rename(path, aside);
  const moved = await readNote(aside);
  const isJudged =
    moved === 'unreadable' || moved === null || (judged !== 'unreadable' && moved.token === judged.token);
  if (!isJudged) await createFile(path, noteBytes(moved)).catch(() => undefined);
  await unlink(aside);
}

function heldLock(folder: string, path: string, mine: Note, clock: () => string): FleetLock {
  let isReleased = false;
  async function check(): Promise<StorageProblem | null> {
    if (isReleased) return { code: 'read-only', detail: 'The fleet has been closed.' };
    try {
      const note = await readNote(path);
      if (note !== null && note !== 'unreadable' && note.token === mine.token) return null;
      if (note !== null) return { code: 'read-only', detail: 'Another desk has taken the fleet over.' };
      if (!(await isFolder(join(folder, vehiclesFolder)))) {
        return { code: 'folder-gone', detail: `The fleet is not at ${folder} any more.` };
      }
      // Someone removed the note by hand. Whoever makes it first has the fleet.
      await createFile(path, noteBytes({ ...mine, refreshedAt: clock() }));
      return null;
    } catch (error) {
      return problemFromError(error, `Checking ${path}`);
    }
  }
  async function refresh(): Promise<StorageProblem | null> {
    const problem = await check();
    if (problem) return problem;
    const written = await writeFileAtomically(path, noteBytes({ ...mine, refreshedAt: clock() }));
    return written.ok ? null : written.error;
  }
  async function release(): Promise<void> {
    isReleased = true;
    ownTokens.delete(mine.token);
    const note = await readNote(path).catch(() => null);
    if (note !== null && note !== 'unreadable' && note.token === mine.token) await unlink(path).catch(() => undefined);
  }
  return { check, refresh, release };
}

/**
 * Takes the fleet for this process. A note of this host whose process is gone is taken over; one that was not refreshed for
 * `staleAfterMinutes` only when `takeOver` says so (a person decided).
 */
export async function takeLock(
  folder: string,
  owner: LockOwner,
  clock: () => string,
  takeOver: boolean,
): Promise<LockOutcome> {
  const path = join(folder, lockFile);
  const now = clock();
  const mine: Note = {
    format: 'lotwright-in-use',
    version: 1,
    ...owner,
    since: now,
    refreshedAt: now,
    token: randomUUID(),
  };
  try {
    for (let attempt = 0; attempt < 3; attempt++) {
      try {
        await createFile(path, noteBytes(mine));
        ownTokens.add(mine.token);
        return { kind: 'held', lock: heldLock(folder, path, mine, clock) };
      } catch (error) {
        if (systemCode(error) !== 'EEXIST') throw error;
      }
      const note = await readNote(path);
      if (note === null) continue;
      const claim = await claimOn(note, owner, await ageMilliseconds(folder, path));
      if (claim === 'taken' || (claim === 'may-take-over' && !takeOver)) {
        const holder = note === 'unreadable' ? null : holderOf(note);
        return { kind: 'taken', holder, canTakeOver: claim === 'may-take-over' };
      }
      await removeNote(folder, path, note);
    }
    return { kind: 'taken', holder: null, canTakeOver: false };
  } catch (error) {
    return { kind: 'failed', problem: problemFromError(error, `Taking ${path}`) };
  }
}

function holderOf(note: Note): LockHolder {
  const { user, host, processId, since, refreshedAt } = note;
  return { user, host, processId, since, refreshedAt };
}
