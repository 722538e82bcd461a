// Puts records of a backup back in place. Reads and checks all of them first; a snapshot of the present state is the caller's part.
import type { Shop } from '../domain/fleet/shop.ts';
import { fail, ok, type Result } from '../domain/shared/result.ts';
import type { Vehicle } from '../domain/vehicle/vehicle.ts';
import { mapAtMost } from './at-most.ts';
import {
  type BackupFile,
  type BackupFileProblem,
  readBackupBytes,
  readBackupRecord,
  readContents,
} from './backup-contents.ts';
import { idFromFile, shopFile, vehicleFile, vehicleIdOf, withdrawnFolder } from './fleet-folder.ts';
import type { FleetHistory, Telling } from './fleet-history.ts';
import { type FleetRecords, withdrawnId } from './fleet-records.ts';
import type { Kept } from './kept.ts';
import { isOtherFile, putBackOtherFile } from './other-files.ts';
import type { ReadRecord } from './record-file.ts';
import type { RecordKinds } from './record-kind.ts';
import type { StorageProblem } from './storage-problem.ts';
import type { KeyFileSetting } from './vault/key-file.ts';

const filesAtOnce = 16;

export type BackupRecords = {
  readonly shop: ReadRecord<Shop> | null;
  readonly vehicles: readonly ReadRecord<Vehicle>[];
  /** Files that are no records, checked; their bytes are read again when they are put back. */
  readonly others: readonly BackupFile[];
  /** Paths that the backup says it could not hold. */
  readonly missing: readonly string[];
  /** Files that are not as they were written: none of them is ever put back. */
  readonly damaged: readonly DamagedFile[];
};
export type DamagedFile = { readonly path: string; readonly sentence: string };

/** Every file of a backup, held against its hash: those that are whole, and those that are not with the reason. Refused when none is. */
export async function readBackup(
  place: string,
  id: string,
  kinds: RecordKinds,
): Promise<Result<BackupRecords, StorageProblem>> {
  const contents = await readContents(place, id);
  if (!contents.ok) return contents;
  const { files, missing } = contents.value;
  const damaged: DamagedFile[] = [];
  const isWhole = <Value>(
    file: BackupFile,
    read: Result<Value, BackupFileProblem>,
  ): read is { ok: true; value: Value } => {
    if (!read.ok) damaged.push({ path: file.path, sentence: read.error.sentence });
    return read.ok;
  };
  let shop: ReadRecord<Shop> | null = null;
  const shopEntry = files.find((file) => file.path === shopFile);
  if (shopEntry) {
    const read = await readBackupRecord(place, id, shopEntry, kinds.shop, null);
    if (isWhole(shopEntry, read)) shop = read.value;
  }
  const vehicleFiles = files.filter((file) => vehicleIdOf(file.path) !== null);
  const reads = await mapAtMost(vehicleFiles, filesAtOnce, async (file) => ({
    file,
    read: await readBackupRecord(place, id, file, kinds.vehicle, idFromFile(file.path)),
  }));
  const vehicles = reads.flatMap(({ file, read }) => (isWhole(file, read) ? [read.value] : []));
  const checked = await mapAtMost(
    files.filter((file) => isOtherFile(file.path)),
    filesAtOnce,
    async (file) => ({ file, bytes: await readBackupBytes(place, id, file) }),
  );
  const others = checked.flatMap(({ file, bytes }) => (isWhole(file, bytes) ? [file] : []));
  if (files.length > 0 && damaged.length === files.length)
    return fail({ code: 'damaged', detail: `No file of ${id} is as it was written.` });
  return ok({ shop, vehicles, others, missing, damaged });
}

/**
 * Puts back the files that are no records where they have gone. None that is there is replaced: keys and histories go on, a backup of
 * them is older. A withdrawn record comes back only while its vehicle is not in the fleet. Answers how many came back.
 */
export async function putBackOthers(
  setting: KeyFileSetting,
  backup: { readonly place: string; readonly id: string; readonly others: readonly BackupFile[] },
  isInFleet: (vehicleId: string) => boolean,
): Promise<Result<number, StorageProblem>> {
  let count = 0;
  for (const file of backup.others) {
    const [folder, name = ''] = file.path.split('/');
    if (folder === withdrawnFolder && isInFleet(withdrawnId(name) ?? '')) continue;
    const bytes = await readBackupBytes(backup.place, backup.id, file);
    if (!bytes.ok) return bytes;
    const done = await putBackOtherFile(setting, file.path, bytes.value);
    if (!done.ok) return done;
    if (done.value) count++;
  }
  return ok(count);
}

/** Paths of vehicles that were in the fleet then, whether or not their copies are whole. */
export function heldPaths({ vehicles, missing, damaged }: BackupRecords): ReadonlySet<string> {
  return new Set([...vehicles.map(({ data }) => vehicleFile(data.id)), ...missing, ...damaged.map(({ path }) => path)]);
}

export type RestoreCounts = { readonly restored: number; readonly unchanged: number; readonly withdrawn: number };

function isSame(a: unknown, b: unknown): boolean {
  return JSON.stringify(a) === JSON.stringify(b);
}

/**
 * A revision that no one can have based a change on, so that a save from before the restore is refused as stale. Later than all that the
 * history tells of too, so that what it told of before stays told.
 */
export function revisionAfter(present: { readonly revision: number } | null, ...others: readonly number[]): number {
  return Math.max(present?.revision ?? 0, ...others) + 1;
}

/** Writes one vehicle as the copy has it. The caller has made a snapshot. */
export async function putVehicleBack(
  records: FleetRecords,
  history: FleetHistory,
  copy: { readonly data: Vehicle; readonly revision: number },
  telling: Telling,
): Promise<Result<Kept<Vehicle>, StorageProblem>> {
  const { id } = copy.data;
  const present = records.vehicles.get(id) ?? null;
  const told = present === null ? await history.latestRevision(id) : 0;
  const revision = revisionAfter(present, copy.revision, told);
  return records.writeVehicle(copy.data, revision, history.announcing(id, telling));
}

/**
 * Makes the fleet what the backup holds: records that differ are written, vehicles taken in since are withdrawn (their files stay). What
 * the backup could not hold, or holds damaged, stays as it is.
 * Ends at the first problem; every single file is then either as before or as in the backup.
 */
export async function putBack(
  records: FleetRecords,
  history: FleetHistory,
  backup: BackupRecords,
  telling: Telling,
): Promise<Result<RestoreCounts, StorageProblem>> {
  let restored = 0;
  let unchanged = 0;
  let withdrawn = 0;
  const stopped = (problem: StorageProblem) =>
    fail({ ...problem, detail: `${problem.detail} (${restored} records were put back before that)` });
  for (const copy of backup.vehicles) {
    const present = records.vehicles.get(copy.data.id) ?? null;
    if (present && isSame(present.data, copy.data)) {
      unchanged++;
      continue;
    }
    const written = await putVehicleBack(records, history, copy, telling);
    if (!written.ok) return stopped(written.error);
    restored++;
  }
  if (backup.shop && isSame(records.shop?.data, backup.shop.data)) unchanged++;
  else if (backup.shop) {
    const written = await records.writeShop(backup.shop.data, revisionAfter(records.shop, backup.shop.revision));
    if (!written.ok) return stopped(written.error);
    restored++;
  }
  const held = heldPaths(backup);
  for (const present of [...records.vehicles.values()]) {
    if (held.has(vehicleFile(present.data.id))) continue;
    const { id } = present.data;
    const moved = await records.withdrawVehicle(id, present.revision, history.announcing(id, telling));
    if (!moved.ok) return stopped(moved.error);
    withdrawn++;
  }
  return ok({ restored, unchanged, withdrawn });
}
