// One open fleet: what is in it, and every way to change it. All changes go through one queue; nothing is said to be saved before it is.
import { readFile } from 'node:fs/promises';
import type { BackupReason } from '../domain/backup/backup-name.ts';
import type { Shop } from '../domain/fleet/shop.ts';
import { fail, ok, type Result } from '../domain/shared/result.ts';
import type { Vehicle } from '../domain/vehicle/vehicle.ts';
import { readBackupRecord, readContents } from './backup-contents.ts';
import type { BadFile, FileTrouble } from './file-trouble.ts';
import type { BackupMade, BackupSummary, FleetBackups } from './fleet-backups.ts';
import { idFromFile, pathIn, shopFile, vehicleFile } from './fleet-folder.ts';
import { type FleetLock, type LockHolder, refreshEveryMilliseconds } from './fleet-lock.ts';
import type { FleetRecords, Outcome } from './fleet-records.ts';
import type { Kept } from './kept.ts';
import { markSettled } from './quarantine.ts';
import { readRecord } from './record-file.ts';
import type { RecordKinds } from './record-kind.ts';
import { putBack, type RestoreCounts, readBackup, revisionAfter } from './restore.ts';
import { problemFromError, type StorageProblem } from './storage-problem.ts';
import { findTroubles } from './troubles.ts';
import type { KeyFileSetting } from './vault/key-file.ts';
import { createWriteQueue } from './write-queue.ts';

export type ReadOnlyReason = {
  readonly kind: 'open-elsewhere' | 'lost-to-another' | 'newer-version' | 'cannot-write' | 'no-safe-copy';
  readonly sentence: string;
  /** Who has it open, where that is known. */
  readonly holder: LockHolder | null;
  /** True when it was not refreshed for so long that a person may open it with `takeOver`. */
  readonly canTakeOver: boolean;
};

export type RestoreDone = RestoreCounts & { readonly undoBackupId: string };

export type StoreParts = {
  readonly folder: string;
  readonly kinds: RecordKinds;
  readonly clock: () => string;
  readonly records: FleetRecords;
  readonly backups: FleetBackups;
  readonly lock: FleetLock | null;
  /** Why nothing may be written just now; null when it may. */
  readonly guard: () => Promise<StorageProblem | null>;
  readonly left: readonly BadFile[];
  readonly state: StoreState;
  /** The backup of the day waits for this; null: it begins at once. */
  readonly backUpAfter: Promise<void> | null;
};

/** Shared by the store and the pieces it is made of, because a fleet can be lost to another desk while it is open. */
export type StoreState = {
  readOnly: ReadOnlyReason | null;
  troubles: readonly FileTrouble[];
  areTroublesStale: boolean;
};

/** Path of the record that a trouble is about; null when the file's name and contents do not say. */
function recordOf(trouble: FileTrouble): string | null {
  if (trouble.fileName === shopFile) return shopFile;
  return trouble.vehicleId === null ? null : vehicleFile(trouble.vehicleId);
}

export class FleetStore {
  readonly folder: string;
  private readonly parts: StoreParts;
  private readonly queue = createWriteQueue();
  private readonly timer: NodeJS.Timeout | null;
  /** The backup of the day, begun when the fleet was opened or soon after; null inside when there was one already or nothing to keep. */
  readonly dailyBackup: Promise<Result<BackupMade | null, StorageProblem>>;

  constructor(parts: StoreParts) {
    this.parts = parts;
    this.folder = parts.folder;
    this.timer = parts.lock ? setInterval(() => void this.keepAlive(), refreshEveryMilliseconds).unref() : null;
    this.dailyBackup = parts.state.readOnly ? Promise.resolve(ok(null)) : this.backUpForTheDay();
  }

  /** Null when the fleet may be changed here. */
  get isReadOnly(): ReadOnlyReason | null {
    return this.parts.state.readOnly;
  }

  /** Null when the folder is new, or when the settings could not be read: then `troubles` or `isReadOnly` says so. */
  shop(): Kept<Shop> | null {
    return this.parts.records.shop;
  }

  /** Live: shows each change once it is on the disk. */
  vehicles(): ReadonlyMap<string, Kept<Vehicle>> {
    return this.parts.records.vehicles;
  }

  troubles(): readonly FileTrouble[] {
    return this.parts.state.troubles;
  }

  /** What the files with keys beside the records are written by: the same folder, clock and guard. */
  keyFileSetting(): KeyFileSetting {
    const { folder, clock, guard } = this.parts;
    return { folder, clock, guard };
  }

  /** `baseRevision` is the revision the change was based on; 0 for a new vehicle. */
  saveVehicle(vehicle: Vehicle, baseRevision: number): Outcome<Kept<Vehicle>> {
    return this.change(() => this.parts.records.saveVehicle(vehicle, baseRevision));
  }

  saveShop(shop: Shop, baseRevision: number): Outcome<Kept<Shop>> {
    return this.change(() => this.parts.records.saveShop(shop, baseRevision));
  }

  withdrawVehicle(id: string, baseRevision: number): Outcome<null> {
    return this.change(() => this.parts.records.withdrawVehicle(id, baseRevision));
  }

  bringBackVehicle(id: string): Outcome<Kept<Vehicle>> {
    return this.change(() => this.parts.records.bringBackVehicle(id));
  }

  backUp(reason: BackupReason): Outcome<BackupMade> {
    return this.change(() => this.parts.backups.make(reason));
  }

  listBackups(): Outcome<readonly BackupSummary[]> {
    return this.parts.backups.list();
  }

  /** Makes the fleet what it was at that backup, after a snapshot of what it is now. */
  restoreBackup(backupId: string): Outcome<RestoreDone> {
    const { backups, kinds, records } = this.parts;
    return this.change(async () => {
      const place = await backups.find(backupId);
      if (!place.ok) return place;
      const backup = await readBackup(place.value, backupId, kinds);
      if (!backup.ok) return backup;
      const snapshot = await backups.make('before-restore');
      if (!snapshot.ok) return snapshot;
      const counts = await putBack(records, backup.value);
      if (!counts.ok) return counts;
      const paths = backup.value.vehicles.map((copy) => vehicleFile(copy.data.id));
      await this.settleFor(new Set(backup.value.shop ? [...paths, shopFile] : paths));
      return ok({ ...counts.value, undoBackupId: snapshot.value.id });
    });
  }

  /** Puts one vehicle back as that backup holds it, after a snapshot of the whole fleet. */
  restoreVehicle(backupId: string, vehicleId: string): Outcome<Kept<Vehicle>> {
    return this.change(async () => {
      const path = vehicleFile(vehicleId);
      const restored = await this.restorePath(backupId, path);
      if (!restored.ok) return restored;
      const kept = this.parts.records.vehicles.get(vehicleId);
      return kept ? ok(kept) : fail({ code: 'not-found', detail: `There is no vehicle ${vehicleId}.` });
    });
  }

  /** Puts the last good copy of a damaged or missing record back in place. The damaged file stays in quarantine. */
  restoreLastGood(troubleId: string): Outcome<null> {
    return this.change(async () => {
      const trouble = this.troubles().find((candidate) => candidate.id === troubleId);
      if (!trouble?.lastGoodCopy) return fail({ code: 'not-found', detail: `No good copy is known for ${troubleId}.` });
      const { backupId } = trouble.lastGoodCopy;
      const path = recordOf(trouble);
      const restored =
        backupId === null || path === null
          ? await this.restoreQuarantined(trouble)
          : await this.restorePath(backupId, path);
      if (!restored.ok) return restored;
      await this.settleFor(new Set(path === null ? [] : [path]), trouble.id);
      return ok(null);
    });
  }

  /** Notes that a person has seen this trouble and wants nothing done. The file stays in quarantine. */
  settleTrouble(troubleId: string): Outcome<null> {
    return this.change(async () => {
      const trouble = this.troubles().find((candidate) => candidate.id === troubleId);
      if (!trouble) return fail({ code: 'not-found', detail: `There is no trouble ${troubleId}.` });
      if (trouble.id.startsWith('left:')) {
        return fail({ code: 'read-only', detail: `${trouble.fileName} was left where it is and stays listed.` });
      }
      this.parts.state.areTroublesStale = true;
      return markSettled(this.folder, trouble.id, this.parts.clock());
    });
  }

  /** Waits for everything asked before, then gives the fleet free for others. */
  async close(): Promise<void> {
    if (this.timer) clearInterval(this.timer);
    await this.queue.close();
    await this.dailyBackup;
    await this.parts.backups.settle();
    await this.parts.lock?.release();
  }

  private async backUpForTheDay(): Outcome<BackupMade | null> {
    const { backUpAfter, backups } = this.parts;
    if (backUpAfter !== null) await backUpAfter;
    return backups.makeIfDue();
  }

  private change<Value>(job: () => Outcome<Value>): Outcome<Value> {
    const { state } = this.parts;
    const outcome = this.queue.run(async () => {
      if (state.readOnly) return fail({ code: 'read-only' as const, detail: state.readOnly.sentence });
      try {
        const result = await job();
        if (state.areTroublesStale) await this.refreshTroubles();
        return result;
      } catch (error) {
        return fail(problemFromError(error, 'Changing the fleet'));
      }
    });
    return outcome ?? Promise.resolve(fail({ code: 'read-only', detail: 'The fleet has been closed.' }));
  }

  private async restorePath(backupId: string, path: string): Outcome<null> {
    const { backups, kinds, records } = this.parts;
    const place = await backups.find(backupId);
    if (!place.ok) return place;
    const contents = await readContents(place.value, backupId);
    if (!contents.ok) return contents;
    const file = contents.value.files.find((candidate) => candidate.path === path);
    if (!file) return fail({ code: 'not-found', detail: `${backupId} does not hold ${path}.` });
    if (path === shopFile) {
      const shop = await readBackupRecord(place.value, backupId, file, kinds.shop, null);
      if (!shop.ok) return shop;
      const snapshot = await backups.make('before-restore');
      if (!snapshot.ok) return snapshot;
      const written = await records.writeShop(shop.value.data, revisionAfter(records.shop, shop.value));
      return written.ok ? ok(null) : written;
    }
    const id = idFromFile(path);
    const vehicle = await readBackupRecord(place.value, backupId, file, kinds.vehicle, id);
    return vehicle.ok ? this.putVehicleBack(vehicle.value) : vehicle;
  }

  private async restoreQuarantined(trouble: FileTrouble): Outcome<null> {
    const { kinds } = this.parts;
    const bytes = await readFile(pathIn(this.folder, trouble.quarantinedAs ?? ''));
    const read = readRecord(bytes, kinds.vehicle, trouble.vehicleId);
    return read.ok ? this.putVehicleBack(read.value) : fail({ code: 'damaged', detail: read.error.reason });
  }

  private async putVehicleBack(copy: { readonly data: Vehicle; readonly revision: number }): Outcome<null> {
    const { backups, records } = this.parts;
    const present = records.vehicles.get(copy.data.id) ?? null;
    const snapshot = await backups.make('before-restore');
    if (!snapshot.ok) return snapshot;
    const written = await records.writeVehicle(copy.data, revisionAfter(present, copy));
    return written.ok ? ok(null) : written;
  }

  /** After records are back in place, what was said about their damaged files is settled. */
  private async settleFor(paths: ReadonlySet<string>, troubleId: string | null = null): Promise<void> {
    this.parts.state.areTroublesStale = true;
    for (const trouble of this.troubles()) {
      const path = recordOf(trouble);
      const isMeant = trouble.id === troubleId || (path !== null && paths.has(path) && trouble.kind !== 'doubled');
      if (isMeant && trouble.quarantinedAs !== null) await markSettled(this.folder, trouble.id, this.parts.clock());
    }
  }

  private async refreshTroubles(): Promise<void> {
    const { backups, folder, kinds, left, records, state } = this.parts;
    const { shop, vehicles } = records;
    state.troubles = await findTroubles({ folder, kinds, places: backups.places, vehicles, shop, left });
    state.areTroublesStale = false;
  }

  private async keepAlive(): Promise<void> {
    const { backups, lock, state } = this.parts;
    const problem = (await lock?.refresh()) ?? null;
    if (problem === null && state.readOnly === null) await backups.makeIfDue();
  }
}
