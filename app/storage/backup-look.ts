// Looks into backups before anything is put back: what they hold beside what is there now. Reads and checks; changes nothing.
import { readFile } from 'node:fs/promises';
import type { Shop } from '../domain/fleet/shop.ts';
import { fail, ok } from '../domain/shared/result.ts';
import type { Vehicle } from '../domain/vehicle/vehicle.ts';
import { vehicleOfAttachments } from './attachment-troubles.ts';
import { readBackupBytes, readBackupRecord, readContents } from './backup-contents.ts';
import { idFromFile, isFolder, pathIn, shopFile, vehicleFile, vehicleIdOf } from './fleet-folder.ts';
import type { Outcome } from './fleet-records.ts';
import { recordOf } from './fleet-restore.ts';
import type { StoreParts } from './fleet-store.ts';
import { isOtherFile } from './other-files.ts';
import { readRecord } from './record-file.ts';
import { type DamagedFile, heldPaths, readBackup } from './restore.ts';
import { attachmentsToComeBack } from './restore-attachments.ts';

/** What the last good copy of a bad or missing file holds. */
export type CopyLook =
  | { readonly kind: 'vehicle'; readonly present: Vehicle | null; readonly copy: Vehicle }
  | { readonly kind: 'shop'; readonly present: Shop | null; readonly copy: Shop }
  | { readonly kind: 'attachments'; readonly vehicle: Vehicle; readonly names: readonly string[] }
  | { readonly kind: 'other'; readonly fileName: string };

export type BackupLook = {
  readonly vehicles: readonly { readonly present: Vehicle | null; readonly copy: Vehicle }[];
  /** Not as they were written; of vehicles with what is there now. */
  readonly damaged: readonly (DamagedFile & { readonly isVehicle: boolean; readonly present: Vehicle | null })[];
  /** In the fleet now, and neither in the backup nor among what it could not hold: they would go. */
  readonly notHeld: readonly Vehicle[];
  readonly shop: { readonly present: Shop | null; readonly copy: Shop } | null;
};

export class BackupLooks {
  readonly #parts: StoreParts;

  constructor(parts: StoreParts) {
    this.#parts = parts;
  }

  /** Every file of it is read and held against its hash; those that are not as they were written are named. */
  async whole(backupId: string): Outcome<BackupLook> {
    const { backups, kinds, records } = this.#parts;
    const place = await backups.find(backupId);
    if (!place.ok) return place;
    const backup = await readBackup(place.value, backupId, kinds);
    if (!backup.ok) return backup;
    const { vehicles, shop, damaged } = backup.value;
    const held = heldPaths(backup.value);
    const present = (id: string) => records.vehicles.get(id)?.data ?? null;
    return ok({
      vehicles: vehicles.map(({ data }) => ({ present: present(data.id), copy: data })),
      damaged: damaged.map((file) => {
        const id = vehicleIdOf(file.path);
        return { ...file, isVehicle: id !== null, present: id === null ? null : present(id) };
      }),
      notHeld: [...records.vehicles.values()].map(({ data }) => data).filter(({ id }) => !held.has(vehicleFile(id))),
      shop: shop && { present: records.shop?.data ?? null, copy: shop.data },
    });
  }

  /** One vehicle as the backup holds it; null: it holds none of this name, nor says that it should have. */
  async vehicle(backupId: string, vehicleId: string): Outcome<Vehicle | null> {
    const { backups, kinds } = this.#parts;
    const place = await backups.find(backupId);
    if (!place.ok) return place;
    const contents = await readContents(place.value, backupId);
    if (!contents.ok) return contents;
    const path = vehicleFile(vehicleId);
    const file = contents.value.files.find((candidate) => candidate.path === path);
    if (!file) {
      if (!contents.value.missing.includes(path)) return ok(null);
      return fail({ code: 'damaged', detail: `${path} was missing when ${backupId} was made.` });
    }
    const read = await readBackupRecord(place.value, backupId, file, kinds.vehicle, vehicleId);
    return read.ok ? ok(read.value.data) : read;
  }

  /** The copy that `restoreLastGood` would put back. */
  async lastGood(troubleId: string): Outcome<CopyLook> {
    const { backups, folder, kinds, records, state } = this.#parts;
    const trouble = state.troubles.find((candidate) => candidate.id === troubleId);
    if (!trouble?.lastGoodCopy) return fail({ code: 'not-found', detail: `No good copy is known for ${troubleId}.` });
    const present = (id: string) => records.vehicles.get(id)?.data ?? null;
    const withAttachments = records.vehicles.get(vehicleOfAttachments(trouble) ?? '')?.data;
    if (withAttachments) {
      const names = await attachmentsToComeBack(this.#parts, withAttachments);
      if (names.length > 0) return ok({ kind: 'attachments', vehicle: withAttachments, names });
      return fail({ code: 'damaged', detail: `No store holds a good copy for ${withAttachments.id}.` });
    }
    const { backupId } = trouble.lastGoodCopy;
    const path = recordOf(trouble);
    if (backupId === null || path === null) {
      try {
        const bytes = await readFile(pathIn(folder, trouble.quarantinedAs ?? ''));
        const read = readRecord(bytes, kinds.vehicle, trouble.vehicleId);
        if (!read.ok) return fail({ code: 'damaged', detail: read.error.reason });
        return ok({ kind: 'vehicle', present: present(read.value.data.id), copy: read.value.data });
      } catch {
        return fail({ code: 'damaged', detail: `${trouble.quarantinedAs} cannot be read.` });
      }
    }
    const found = await backups.findFile(backupId, path);
    if (!found.ok) return found;
    const { place, file } = found.value;
    if (path === shopFile) {
      const read = await readBackupRecord(place, backupId, file, kinds.shop, null);
      return read.ok ? ok({ kind: 'shop', present: records.shop?.data ?? null, copy: read.value.data }) : read;
    }
    if (isOtherFile(path) || vehicleIdOf(path) === null) {
      const bytes = await readBackupBytes(place, backupId, file);
      return bytes.ok ? ok({ kind: 'other', fileName: path }) : bytes;
    }
    const read = await readBackupRecord(place, backupId, file, kinds.vehicle, idFromFile(path));
    if (!read.ok) return read;
    return ok({ kind: 'vehicle', present: present(read.value.data.id), copy: read.value.data });
  }

  /** The second folder as a person set it, and whether it can be reached now; null: none is set. */
  async secondFolder(): Promise<{ readonly folder: string; readonly isThere: boolean } | null> {
    const { second } = this.#parts.backups.places;
    if (second === null) return null;
    return { folder: second.folder, isThere: await isFolder(second.folder).catch(() => false) };
  }
}
