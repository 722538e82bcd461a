// The files of photographs and documents in the fleet folder, each named by the hash of its bytes. Writes a file once and never changes
// one; knows nothing of who may see what.
import { chmod, mkdir, readFile, unlink } from 'node:fs/promises';
import { fail, ok, type Result } from '../domain/shared/result.ts';
import { attachmentFiles } from '../domain/vehicle/attachment.ts';
import type { Vehicle } from '../domain/vehicle/vehicle.ts';
import { mapAtMost } from './at-most.ts';
import { isThere, syncFolder, tempFilePattern, writeFileAtomically } from './atomic-file.ts';
import { contentHash } from './content-hash.ts';
import { namesIn, pathIn } from './fleet-folder.ts';
import { problemFromError, type StorageProblem, systemCode } from './storage-problem.ts';

export const attachmentsFolder = 'attachments';
const foldersAtOnce = 16;
const fileNamePattern = /^([0-9a-f]{64})\.(?:jpg|png|pdf)$/;

export type AttachmentFile = { readonly name: string; readonly bytes: Uint8Array };

export function attachmentPath(vehicleId: string, fileName: string): string {
  return `${attachmentsFolder}/${vehicleId}/${fileName}`;
}

const pathPattern = /^attachments\/([a-z0-9-]+)\/([0-9a-f]{64}\.(?:jpg|png|pdf))$/;

/** The vehicle and the file's name; null for every path that this program does not give. */
export function attachmentPlace(path: string): { readonly vehicleId: string; readonly fileName: string } | null {
  const [, vehicleId, fileName] = pathPattern.exec(path) ?? [];
  return vehicleId === undefined || fileName === undefined ? null : { vehicleId, fileName };
}

/** Paths of all that a record names: as given, small and for sheets. */
export function attachmentPathsOf({ id, attachments }: Pick<Vehicle, 'id' | 'attachments'>): readonly string[] {
  return attachments.flatMap((attachment) => attachmentFiles(attachment).map((name) => attachmentPath(id, name)));
}

/** Paths of all that lie in `root` under names of this program, whatever is in them. */
export async function listAttachmentPaths(root: string): Promise<string[]> {
  const vehicleIds = await namesIn(pathIn(root, attachmentsFolder));
  const lists = await mapAtMost(vehicleIds, foldersAtOnce, (vehicleId) => namesInFolder(root, vehicleId));
  return lists.flat().filter((path) => attachmentPlace(path) !== null);
}

/** Paths of what lies in one vehicle's folder; none where a file has the name of a folder. */
async function namesInFolder(root: string, vehicleId: string): Promise<string[]> {
  const folder = pathIn(root, `${attachmentsFolder}/${vehicleId}`);
  const names = await namesIn(folder).catch((error: unknown) => {
    if (systemCode(error) === 'ENOTDIR') return [];
    throw error;
  });
  return names.map((name) => attachmentPath(vehicleId, name));
}

/** Temp files of a killed process. What they were to become, no record names. */
export async function removeUnfinishedAttachments(root: string): Promise<void> {
  for (const vehicleId of await namesIn(pathIn(root, attachmentsFolder))) {
    const folder = pathIn(root, `${attachmentsFolder}/${vehicleId}`);
    for (const name of await namesIn(folder).catch(() => []))
      if (tempFilePattern.test(name) && claimedHash(name.replace(tempFilePattern, '')) !== null)
        await unlink(pathIn(folder, name));
  }
}

/** The hash that a file's name claims; null for every name this program does not give. */
export function claimedHash(fileName: string): string | null {
  return fileNamePattern.exec(fileName)?.[1] ?? null;
}

/** Whether the bytes are what the name says. */
export function isAttachmentFile(fileName: string, bytes: Uint8Array): boolean {
  return contentHash(bytes) === claimedHash(fileName);
}

export type AttachmentRead = 'missing' | 'damaged' | Buffer;

/** The bytes, when they are what the name says. Throws what else the system says. */
export async function readAttachmentFile(path: string, fileName: string): Promise<AttachmentRead> {
  try {
    const bytes = await readFile(path);
    return isAttachmentFile(fileName, bytes) ? bytes : 'damaged';
  } catch (error) {
    if (systemCode(error) === 'ENOENT') return 'missing';
    throw error;
  }
}

/** Makes a folder inside one that is there: never the whole way to a drive that has gone. */
export async function makeFolder(path: string): Promise<void> {
  await mkdir(path).catch((error: unknown) => {
    if (systemCode(error) !== 'EEXIST') throw error;
  });
}

/** So that no program that shows a picture turns or trims it in its place. What a system cannot do is left undone. */
export async function protectFromChanges(path: string, isProtected = true): Promise<void> {
  await chmod(path, isProtected ? 0o444 : 0o644).catch(() => undefined);
}

/**
 * Puts the files of one vehicle into `root` (a fleet, or a store beside its backups), each on the disk when this answers. What is there
 * already and good is left; what is there and damaged is replaced, for these bytes are the ones it ought to have.
 */
export async function writeAttachmentFiles(
  root: string,
  vehicleId: string,
  files: readonly AttachmentFile[],
): Promise<Result<null, StorageProblem>> {
  try {
    const folder = pathIn(root, `${attachmentsFolder}/${vehicleId}`);
    if (!(await isThere(folder))) {
      await makeFolder(pathIn(root, attachmentsFolder));
      await makeFolder(folder);
      await syncFolder(root);
      await syncFolder(pathIn(root, attachmentsFolder));
    }
    for (const { name, bytes } of files) {
      const path = pathIn(folder, name);
      const present = await readAttachmentFile(path, name);
      if (present === 'damaged') await protectFromChanges(path, false);
      else if (present !== 'missing') continue;
      const written = await writeFileAtomically(path, Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength));
      if (!written.ok) return written;
      await protectFromChanges(path);
    }
    return ok(null);
  } catch (error) {
    return fail(problemFromError(error, `Writing photographs and documents of ${vehicleId}`));
  }
}
