// Reads an archive of a whole fleet: checks every hash and every record first, then puts all of it into an empty folder at once.
import { randomUUID } from 'node:crypto';
import { type FileHandle, mkdir, open, rm, rmdir } from 'node:fs/promises';
import { dirname, join, posix } from 'node:path';
import { fail, ok, type Result } from '../domain/shared/result.ts';
import {
  type ArchiveContents,
  archiveContentsFile,
  archiveContentsSchema,
  archiveFormat,
  whyBadArchived,
} from './archive-contents.ts';
import { syncFolder } from './atomic-file.ts';
import { attachmentPlace, protectFromChanges } from './attachment-files.ts';
import { contentHash } from './content-hash.ts';
import { namesIn, pathIn, shopFile } from './fleet-folder.ts';
import { createFile, renamePatiently } from './move-aside.ts';
import { problemFromError, storageSentence } from './storage-problem.ts';
import { readEntry, type ZipEntry, zipEntries } from './zip-entries.ts';

const foreign = 'This file is no archive of a fleet of this program.';

async function contentsOf(file: FileHandle, entries: readonly ZipEntry[]): Promise<Result<ArchiveContents, string>> {
  const entry = entries.find(({ name }) => name === archiveContentsFile);
  if (entry === undefined) return fail(foreign);
  const bytes = await readEntry(file, entry);
  if (!bytes.ok) return bytes;
  let json: unknown;
  try {
    json = JSON.parse(bytes.value.toString('utf8'));
  } catch {
    return fail(foreign);
  }
  if (typeof json !== 'object' || json === null || !('format' in json) || json.format !== archiveFormat)
    return fail(foreign);
  if ('version' in json && typeof json.version === 'number' && json.version > 1)
    return fail(
      'A newer version of the program made this archive. Update the program on this desk, then open it again.',
    );
  const contents = archiveContentsSchema.safeParse(json);
  return contents.success
    ? ok(contents.data)
    : fail('The table of contents of this archive does not hold. Copy it again.');
}

/** Every file of the archive in turn, once it is known to be whole. The first thing that is wrong ends it. */
async function eachFile(
  path: string,
  use: (path: string, bytes: Buffer) => Promise<void>,
): Promise<Result<ArchiveContents, string>> {
  const file = await open(path, 'r');
  try {
    const entries = await zipEntries(file);
    if (!entries.ok) return entries;
    const contents = await contentsOf(file, entries.value);
    if (!contents.ok) return contents;
    const { files } = contents.value;
    const byName = new Map(entries.value.map((entry) => [entry.name, entry]));
    const isSame =
      byName.size === entries.value.length &&
      entries.value.length === files.length + 1 &&
      new Set(files.map((one) => one.path)).size === files.length;
    if (!isSame)
      return fail('What lies in this archive is not what its table of contents says. Nothing was put in place.');
    if (!files.some((one) => one.path === shopFile)) return fail('This archive has no settings of a shop in it.');
    for (const { path: name, sha256 } of files) {
      const entry = byName.get(name);
      if (entry === undefined) return fail(`${name} is missing in this archive. Nothing was put in place.`);
      const bytes = await readEntry(file, entry);
      if (!bytes.ok) return bytes;
      if (contentHash(bytes.value) !== sha256)
        return fail(
          `${name} in this archive is not as it was written. Nothing was put in place. Copy the archive again.`,
        );
      const bad = whyBadArchived(name, bytes.value);
      if (bad !== null) return fail(`${name} in this archive cannot be used: ${bad} Nothing was put in place.`);
      await use(name, bytes.value);
    }
    return contents;
  } finally {
    await file.close();
  }
}

/** Reads all of it and puts nothing anywhere. */
export async function checkArchive(path: string): Promise<Result<ArchiveContents, string>> {
  return eachFile(path, async () => {});
}

/** `folder` must be empty or not there; it holds the fleet only when all of it is there and good. */
export async function unpackArchive(path: string, folder: string): Promise<Result<ArchiveContents, string>> {
  const making = join(dirname(folder), `.unfinished-${randomUUID()}`);
  try {
    if ((await namesIn(folder)).length > 0)
      return fail('That folder is not empty. Choose or make an empty one: a fleet is never unpacked over anything.');
    await mkdir(making);
    const folders = new Set<string>(['.']);
    const unpacked = await eachFile(path, async (name, bytes) => {
      const parent = posix.dirname(name);
      if (!folders.has(parent)) await mkdir(pathIn(making, parent), { recursive: true });
      folders.add(parent);
      await createFile(pathIn(making, name), bytes);
      if (attachmentPlace(name) !== null) await protectFromChanges(pathIn(making, name));
    });
    if (!unpacked.ok) {
      await rm(making, { recursive: true, force: true });
      return unpacked;
    }
    for (const one of folders) await syncFolder(pathIn(making, one));
    // An empty folder makes way; anything else refuses to be removed, and then so does the rename.
    await rmdir(folder).catch(() => undefined);
    await renamePatiently(making, folder);
    await syncFolder(dirname(folder));
    return unpacked;
  } catch (error) {
    await rm(making, { recursive: true, force: true }).catch(() => undefined);
    return fail(storageSentence(problemFromError(error, `Unpacking ${path}`).code));
  }
}
