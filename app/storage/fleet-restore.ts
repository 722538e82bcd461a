// Going back: the whole fleet, one vehicle, or the last good copy of one file, each after a snapshot and told in the histories.
// Called in the fleet's queue only.
import { readFile } from 'node:fs/promises';
import { fail, ok } from '../domain/shared/result.ts';
import type { Vehicle } from '../domain/vehicle/vehicle.ts';
import { vehicleOfAttachments } from './attachment-troubles.ts';
import { readBackupBytes, readBackupRecord } from './backup-contents.ts';
import type { FileTrouble } from './file-trouble.ts';
import { idFromFile, pathIn, shopFile, vehicleFile } from './fleet-folder.ts';
import type { Telling } from './fleet-history.ts';
import type { Outcome } from './fleet-records.ts';
import type { StoreParts } from './fleet-store.ts';
import type { Kept } from './kept.ts';
import { isOtherFile, putBackOtherFile } from './other-files.ts';
import { markSettled } from './quarantine.ts';
import { readRecord } from './record-file.ts';
import { putBack, putBackOthers, putVehicleBack, type RestoreCounts, readBackup, revisionAfter } from './restore.ts';
import { putBackAttachments } from './restore-attachments.ts';

export type RestoreDone = RestoreCounts & {
  /** Files that are no records and were gone, put back. */
  readonly otherFiles: number;
  readonly undoBackupId: string;
};

/** Path of the file that a trouble is about; null when the file's name and contents do not say. */
export function recordOf(trouble: FileTrouble): string | null {
  if (trouble.fileName === shopFile || isOtherFile(trouble.fileName)) return trouble.fileName;
  return trouble.vehicleId === null ? null : vehicleFile(trouble.vehicleId);
}

export class FleetRestore {
  private readonly parts: StoreParts;

  constructor(parts: StoreParts) {
    this.parts = parts;
  }

  /** Damaged files of the backup are left out only where they are among `leaving`: whoever asks has seen which. */
  async wholeFleet(backupId: string, telling: Telling, leaving: ReadonlySet<string>): Outcome<RestoreDone> {
    const { backups, history, kinds, records } = this.parts;
    const place = await backups.find(backupId);
    if (!place.ok) return place;
    const backup = await readBackup(place.value, backupId, kinds);
    if (!backup.ok) return backup;
    const unseen = backup.value.damaged.find(({ path }) => !leaving.has(path));
    if (unseen) return fail({ code: 'damaged', detail: `${backupId}/${unseen.path}: ${unseen.sentence}` });
    const snapshot = await backups.make('before-restore');
    if (!snapshot.ok) return snapshot;
    const counts = await putBack(records, history, backup.value, telling);
    if (!counts.ok) return counts;
    const { others } = backup.value;
    const held = { place: place.value, id: backupId, others };
    const otherFiles = await putBackOthers(this.parts, held, (id) => records.vehicles.has(id));
    if (!otherFiles.ok) return otherFiles;
    const attachments = await putBackAttachments(
      this.parts,
      [...records.vehicles.values()].map(({ data }) => data),
    );
    if (!attachments.ok) return attachments;
    const paths = backup.value.vehicles.map((copy) => vehicleFile(copy.data.id));
    await this.settleFor(new Set(backup.value.shop ? [...paths, shopFile] : paths));
    return ok({ ...counts.value, otherFiles: otherFiles.value, undoBackupId: snapshot.value.id });
  }

  async oneVehicle(
    backupId: string,
    vehicleId: string,
    telling: Telling,
  ): Outcome<Kept<Vehicle> & { readonly undoBackupId: string }> {
    const restored = await this.restorePath(backupId, vehicleFile(vehicleId), telling);
    if (!restored.ok) return restored;
    const kept = this.parts.records.vehicles.get(vehicleId);
    if (!kept) return fail({ code: 'not-found', detail: `There is no vehicle ${vehicleId}.` });
    await this.settleFor(new Set([vehicleFile(vehicleId)]));
    return ok({ ...kept, undoBackupId: restored.value ?? '' });
  }

  async lastGood(troubleId: string, telling: Telling): Outcome<null> {
    const trouble = this.parts.state.troubles.find((candidate) => candidate.id === troubleId);
    if (!trouble?.lastGoodCopy) return fail({ code: 'not-found', detail: `No good copy is known for ${troubleId}.` });
    const withAttachments = vehicleOfAttachments(trouble);
    if (withAttachments !== null) return this.attachmentsBack(withAttachments);
    const { backupId } = trouble.lastGoodCopy;
    const path = recordOf(trouble);
    const restored =
      backupId === null || path === null
        ? await this.restoreQuarantined(trouble, telling)
        : await this.restorePath(backupId, path, telling);
    if (!restored.ok) return restored;
    await this.settleFor(new Set(path === null ? [] : [path]), trouble.id);
    return ok(null);
  }

  /** Answers the name of the snapshot of what was there before; null for files that replace nothing. */
  private async restorePath(backupId: string, path: string, telling: Telling): Outcome<string | null> {
    const { backups, kinds, records } = this.parts;
    const found = await backups.findFile(backupId, path);
    if (!found.ok) return found;
    const { place, file } = found.value;
    if (isOtherFile(path)) {
      const bytes = await readBackupBytes(place, backupId, file);
      if (!bytes.ok) return bytes;
      const done = await putBackOtherFile(this.parts, path, bytes.value);
      if (!done.ok || done.value) return done.ok ? ok(null) : done;
      return fail({ code: 'stale-revision', detail: `There is a ${path} already; it was not replaced.` });
    }
    if (path === shopFile) {
      const shop = await readBackupRecord(place, backupId, file, kinds.shop, null);
      if (!shop.ok) return shop;
      const snapshot = await backups.make('before-restore');
      if (!snapshot.ok) return snapshot;
      const written = await records.writeShop(shop.value.data, revisionAfter(records.shop, shop.value.revision));
      return written.ok ? ok(snapshot.value.id) : written;
    }
    const vehicle = await readBackupRecord(place, backupId, file, kinds.vehicle, idFromFile(path));
    return vehicle.ok ? this.vehicleBack(vehicle.value, telling) : vehicle;
  }

  private async restoreQuarantined(trouble: FileTrouble, telling: Telling): Outcome<string | null> {
    const { folder, kinds } = this.parts;
    const bytes = await readFile(pathIn(folder, trouble.quarantinedAs ?? ''));
    const read = readRecord(bytes, kinds.vehicle, trouble.vehicleId);
    return read.ok ? this.vehicleBack(read.value, telling) : fail({ code: 'damaged', detail: read.error.reason });
  }

  private async vehicleBack(
    copy: { readonly data: Vehicle; readonly revision: number },
    telling: Telling,
  ): Outcome<string | null> {
    const { backups, history, records } = this.parts;
    const snapshot = await backups.make('before-restore');
    if (!snapshot.ok) return snapshot;
    const written = await putVehicleBack(records, history, copy, telling);
    if (!written.ok) return written;
    const attachments = await putBackAttachments(this.parts, [copy.data]);
    return attachments.ok ? ok(snapshot.value.id) : attachments;
  }

  private async attachmentsBack(vehicleId: string): Outcome<null> {
    const vehicle = this.parts.records.vehicles.get(vehicleId)?.data;
    if (!vehicle) return fail({ code: 'not-found', detail: `There is no vehicle ${vehicleId}.` });
    const done = await putBackAttachments(this.parts, [vehicle]);
    if (!done.ok || done.value > 0) return done.ok ? ok(null) : done;
    return fail({ code: 'damaged', detail: `No store holds a good copy for ${vehicleId}.` });
  }

  /** After records are back in place, what was said about their damaged files is settled. */
  private async settleFor(paths: ReadonlySet<string>, troubleId: string | null = null): Promise<void> {
    const { clock, folder, state } = this.parts;
    state.areTroublesStale = true;
    for (const trouble of state.troubles) {
      const path = recordOf(trouble);
      const isMeant = trouble.id === troubleId || (path !== null && paths.has(path) && trouble.kind !== 'doubled');
      if (isMeant && trouble.quarantinedAs !== null) await markSettled(folder, trouble.id, clock());
    }
  }
}
