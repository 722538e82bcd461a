// Gathers what the person must be told about files: in quarantine, left in place, missing; each with the last good copy. Changes nothing.
import type { Shop } from '../domain/fleet/shop.ts';
import type { Vehicle } from '../domain/vehicle/vehicle.ts';
import { isThere } from './atomic-file.ts';
import { findAttachmentTroubles } from './attachment-troubles.ts';
import { type BackupContents, readBackupBytes, readBackupRecord, readContents } from './backup-contents.ts';
import { type BackupPlaces, listPlaces } from './backup-places.ts';
import type { BadFile, FileTrouble, LastGoodCopy } from './file-trouble.ts';
import { isLeftInPlace } from './file-trouble.ts';
import {
  idFromFile,
  namesIn,
  pathIn,
  quarantineFolder,
  shopFile,
  vehicleFile,
  vehicleIdOf,
  vehiclesFolder,
  withdrawnFolder,
} from './fleet-folder.ts';
import { withdrawnId } from './fleet-records.ts';
import type { Kept } from './kept.ts';
import { isMissedWhenGone, isOtherFile, keyFileNames, listOtherFiles, whyBadCopy } from './other-files.ts';
import { listQuarantine, type QuarantinedFile, settledNames } from './quarantine.ts';
import { doubledReason } from './read-fleet.ts';
import type { RecordKinds } from './record-kind.ts';
import { keyFileTroubles } from './vault/key-file.ts';

export type TroubleView = {
  readonly folder: string;
  readonly kinds: RecordKinds;
  readonly places: BackupPlaces;
  readonly vehicles: ReadonlyMap<string, Kept<Vehicle>>;
  readonly shop: Kept<Shop> | null;
  /** Bad files that still lie where they were found. */
  readonly left: readonly BadFile[];
  /** Names of files in the vehicles' folder that have not been read yet. */
  readonly later: readonly string[];
  /** Paths of photographs and documents that were read and found damaged. */
  readonly damaged: ReadonlySet<string>;
};

type BackupInView = { readonly place: string; readonly id: string; readonly contents: BackupContents };

/** Newest first, each read only when it is looked at; those whose contents do not read are passed over. */
async function* backupsInView(places: BackupPlaces): AsyncGenerator<BackupInView> {
  for (const { place, name } of (await listPlaces(places)).reverse()) {
    const contents = await readContents(place, name.id);
    if (contents.ok) yield { place, id: name.id, contents: contents.value };
  }
}

async function lastGoodIn(places: BackupPlaces, path: string, kinds: RecordKinds): Promise<LastGoodCopy | null> {
  for await (const { place, id, contents } of backupsInView(places)) {
    const file = contents.files.find((candidate) => candidate.path === path);
    if (!file) continue;
    if (isOtherFile(path)) {
      const bytes = await readBackupBytes(place, id, file);
      const savedAt = file.savedAt ?? contents.madeAt;
      if (bytes.ok && whyBadCopy(path, bytes.value) === null) return { backupId: id, savedAt, revision: 0 };
      continue;
    }
    const record =
      path === shopFile
        ? await readBackupRecord(place, id, file, kinds.shop, null)
        : await readBackupRecord(place, id, file, kinds.vehicle, idFromFile(path));
    if (record.ok) return { backupId: id, savedAt: record.value.savedAt, revision: record.value.revision };
  }
  return null;
}

/** Every file that the newest backup held or already missed. */
async function knownToNewest(places: BackupPlaces): Promise<Set<string>> {
  for await (const { contents } of backupsInView(places)) {
    return new Set([...contents.files.map((file) => file.path), ...contents.missing]);
  }
  return new Set();
}

/** Path of the file that a bad one stands for, or null when its name is not one of ours. */
function recordPath(fileName: string): string | null {
  if (fileName === shopFile || isOtherFile(fileName)) return fileName;
  const id = idFromFile(fileName);
  return id === null ? null : vehicleFile(id);
}

async function quarantineTrouble(file: QuarantinedFile, view: TroubleView): Promise<FileTrouble> {
  const { data, revision, savedAt } = file.vehicle ?? { data: null, revision: 0, savedAt: '' };
  const vehicleId = data?.id ?? (file.bad.fileName === shopFile ? null : idFromFile(file.bad.fileName));
  const common = { id: file.name, fileName: file.bad.fileName, vehicleId, quarantinedAs: file.path };
  const present = vehicleId === null ? null : (view.vehicles.get(vehicleId) ?? null);
  if (data) {
    const isDoubled = present !== null;
    const isWorthOffering = !present || revision > present.revision || savedAt > present.savedAt;
    return {
      ...common,
      kind: isDoubled ? 'doubled' : file.bad.kind,
      reason: isDoubled ? doubledReason(data.id, revision, savedAt) : file.bad.reason,
      lastGoodCopy: isWorthOffering ? { backupId: null, savedAt, revision } : null,
    };
  }
  const path = recordPath(file.bad.fileName);
  const isReplaced = path === shopFile ? view.shop !== null : present !== null;
  const lastGoodCopy = path === null || isReplaced ? null : await lastGoodIn(view.places, path, view.kinds);
  return { ...common, kind: file.bad.kind, reason: file.bad.reason, lastGoodCopy };
}

/** Files with keys that were put aside and are not decided about. */
async function quarantinedKeys(view: TroubleView): Promise<FileTrouble[]> {
  const troubles: FileTrouble[] = [];
  for (const fileName of keyFileNames) {
    const isReplaced = await isThere(pathIn(view.folder, fileName));
    for (const { kind, sentence, quarantinedAs } of await keyFileTroubles(view.folder, fileName)) {
      if (quarantinedAs === null) continue;
      const lastGoodCopy = isReplaced ? null : await lastGoodIn(view.places, fileName, view.kinds);
      const path = `${quarantineFolder}/${quarantinedAs}`;
      const common = { id: quarantinedAs, fileName, kind, reason: sentence, vehicleId: null };
      troubles.push({ ...common, quarantinedAs: path, lastGoodCopy });
    }
  }
  return troubles;
}

export async function findTroubles(view: TroubleView): Promise<FileTrouble[]> {
  const quarantined = await listQuarantine(view.folder, view.kinds);
  const settled = await settledNames(view.folder);
  const troubles: FileTrouble[] = [];
  for (const file of quarantined) {
    if (!file.isSettled) troubles.push(await quarantineTrouble(file, view));
  }
  for (const bad of view.left) {
    const vehicleId = vehicleIdOf(bad.fileName);
    const path = isLeftInPlace(bad.kind) ? null : recordPath(bad.fileName);
    const lastGoodCopy = path === null ? null : await lastGoodIn(view.places, path, view.kinds);
    troubles.push({ ...bad, id: `left:${bad.fileName}`, vehicleId, quarantinedAs: null, lastGoodCopy });
  }
  const keyTroubles = await quarantinedKeys(view);
  troubles.push(...keyTroubles);
  const explained = new Set([
    ...(await listOtherFiles(view.folder)),
    ...keyTroubles.map((trouble) => trouble.fileName),
    ...(view.shop ? [shopFile] : []),
    ...[...view.vehicles.keys()].map(vehicleFile),
    ...view.later.map((name) => `${vehiclesFolder}/${name}`),
    ...view.left.map((bad) => bad.fileName),
    ...quarantined.map((file) => file.bad.fileName),
    ...quarantined.flatMap((file) => (file.vehicle ? [vehicleFile(file.vehicle.data.id)] : [])),
    ...(await namesIn(pathIn(view.folder, withdrawnFolder))).map((name) => vehicleFile(withdrawnId(name) ?? '')),
  ]);
  for (const path of await knownToNewest(view.places)) {
    const id = missingName(path);
    if (explained.has(path) || settled.has(id) || (isOtherFile(path) && !isMissedWhenGone(path))) continue;
    troubles.push({
      id,
      fileName: path,
      kind: 'missing',
      reason:
        'The file was there when the last backup was made and is gone. Something other than this program took it away.',
      vehicleId: vehicleIdOf(path),
      quarantinedAs: null,
      lastGoodCopy: await lastGoodIn(view.places, path, view.kinds),
    });
  }
  troubles.push(...(await findAttachmentTroubles(view, settled)));
  return troubles;
}

/** How the decision about a missing file is noted in quarantine. */
function missingName(path: string): string {
  if (path === shopFile) return 'missing-shop';
  return `missing-${vehicleIdOf(path) === null ? path.replaceAll('/', '-') : path.slice(vehiclesFolder.length + 1)}`;
}
