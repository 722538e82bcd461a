// Brings the files of a fleet up to today's formats when it is opened: a verified snapshot of the old ones first, then file by file.
import { readFile } from 'node:fs/promises';
import { fail, ok, type Result } from '../domain/shared/result.ts';
import { mapAtMost } from './at-most.ts';
import { writeFileAtomically } from './atomic-file.ts';
import { contentHash } from './content-hash.ts';
import type { FleetBackups } from './fleet-backups.ts';
import { pathIn } from './fleet-folder.ts';
import type { FileToKeep } from './make-backup.ts';
import type { FoundFleet, FoundRecord } from './read-fleet.ts';
import { recordBytes } from './record-file.ts';
import type { RecordKind, RecordKinds } from './record-kind.ts';
import type { StorageProblem } from './storage-problem.ts';

/** The files as they lie on the disk, in their old format, refused when they are not what was just read. */
function rawFiles(folder: string, found: FoundFleet): FileToKeep[] {
  const all: FoundRecord<unknown>[] = [...(found.shop ? [found.shop] : []), ...found.vehicles];
  return all.map(({ fileName, hash, record }) => ({
    path: fileName,
    revision: record.revision,
    savedAt: record.savedAt,
    read: async () => {
      const bytes = await readFile(pathIn(folder, fileName));
      if (contentHash(bytes) !== hash) throw new Error(`${fileName} changed while it was copied.`);
      return bytes;
    },
  }));
}

async function rewriteMigrated<Data>(
  folder: string,
  kind: RecordKind<Data>,
  found: readonly FoundRecord<Data>[],
): Promise<(FoundRecord<Data> | StorageProblem)[]> {
  return mapAtMost(found, 4, async (old) => {
    if (old.record.version === kind.version) return old;
    const prepared = recordBytes(kind, old.record);
    if (!prepared.ok) return { code: 'invalid' as const, detail: `${old.fileName}: ${prepared.error}` };
    const written = await writeFileAtomically(pathIn(folder, old.fileName), prepared.value.bytes);
    return written.ok ? { ...old, hash: contentHash(prepared.value.bytes) } : written.error;
  });
}

function isProblem(value: object): value is StorageProblem {
  return 'code' in value;
}

/** Answers the fleet as it then lies on the disk. On a problem some files may be in today's format and some not: both read. */
export async function migrateFiles(
  folder: string,
  kinds: RecordKinds,
  found: FoundFleet,
  backups: FleetBackups,
): Promise<Result<FoundFleet, StorageProblem>> {
  const isOld =
    found.vehicles.some((vehicle) => vehicle.record.version < kinds.vehicle.version) ||
    (found.shop !== null && found.shop.record.version < kinds.shop.version);
  if (!isOld) return ok(found);
  const snapshot = await backups.make('before-migration', rawFiles(folder, found));
  if (!snapshot.ok) return snapshot;
  const vehicles = await rewriteMigrated(folder, kinds.vehicle, found.vehicles);
  const [shop = null] = found.shop ? await rewriteMigrated(folder, kinds.shop, [found.shop]) : [];
  const problem = [...vehicles, ...(shop ? [shop] : [])].find(isProblem);
  if (problem) return fail(problem);
  return ok({
    ...found,
    shop: shop && !isProblem(shop) ? shop : null,
    vehicles: vehicles.flatMap((vehicle) => (isProblem(vehicle) ? [] : [vehicle])),
  });
}
