// Photographs and documents that a record names and that are not there, or not as they were written: told once a vehicle, and put back
// from the stores beside the backups. Reads no file whole to find them; who reads one says when it is damaged.
import { plural } from '../domain/shared/text.ts';
import { type Attachment, attachmentFiles } from '../domain/vehicle/attachment.ts';
import type { Vehicle } from '../domain/vehicle/vehicle.ts';
import { attachmentPath, attachmentPathsOf, attachmentsFolder, listAttachmentPaths } from './attachment-files.ts';
import type { BackupPlaces } from './backup-places.ts';
import { contentHash } from './content-hash.ts';
import type { FileTrouble } from './file-trouble.ts';
import type { Kept } from './kept.ts';

export type AttachmentTroubleView = {
  readonly folder: string;
  readonly places: BackupPlaces;
  readonly vehicles: ReadonlyMap<string, Kept<Vehicle>>;
  /** Paths that were read and found gone or not to be what their names say. */
  readonly damaged: ReadonlySet<string>;
};

/** Named in `lastGoodCopy` instead of one backup: the store is all backups'. */
export const attachmentStoreId = 'attachments';

/** Where copies may lie, nearest first. */
export function storePlaces({ first, second }: BackupPlaces): readonly string[] {
  return second === null ? [first] : [first, second.place];
}

/** The vehicle that a trouble of this sort is about; null for every other trouble. */
export function vehicleOfAttachments({ fileName, vehicleId }: FileTrouble): string | null {
  return fileName === `${attachmentsFolder}/${vehicleId}` ? vehicleId : null;
}

/** `there`: what lies in the fleet folder, by `listAttachmentPaths`. */
export function badPathsOf(
  vehicle: Vehicle,
  there: ReadonlySet<string>,
  damaged: ReadonlySet<string>,
): readonly string[] {
  return attachmentPathsOf(vehicle).filter((path) => !there.has(path) || damaged.has(path));
}

function sentenceFor(vehicle: Vehicle, bad: readonly Attachment[]): string {
  const verb = bad.length === 1 ? 'is not in the fleet folder, or' : 'are not in the fleet folder, or';
  const what = plural(bad.length, 'photograph or document', 'photographs and documents');
  return `${what} of ${vehicle.identity.stockNumber} ${verb} not as written. Something other than this program did that, or the fleet came from an archive without them.`;
}

/** `settled`: what a person has decided about; a further file that goes is told again. */
export async function findAttachmentTroubles(
  view: AttachmentTroubleView,
  settled: ReadonlySet<string>,
): Promise<FileTrouble[]> {
  const holders = [...view.vehicles.values()]
    .map(({ data }) => data)
    .filter(({ attachments }) => attachments.length > 0);
  if (holders.length === 0) return [];
  const there = new Set(await listAttachmentPaths(view.folder));
  const troubled = holders.filter((vehicle) => badPathsOf(vehicle, there, view.damaged).length > 0);
  if (troubled.length === 0) return [];
  const lists = await Promise.all(storePlaces(view.places).map((place) => listAttachmentPaths(place).catch(() => [])));
  const inStores = new Set(lists.flat());
  return troubled.flatMap((vehicle): FileTrouble[] => {
    const badPaths = badPathsOf(vehicle, there, view.damaged);
    const id = `missing-attachments-${vehicle.id}-${contentHash(Buffer.from(badPaths.join())).slice(0, 12)}`;
    if (settled.has(id)) return [];
    const bad = vehicle.attachments.filter((attachment) =>
      attachmentFiles(attachment).some((name) => badPaths.includes(attachmentPath(vehicle.id, name))),
    );
    const copiedAt =
      bad
        .map(({ entered }) => entered.at)
        .sort()
        .at(-1) ?? '';
    return [
      {
        id,
        fileName: `${attachmentsFolder}/${vehicle.id}`,
        kind: 'missing',
        reason: sentenceFor(vehicle, bad),
        vehicleId: vehicle.id,
        quarantinedAs: null,
        lastGoodCopy: badPaths.some((path) => inStores.has(path))
          ? { backupId: attachmentStoreId, savedAt: copiedAt, revision: 0 }
          : null,
      },
    ];
  });
}
