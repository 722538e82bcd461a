// Makes, repeats, lists and tidies the backups of one open fleet, one at a time. Restoring is in restore.ts.
import { type BackupReason, readBackupName } from '../domain/backup/backup-name.ts';
import { type BackupEntry, backupsToRemove } from '../domain/backup/retention.ts';
import { fail, ok, type Result } from '../domain/shared/result.ts';
import { topUpStore } from './attachment-store.ts';
import { type BackupFile, backupNames, readContents } from './backup-contents.ts';
import { type BackupPlaces, backupPlaces, listPlaces, readySecondPlace } from './backup-places.ts';
import {
  type BackupPlan,
  type FileToKeep,
  makeBackup,
  removeBackup,
  removeUnfinished,
  repeatBackup,
} from './make-backup.ts';
import { problemFromError, type StorageProblem } from './storage-problem.ts';

export type BackupMade = {
  readonly id: string;
  readonly fileCount: number;
  /** Null: no second folder is set. A failure there does not undo the first copy. */
  readonly secondCopy: Result<string, StorageProblem> | null;
  /** Ids of old ones that were removed; null when tidying failed (the backup itself is there). */
  readonly removed: readonly string[] | null;
};

export type BackupSummary = {
  readonly id: string;
  readonly reason: BackupReason;
  /** ISO instant. */
  readonly madeAt: string;
  readonly where: 'fleet' | 'second';
  readonly vehicleCount: number;
  /** Photographs and documents of its vehicles that the store did not hold when it was made. */
  readonly attachmentsNotHeld: number;
  /** Its table of contents reads and counts right; the files are checked when it is used. */
  readonly isGood: boolean;
};

export type BackupSource = {
  readonly clock: () => string;
  /** Why the fleet folder may not be written just now; null when it may. */
  readonly guard: () => Promise<StorageProblem | null>;
  /** The records as they are at this moment. */
  readonly files: () => readonly FileToKeep[];
  /** What else is to be kept, as it is when it is asked. */
  readonly otherFiles: () => Promise<readonly FileToKeep[]>;
  readonly missing: () => readonly string[];
  /** Paths of the photographs and documents that the records name. */
  readonly attachments: () => readonly string[];
  /** Told of files that are not what their names say. */
  readonly noteDamaged: (paths: readonly string[]) => void;
  /** Backups that hold the last good copy of something damaged. */
  readonly neededIds: () => ReadonlySet<string>;
  /** Awaited between the files of the backup of the day, which nobody waits for. */
  readonly giveWay: () => Promise<void>;
};

export class FleetBackups {
  private placed: BackupPlaces;
  private readonly source: BackupSource;
  private last: Promise<unknown> = Promise.resolve();

  constructor(places: BackupPlaces, source: BackupSource) {
    this.placed = places;
    this.source = source;
  }

  get places(): BackupPlaces {
    return this.placed;
  }

  /** From the next backup on; what lies in an earlier second folder stays there. Null: no second folder any more. */
  repeatIn(folder: string | null): void {
    this.placed = backupPlaces(this.placed.fleetFolder, folder);
  }

  make(reason: BackupReason, files = this.source.files()): Promise<Result<BackupMade, StorageProblem>> {
    const made = this.last.then(() =>
      this.makeNow(reason, files).catch((error) => fail(problemFromError(error, 'Making a backup'))),
    );
    this.last = made;
    return made;
  }

  /** The first call of a day makes the day's backup; later ones answer null, as does an empty fleet. */
  makeIfDue(): Promise<Result<BackupMade | null, StorageProblem>> {
    const made = this.last.then(async (): Promise<Result<BackupMade | null, StorageProblem>> => {
      try {
        const today = this.source.clock().slice(0, 10);
        const names = await backupNames(this.places.first);
        if (names.some((name) => name.reason === 'daily' && name.day === today)) return ok(null);
        const files = this.source.files();
        return files.length === 0 ? ok(null) : await this.makeNow('daily', files, this.source.giveWay);
      } catch (error) {
        return fail(problemFromError(error, 'Looking for the backup of the day'));
      }
    });
    this.last = made;
    return made;
  }

  async settle(): Promise<void> {
    await this.last;
  }

  private async makeNow(
    reason: BackupReason,
    files: readonly FileToKeep[],
    givesWay: BackupPlan['givesWay'] = null,
  ): Promise<Result<BackupMade, StorageProblem>> {
    const { first, second, fleetFolder } = this.places;
    const refusal = await this.source.guard();
    if (refusal) return fail(refusal);
    const madeAt = this.source.clock();
    const all = [...files, ...(await this.source.otherFiles())];
    // What cannot be copied there does not keep the records from being kept: the backup says which files it lacks.
    const toppedUp = await topUpStore([fleetFolder], first, givesWay);
    if (toppedUp.ok) this.source.noteDamaged(toppedUp.value.bad);
    const missing = this.source.missing();
    const attachments = this.source.attachments();
    const made = await makeBackup(first, {
      reason,
      madeAt,
      madeFrom: fleetFolder,
      files: all,
      missing,
      attachments,
      givesWay,
    });
    if (!made.ok) return made;
    const id = made.value;
    const removed = await this.tidy(first);
    const secondCopy = second === null ? null : await this.repeat(id, second, givesWay);
    return ok({ id, fileCount: all.length, secondCopy, removed });
  }

  private async repeat(
    id: string,
    second: { readonly folder: string; readonly place: string },
    givesWay: BackupPlan['givesWay'],
  ) {
    const ready = await readySecondPlace(second.folder, second.place);
    if (!ready.ok) return ready;
    await removeUnfinished(second.place).catch(() => undefined);
    await topUpStore([this.places.fleetFolder, this.places.first], second.place, givesWay);
    const repeated = await repeatBackup(this.places.first, id, second.place, givesWay);
    if (repeated.ok) await this.tidy(second.place);
    return repeated;
  }

  /** Called only after a backup has just been made and read back there, so the newest one is known to be good. */
  private async tidy(place: string): Promise<readonly string[] | null> {
    try {
      const entries: BackupEntry[] = [];
      for (const name of await backupNames(place)) {
        const contents = await readContents(place, name.id);
        if (contents.ok && contents.value.madeFrom !== this.places.fleetFolder) continue;
        entries.push({ ...name, isGood: contents.ok, isNeeded: this.source.neededIds().has(name.id) });
      }
      const ids = backupsToRemove(entries, this.source.clock().slice(0, 10));
      for (const id of ids) await removeBackup(place, id);
      return ids;
    } catch {
      return null;
    }
  }

  /** Newest first. */
  async list(): Promise<Result<readonly BackupSummary[], StorageProblem>> {
    try {
      const summaries: BackupSummary[] = [];
      for (const { place, where, name } of await listPlaces(this.places)) {
        const contents = await readContents(place, name.id);
        const { id, reason, madeAt } = name;
        const vehicleCount = contents.ok ? contents.value.vehicleCount : 0;
        const attachmentsNotHeld = contents.ok ? contents.value.attachments.filter(({ isHeld }) => !isHeld).length : 0;
        summaries.push({ id, reason, madeAt, where, vehicleCount, attachmentsNotHeld, isGood: contents.ok });
      }
      return ok(summaries.reverse());
    } catch (error) {
      return fail(problemFromError(error, 'Listing the backups'));
    }
  }

  /** The place where a backup lies. */
  async find(id: string): Promise<Result<string, StorageProblem>> {
    try {
      if (readBackupName(id) === null) return fail({ code: 'not-found', detail: `Not the name of a backup: ${id}` });
      const placed = (await listPlaces(this.places)).find((entry) => entry.name.id === id);
      return placed ? ok(placed.place) : fail({ code: 'not-found', detail: `There is no backup ${id}.` });
    } catch (error) {
      return fail(problemFromError(error, `Looking for ${id}`));
    }
  }

  /** One file of a backup: the place the backup lies in, and the file's line in the table of contents. */
  async findFile(
    id: string,
    path: string,
  ): Promise<Result<{ readonly place: string; readonly file: BackupFile }, StorageProblem>> {
    const place = await this.find(id);
    if (!place.ok) return place;
    const contents = await readContents(place.value, id);
    if (!contents.ok) return contents;
    const file = contents.value.files.find((candidate) => candidate.path === path);
    return file
      ? ok({ place: place.value, file })
      : fail({ code: 'not-found', detail: `${id} does not hold ${path}.` });
  }
}
