// One open fleet: what is in it, and every way to change it. All changes go through one queue; nothing is said to be saved before it is.
import type { BackupReason } from '../domain/backup/backup-name.ts';
import type { Shop } from '../domain/fleet/shop.ts';
import { fail, ok, type Result } from '../domain/shared/result.ts';
import type { Vehicle } from '../domain/vehicle/vehicle.ts';
import {
  type AttachmentFile,
  type AttachmentRead,
  attachmentPath,
  readAttachmentFile,
  writeAttachmentFiles,
} from './attachment-files.ts';
import { vehicleOfAttachments } from './attachment-troubles.ts';
import { BackupLooks } from './backup-look.ts';
import type { BadFile, FileTrouble } from './file-trouble.ts';
import type { BackupMade, BackupSummary, FleetBackups } from './fleet-backups.ts';
import { pathIn } from './fleet-folder.ts';
import type { FleetHistory, Telling } from './fleet-history.ts';
import { type FleetLock, type LockHolder, refreshEveryMilliseconds } from './fleet-lock.ts';
import type { FleetRecords, Outcome } from './fleet-records.ts';
import { FleetRestore, type RestoreDone } from './fleet-restore.ts';
import type { Kept } from './kept.ts';
import { markSettled } from './quarantine.ts';
import { type HistoryPage, type HistoryPlace, readHistory } from './read-change-log.ts';
import type { RecordKinds } from './record-kind.ts';
import type { RestOfFleet } from './rest-of-fleet.ts';
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

export type StoreParts = {
  readonly folder: string;
  readonly kinds: RecordKinds;
  readonly clock: () => string;
  readonly records: FleetRecords;
  readonly backups: FleetBackups;
  readonly history: FleetHistory;
  readonly lock: FleetLock | null;
  /** Why nothing may be written just now; null when it may. */
  readonly guard: () => Promise<StorageProblem | null>;
  /** Bad files that lie where they were found; those of vehicles read later are added. */
  readonly left: BadFile[];
  readonly state: StoreState;
  /** The backup of the day waits for this; null: it begins at once. */
  readonly backUpAfter: Promise<void> | null;
  /** What was left for later when the fleet was opened. */
  readonly rest: RestOfFleet;
};

/** Shared by the store and the pieces it is made of, because a fleet can be lost to another desk while it is open. */
export type StoreState = {
  readOnly: ReadOnlyReason | null;
  troubles: readonly FileTrouble[];
  areTroublesStale: boolean;
  /** Paths of photographs and documents that were read and found gone or not to be what their names say. */
  readonly badAttachments: Set<string>;
};

export class FleetStore {
  readonly folder: string;
  private readonly parts: StoreParts;
  private readonly queue = createWriteQueue();
  private readonly restore: FleetRestore;
  /** What backups hold, before anything is put back. */
  readonly looks: BackupLooks;
  private readonly timer: NodeJS.Timeout | null;
  /** True where sold vehicles were left for later when the fleet was opened, also when they have been read since. */
  readonly readsSoldLater: boolean;
  /**
   * Comes true when the sold vehicles that were left for later are there too; never fails. Every backup waits for it, and every change
   * but that of a vehicle that is there already.
   */
  readonly whole: Promise<void>;
  /** The backup of the day, begun when the fleet was opened or soon after; null inside when there was one already or nothing to keep. */
  readonly dailyBackup: Promise<Result<BackupMade | null, StorageProblem>>;

  constructor(parts: StoreParts) {
    this.parts = parts;
    this.folder = parts.folder;
    this.restore = new FleetRestore(parts);
    this.looks = new BackupLooks(parts);
    this.timer = parts.lock ? setInterval(() => void this.keepAlive(), refreshEveryMilliseconds).unref() : null;
    this.readsSoldLater = parts.rest.toRead > 0;
    this.whole = parts.rest.toRead === 0 ? Promise.resolve() : this.awaitTheRest();
    this.dailyBackup = parts.state.readOnly ? Promise.resolve(ok(null)) : this.backUpForTheDay();
  }

  /** How many sold vehicles are not read yet. */
  get soldToRead(): number {
    return this.parts.rest.toRead;
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

  /** `baseRevision` is the revision the change was based on; 0 for a new vehicle. `telling` goes into its history first. */
  saveVehicle(vehicle: Vehicle, baseRevision: number, telling: Telling): Outcome<Kept<Vehicle>> {
    const { history, records, state } = this.parts;
    const save = async () => {
      const saved = await records.saveVehicle(vehicle, baseRevision, history.announcing(vehicle.id, telling));
      // A photograph that has gone may be what was taken off.
      if (state.troubles.some((trouble) => vehicleOfAttachments(trouble) === vehicle.id)) state.areTroublesStale = true;
      return saved;
    };
    return this.change(save, records.vehicles.has(vehicle.id) ? 'at-once' : 'when-whole');
  }

  /** On the disk when it answers, before any record names them. Files that no record comes to name do no harm. */
  keepAttachmentFiles(vehicleId: string, files: readonly AttachmentFile[]): Outcome<null> {
    const { folder, guard } = this.parts;
    return this.change(async () => {
      const refusal = await guard();
      if (refusal) return fail(refusal);
      for (const { name } of files) this.parts.state.badAttachments.delete(attachmentPath(vehicleId, name));
      return writeAttachmentFiles(folder, vehicleId, files);
    }, 'at-once');
  }

  /** The bytes of one file, known to be what its name says. What has gone or is not is told among the troubles from now on. */
  async readAttachment(vehicleId: string, fileName: string): Promise<AttachmentRead> {
    const path = attachmentPath(vehicleId, fileName);
    const read = await readAttachmentFile(pathIn(this.folder, path), fileName);
    const { badAttachments } = this.parts.state;
    const isBad = typeof read === 'string';
    if (isBad === badAttachments.has(path)) return read;
    if (isBad) badAttachments.add(path);
    else badAttachments.delete(path);
    if (this.soldToRead === 0) await this.refreshTroubles();
    return read;
  }

  saveShop(shop: Shop, baseRevision: number): Outcome<Kept<Shop>> {
    return this.change(() => this.parts.records.saveShop(shop, baseRevision));
  }

  withdrawVehicle(id: string, baseRevision: number, telling: Telling): Outcome<null> {
    const { history, records } = this.parts;
    return this.change(() => records.withdrawVehicle(id, baseRevision, history.announcing(id, telling)));
  }

  bringBackVehicle(id: string, telling: Telling): Outcome<Kept<Vehicle>> {
    const { history, records } = this.parts;
    return this.change(() => records.bringBackVehicle(id, history.announcing(id, telling)));
  }

  /** An entry of its own, about something that leaves the record as it is, such as a look at a code. On the disk when it answers. */
  noteHistory(vehicleId: string, telling: Telling): Outcome<null> {
    return this.change(() => this.parts.history.note(vehicleId, telling));
  }

  /** Newest first, `count` at most, older than `place`. For a vehicle that is in the fleet or was withdrawn. */
  readHistory(vehicleId: string, place: HistoryPlace | null, count: number): Outcome<HistoryPage> {
    const savedRevision = this.vehicles().get(vehicleId)?.revision ?? null;
    return readHistory(this.folder, vehicleId, { place, count, savedRevision });
  }

  backUp(reason: BackupReason): Outcome<BackupMade> {
    return this.change(() => this.parts.backups.make(reason));
  }

  /** Backups are repeated there from now on; null: nowhere. Looks again for good copies, which may lie there. */
  repeatIn(folder: string | null): Outcome<null> {
    return this.change(async () => {
      this.parts.backups.repeatIn(folder);
      this.parts.state.areTroublesStale = true;
      return ok(null);
    });
  }

  listBackups(): Outcome<readonly BackupSummary[]> {
    return this.parts.backups.list();
  }

  /** Makes the fleet what it was at that backup, after a snapshot of what it is now. Damaged files are left out only where `leaving` names them. */
  restoreBackup(backupId: string, telling: Telling, leaving: ReadonlySet<string> = new Set()): Outcome<RestoreDone> {
    return this.change(() => this.restore.wholeFleet(backupId, telling, leaving));
  }

  /** Puts one vehicle back as that backup holds it, after a snapshot of the whole fleet. */
  restoreVehicle(
    backupId: string,
    vehicleId: string,
    telling: Telling,
  ): Outcome<Kept<Vehicle> & { readonly undoBackupId: string }> {
    return this.change(() => this.restore.oneVehicle(backupId, vehicleId, telling));
  }

  /** Puts the last good copy of a damaged or missing file back in place. The damaged file stays in quarantine. */
  restoreLastGood(troubleId: string, telling: Telling): Outcome<null> {
    return this.change(() => this.restore.lastGood(troubleId, telling));
  }

  /** Notes that a person has seen this trouble and wants nothing done. The file stays in quarantine. */
  settleTrouble(troubleId: string): Outcome<null> {
    return this.change(async () => {
      const trouble = this.troubles().find((candidate) => candidate.id === troubleId);
      if (!trouble) return fail({ code: 'not-found', detail: `There is no trouble ${troubleId}.` });
      if (trouble.id.startsWith('left:')) {
        return fail({ code: 'read-only', detail: `${trouble.fileName} was left where it is and stays listed.` });
      }
      const settled = await markSettled(this.folder, trouble.id, this.parts.clock());
      this.parts.state.areTroublesStale = true;
      return settled;
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
    await this.whole;
    const { badAttachments } = this.parts.state;
    const knownBad = badAttachments.size;
    const made = await backups.makeIfDue();
    if (badAttachments.size > knownBad) await this.refreshTroubles();
    return made;
  }

  private change<Value>(job: () => Outcome<Value>, begins: 'at-once' | 'when-whole' = 'when-whole'): Outcome<Value> {
    const { state } = this.parts;
    const outcome = this.queue.run(async () => {
      if (begins === 'when-whole') await this.whole;
      if (state.readOnly) return fail({ code: 'read-only' as const, detail: state.readOnly.sentence });
      try {
        const result = await job();
        // What is not read yet would be taken for missing.
        if (state.areTroublesStale && this.soldToRead === 0) await this.refreshTroubles();
        return result;
      } catch (error) {
        return fail(problemFromError(error, 'Changing the fleet'));
      }
    });
    return outcome ?? Promise.resolve(fail({ code: 'read-only', detail: 'The fleet has been closed.' }));
  }

  private async refreshTroubles(): Promise<void> {
    const { backups, folder, kinds, left, records, state } = this.parts;
    const { shop, vehicles } = records;
    // First: what becomes stale while files are looked at has to be looked at again.
    state.areTroublesStale = false;
    const damaged = state.badAttachments;
    const { places } = backups;
    state.troubles = await findTroubles({ folder, kinds, places, vehicles, shop, left, later: [], damaged });
  }

  private async awaitTheRest(): Promise<void> {
    const { left, rest, state } = this.parts;
    left.push(...(await rest.whole));
    await this.refreshTroubles().catch(() => {
      state.areTroublesStale = true;
    });
  }

  private async keepAlive(): Promise<void> {
    const { backups, lock, state } = this.parts;
    const problem = (await lock?.refresh()) ?? null;
    await this.whole;
    if (problem === null && state.readOnly === null) await backups.makeIfDue();
  }
}
