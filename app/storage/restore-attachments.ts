// Puts photographs and documents back into the fleet folder from the stores beside its backups. Each is checked before and after.
import { fail, ok } from '../domain/shared/result.ts';
import { attachmentFiles } from '../domain/vehicle/attachment.ts';
import type { Vehicle } from '../domain/vehicle/vehicle.ts';
import { attachmentPath, listAttachmentPaths } from './attachment-files.ts';
import { copyChecked, findGoodFile } from './attachment-store.ts';
import { badPathsOf, storePlaces } from './attachment-troubles.ts';
import type { Outcome } from './fleet-records.ts';
import type { StoreParts } from './fleet-store.ts';

/** Names of the bad ones that can come back whole, as they were given. */
export async function attachmentsToComeBack(parts: StoreParts, vehicle: Vehicle): Promise<readonly string[]> {
  const { backups, folder, state } = parts;
  const there = new Set(await listAttachmentPaths(folder));
  const bad = badPathsOf(vehicle, there, state.badAttachments);
  const stores = storePlaces(backups.places);
  const names: string[] = [];
  for (const attachment of vehicle.attachments) {
    const paths = attachmentFiles(attachment).map((name) => attachmentPath(vehicle.id, name));
    const found = await Promise.all(
      paths.filter((path) => bad.includes(path)).map((path) => findGoodFile(stores, path)),
    );
    if (found.some((bytes) => bytes !== null)) names.push(attachment.name);
  }
  return names;
}

/** Answers how many files came back; what no store holds stays as it is, and stays told. */
export async function putBackAttachments(parts: StoreParts, vehicles: readonly Vehicle[]): Outcome<number> {
  const { backups, folder, guard, state } = parts;
  const stores = storePlaces(backups.places);
  const holders = vehicles.filter(({ attachments }) => attachments.length > 0);
  const there = new Set(holders.length === 0 ? [] : await listAttachmentPaths(folder));
  let count = 0;
  for (const vehicle of holders) {
    for (const path of badPathsOf(vehicle, there, state.badAttachments)) {
      const bytes = await findGoodFile(stores, path);
      if (bytes === null) continue;
      const refusal = await guard();
      if (refusal) return fail(refusal);
      const copied = await copyChecked(folder, path, bytes);
      if (!copied.ok) return copied;
      state.badAttachments.delete(path);
      count++;
    }
  }
  if (count > 0) state.areTroublesStale = true;
  return ok(count);
}
