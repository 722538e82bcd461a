// Opens a fleet folder: takes the lock, reads everything, puts bad files aside, brings old formats up. One bad file never stops it.
import { mkdir, unlink } from 'node:fs/promises';
import { join } from 'node:path';
import { fail, ok, type Result } from '../domain/shared/result.ts';
import { tempFilePattern } from './atomic-file.ts';
import { attachmentPathsOf, removeUnfinishedAttachments } from './attachment-files.ts';
import { isBackedUp } from './backup-contents.ts';
import { backupPlaces } from './backup-places.ts';
import { type BadFile, isLeftInPlace } from './file-trouble.ts';
import { FleetBackups } from './fleet-backups.ts';
import {
  isFleetFolder,
  isFolder,
  lockFile,
  makeSubfolders,
  namesIn,
  shopFile,
  vehicleFile,
  vehiclesFolder,
} from './fleet-folder.ts';
import { FleetHistory } from './fleet-history.ts';
import { type FleetLock, type LockOutcome, type LockOwner, staleAfterMinutes, takeLock } from './fleet-lock.ts';
import { FleetRecords } from './fleet-records.ts';
import { FleetStore, type ReadOnlyReason, type StoreState } from './fleet-store.ts';
import { Foreground } from './foreground.ts';
import type { Kept } from './kept.ts';
import { type FileToKeep, removeUnfinished } from './make-backup.ts';
import { migrateFiles } from './migrate-fleet.ts';
import { listOtherFiles, lookAtKeyFiles, readGoodCopy } from './other-files.ts';
import { putAside } from './quarantine.ts';
import { readFleet } from './read-fleet.ts';
import { recordBytes } from './record-file.ts';
import { type RecordKind, type RecordKinds, recordKinds } from './record-kind.ts';
import { RestOfFleet } from './rest-of-fleet.ts';
import { problemFromError, type StorageProblem } from './storage-problem.ts';
import { findTroubles } from './troubles.ts';

export type OpenFleetOptions = {
  readonly folder: string;
  /** The present instant, as `Date.prototype.toISOString` writes it. */
  readonly clock: () => string;
  readonly owner: LockOwner;
  /** Repeats every backup there; null when none is set. */
  readonly secondFolder?: string | null;
  /** Makes the folder, or makes an ordinary folder a fleet. Without it only a fleet that is there is opened. */
  readonly createFolder?: boolean;
  /** A person has decided to take over from a desk that was not heard of for `staleAfterMinutes`. */
  readonly takeOver?: boolean;
  /** The backup of the day waits for this, so that it does not keep the first screen. It must come true before `close`. */
  readonly backUpAfter?: Promise<void>;
  /** Reading the sold vehicles of a long ledger waits for this, for the same reason. It must come true before `close`. */
  readonly readSoldAfter?: Promise<void>;
  /** From so many sold vehicles on they are read after the rest. */
  readonly readsSoldLaterFrom?: number;
  /** What a person does, before which the backup of the day and reading the sold vehicles stand back. */
  readonly foreground?: Foreground;
  /** For tests of migrations. */
  readonly kinds?: RecordKinds;
};

async function whyNoFleet(folder: string, createFolder: boolean): Promise<StorageProblem | null> {
  if (createFolder) await mkdir(folder, { recursive: true });
  if (!(await isFolder(folder))) return { code: 'folder-gone', detail: `There is no folder ${folder}.` };
  if (!createFolder && !(await isFleetFolder(folder))) {
    return { code: 'not-found', detail: `There is no fleet in ${folder}.` };
  }
  return null;
}

function readOnlyFrom(outcome: Exclude<LockOutcome, { kind: 'held' }>): ReadOnlyReason {
  if (outcome.kind === 'failed') {
    const sentence = `This fleet opens for reading only, because nothing can be written to its folder. ${outcome.problem.detail}`;
    return { kind: 'cannot-write', sentence, holder: null, canTakeOver: false };
  }
  const { holder, canTakeOver } = outcome;
  const who = holder
    ? `${holder.user} on ${holder.host} has had it open since ${holder.since}`
    : 'another desk is opening it';
  const way = canTakeOver
    ? `Nothing has been heard from there for more than ${staleAfterMinutes} minutes: if the program is not running there, you may take the fleet over.`
    : 'Close it there to change it here.';
  return { kind: 'open-elsewhere', sentence: `This fleet opens for reading only: ${who}. ${way}`, holder, canTakeOver };
}

/** Temp files of a killed process: their records were never acknowledged, and the files they were to replace are whole. */
async function removeLeftovers(folder: string): Promise<void> {
  for (const place of [folder, join(folder, vehiclesFolder)]) {
    for (const name of await namesIn(place)) {
      const isProbe = name.startsWith(`.${lockFile}.`);
      if (isProbe || (name.includes('.json.') && tempFilePattern.test(name))) await unlink(join(place, name));
    }
  }
  await removeUnfinishedAttachments(folder);
  await removeUnfinished(backupPlaces(folder, null).first);
}

function keptFile<Data>(records: FleetRecords, path: string, kind: RecordKind<Data>, kept: Kept<Data>): FileToKeep {
  const { revision, savedAt } = kept;
  async function read(): Promise<Buffer> {
    // What lies there saves writing the record out again; what is not there any more is written from memory.
    const there = await records.bytesOnDisk(path, kept);
    if (there !== null) return there;
    const prepared = recordBytes(kind, kept);
    if (!prepared.ok) throw new Error(`${path}: ${prepared.error}`);
    return prepared.value.bytes;
  }
  return { path, revision, savedAt, read };
}

function filesOf(records: FleetRecords, kinds: RecordKinds): FileToKeep[] {
  const vehicles = [...records.vehicles.values()].map((kept) =>
    keptFile(records, vehicleFile(kept.data.id), kinds.vehicle, kept),
  );
  return records.shop === null ? vehicles : [keptFile(records, shopFile, kinds.shop, records.shop), ...vehicles];
}

/** With fewer sold vehicles than this, reading them at once is not felt. */
const manySold = 200;

function otherFile(folder: string, path: string): FileToKeep {
  return { path, revision: null, savedAt: null, read: () => readGoodCopy(folder, path) };
}

async function putBadAside(folder: string, bad: readonly BadFile[], at: string): Promise<BadFile[]> {
  const left: BadFile[] = [];
  for (const file of bad) {
    if (isLeftInPlace(file.kind) || !(await putAside(folder, file, at)).ok) left.push(file);
  }
  return left;
}

function createGuard(lock: FleetLock | null, state: StoreState, onLost: () => void) {
  return async (): Promise<StorageProblem | null> => {
    if (state.readOnly || lock === null) return { code: 'read-only', detail: state.readOnly?.sentence ?? '' };
    const problem = await lock.check();
    if (problem?.code !== 'read-only') return problem;
    const sentence = `${problem.detail} Here it is open for reading only from now on. What was saved before is safe; open the fleet again to see the present state.`;
    state.readOnly = { kind: 'lost-to-another', sentence, holder: null, canTakeOver: false };
    onLost();
    return problem;
  };
}

/** Opens the fleet, for reading only when it cannot be had for writing. Fails only when there is nothing to show at all. */
export async function openFleet(options: OpenFleetOptions): Promise<Result<FleetStore, StorageProblem>> {
  const { folder, clock, owner, kinds = recordKinds } = options;
  let lock: FleetLock | null = null;
  try {
    const refusal = await whyNoFleet(folder, options.createFolder ?? false);
    if (refusal) return fail(refusal);
    const outcome = await takeLock(folder, owner, clock, options.takeOver ?? false);
    if (outcome.kind === 'failed' && outcome.problem.code === 'folder-gone') return fail(outcome.problem);
    const state: StoreState = {
      readOnly: null,
      troubles: [],
      areTroublesStale: false,
      badAttachments: new Set(),
    };
    if (outcome.kind === 'held') lock = outcome.lock;
    else state.readOnly = readOnlyFrom(outcome);
    return ok(await openStore({ ...options, folder, clock, kinds }, lock, state));
  } catch (error) {
    await lock?.release();
    return fail(problemFromError(error, `Opening ${folder}`));
  }
}

async function openStore(
  options: OpenFleetOptions & { readonly kinds: RecordKinds },
  lock: FleetLock | null,
  state: StoreState,
): Promise<FleetStore> {
  const { folder, clock, kinds, foreground = new Foreground() } = options;
  if (lock) {
    await makeSubfolders(folder);
    await removeLeftovers(folder);
  }
  const readsSoldLaterFrom = options.readsSoldLaterFrom ?? manySold;
  const found = await readFleet(folder, kinds, { readsSoldLaterFrom });
  const newerShop = found.bad.find((bad) => bad.fileName === shopFile && isLeftInPlace(bad.kind));
  if (newerShop && state.readOnly === null) {
    const sentence = `This fleet opens for reading only, because the shop's settings cannot be used. ${newerShop.reason}`;
    const kind = newerShop.kind === 'newer-version' ? 'newer-version' : 'cannot-write';
    state.readOnly = { kind, sentence, holder: null, canTakeOver: false };
  }
  const leftRecords = state.readOnly ? found.bad : await putBadAside(folder, found.bad, clock());

  let records: FleetRecords | null = null;
  const guard = createGuard(lock, state, () => records?.markReadOnly());
  const left = [...leftRecords, ...(await lookAtKeyFiles({ folder, clock, guard }))];
  const backups = new FleetBackups(backupPlaces(folder, options.secondFolder ?? null), {
    clock,
    guard,
    files: () => (records === null ? [] : filesOf(records, kinds)),
    otherFiles: async () => (await listOtherFiles(folder)).map((path) => otherFile(folder, path)),
    attachments: () => [...(records?.vehicles.values() ?? [])].flatMap(({ data }) => attachmentPathsOf(data)),
    noteDamaged: (paths) => {
      for (const path of paths) state.badAttachments.add(path);
      if (paths.length > 0) state.areTroublesStale = true;
    },
    missing: () => state.troubles.map((trouble) => trouble.fileName).filter(isBackedUp),
    neededIds: () => new Set(state.troubles.flatMap((trouble) => trouble.lastGoodCopy?.backupId ?? [])),
    giveWay: () => foreground.pause(),
  });
  const onPutAside = () => {
    state.areTroublesStale = true;
  };
  const setting = { folder, kinds, clock, guard, isReadOnly: () => state.readOnly !== null, onPutAside };
  records = new FleetRecords(setting, found);
  const { shop, vehicles } = records;
  const { later } = found;
  const { places } = backups;
  const damaged = state.badAttachments;
  state.troubles = await findTroubles({ folder, kinds, places, vehicles, shop, left, later, damaged });
  if (state.readOnly === null) {
    const migrated = await migrateFiles(folder, kinds, found, backups);
    if (!migrated.ok) {
      const sentence = `This fleet opens for reading only: its records are in an older format, and they could not be brought up safely. ${migrated.error.detail}`;
      state.readOnly = { kind: 'no-safe-copy', sentence, holder: null, canTakeOver: false };
    }
    records = new FleetRecords(setting, migrated.ok ? migrated.value : found);
  }
  if (state.readOnly) await lock?.release();
  const backUpAfter = options.backUpAfter ?? null;
  const held = state.readOnly ? null : lock;
  const rest = new RestOfFleet({
    folder,
    kinds,
    names: later,
    after: options.readSoldAfter ?? Promise.resolve(),
    records,
    foreground,
    putAside: async (bad) => (state.readOnly ? bad : putBadAside(folder, bad, clock())),
  });
  const history = new FleetHistory({ folder, clock, guard });
  return new FleetStore({
    folder,
    kinds,
    clock,
    records,
    backups,
    history,
    lock: held,
    guard,
    left: [...left],
    state,
    backUpAfter,
    rest,
  });
}
