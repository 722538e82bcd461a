// Writes the whole fleet as one zip file: records, histories and withdrawn records with a table of contents and hashes. One file at a
// time is held in memory. Nothing is there under the archive's name before all of it has been read back.
import { randomUUID } from 'node:crypto';
import { open, readFile, rm } from 'node:fs/promises';
import { basename, dirname, join } from 'node:path';
import { Zip, ZipDeflate, ZipPassThrough } from 'fflate';
import { fail, ok, type Result } from '../domain/shared/result.ts';
import {
  type ArchiveContents,
  archiveContentsFile,
  archiveFormat,
  isArchived,
  keptOutUnlessAsked,
  whyBadArchived,
} from './archive-contents.ts';
import { syncFolder } from './atomic-file.ts';
import { attachmentPathsOf, attachmentPlace } from './attachment-files.ts';
import { contentHash } from './content-hash.ts';
import {
  namesIn,
  pathIn,
  shopFile,
  vehicleFile,
  vehicleIdOf,
  vehiclesFolder,
  withdrawnFolder,
} from './fleet-folder.ts';
import { withdrawnId } from './fleet-records.ts';
import { renamePatiently } from './move-aside.ts';
import { listOtherFiles } from './other-files.ts';
import { checkArchive } from './read-archive.ts';
import { readRecord } from './record-file.ts';
import { recordKinds } from './record-kind.ts';
import { problemFromError, type StorageProblem } from './storage-problem.ts';

/** More files than this, or more bytes, need another form of zip (APPNOTE.TXT, 4.3.9 and 4.4.1.4). */
const mostFiles = 65_000;
export const mostArchiveBytes = 4_000_000_000;

async function pathsOf(folder: string, withKeys: boolean): Promise<string[]> {
  const records = (await namesIn(pathIn(folder, vehiclesFolder)))
    .map((name) => vehicleFile(name.replace(/\.json$/, '')))
    .filter((path) => vehicleIdOf(path) !== null);
  const others = (await listOtherFiles(folder)).filter((path) => withKeys || !keptOutUnlessAsked.includes(path));
  return [shopFile, ...records, ...others].filter(isArchived);
}

export type ArchiveWish = { readonly withKeys: boolean; readonly withAttachments: boolean; readonly madeAt: string };

type Writing = { readonly write: (bytes: Uint8Array) => Promise<unknown>; readonly bytesSoFar: () => number };

/** What the record of a vehicle, in the lot or withdrawn, names; nothing where it is another file or does not read. */
function namedIn(path: string, bytes: Buffer): readonly string[] {
  const isWithdrawn = path.startsWith(`${withdrawnFolder}/`);
  const id = isWithdrawn ? withdrawnId(basename(path)) : vehicleIdOf(path);
  if (id === null) return [];
  const read = readRecord(bytes, recordKinds.vehicle, id);
  return read.ok ? attachmentPathsOf(read.value.data) : [];
}

type ZipPlan = { readonly paths: readonly string[]; readonly madeAt: string; readonly withAttachments: boolean };

async function writeZip(
  folder: string,
  { paths, madeAt, withAttachments }: ZipPlan,
  { write, bytesSoFar }: Writing,
): Promise<ArchiveContents> {
  let chunks: Uint8Array[] = [];
  let failure: Error | null = null;
  const zip = new Zip((error, chunk) => {
    if (error) failure = error;
    else chunks.push(chunk);
  });
  const put = async (path: string, bytes: Uint8Array) => {
    // Pictures and PDFs are packed already.
    const isPacked = attachmentPlace(path) !== null;
    const entry = isPacked ? new ZipPassThrough(path) : new ZipDeflate(path, { level: 6 });
    entry.mtime = madeAt;
    zip.add(entry);
    entry.push(bytes, true);
    const ready = chunks;
    chunks = [];
    for (const chunk of ready) await write(chunk);
    if (failure !== null) throw failure;
    if (bytesSoFar() > mostArchiveBytes) throw new Error('The fleet is larger than one archive can hold (4 GB).');
  };
  const files: ArchiveContents['files'] = [];
  const missing: string[] = [];
  const named = new Set<string>();
  const putFile = async (path: string) => {
    const bytes = await readFile(pathIn(folder, path)).catch(() => null);
    if (bytes === null || whyBadArchived(path, bytes) !== null) {
      missing.push(path);
      return;
    }
    await put(path, bytes);
    files.push({ path, sha256: contentHash(bytes), bytes: bytes.length });
    if (withAttachments) for (const other of namedIn(path, bytes)) named.add(other);
  };
  for (const path of paths) await putFile(path);
  for (const path of named) await putFile(path);
  if (files.length > mostFiles) throw new Error(`There are ${files.length} files, too many for one archive.`);
  const contents: ArchiveContents = {
    format: archiveFormat,
    version: 1,
    madeAt,
    fileCount: files.length,
    files,
    missing,
  };
  await put(archiveContentsFile, Buffer.from(`${JSON.stringify(contents, null, 2)}\n`));
  zip.end();
  for (const chunk of chunks) await write(chunk);
  return contents;
}

/** `withKeys`: with the vault and people's keys too; `withAttachments`: with the photographs and documents that records name. Answers what is in it; `missing` names what could not be read and is not. */
export async function writeArchive(
  folder: string,
  target: string,
  { withKeys, withAttachments, madeAt }: ArchiveWish,
): Promise<Result<ArchiveContents, StorageProblem>> {
  const making = join(dirname(target), `.unfinished-${randomUUID()}`);
  try {
    const paths = await pathsOf(folder, withKeys);
    if (paths.length > mostFiles)
      return fail({ code: 'invalid', detail: `There are ${paths.length} files, too many for one archive.` });
    const file = await open(making, 'wx');
    let contents: ArchiveContents;
    let bytes = 0;
    try {
      const write = (chunk: Uint8Array) => {
        bytes += chunk.length;
        return file.writeFile(chunk);
      };
      contents = await writeZip(folder, { paths, madeAt, withAttachments }, { write, bytesSoFar: () => bytes });
      await file.sync();
    } finally {
      await file.close();
    }
    const bad = await checkArchive(making);
    if (!bad.ok) {
      await rm(making, { force: true });
      return fail({ code: 'damaged', detail: `The archive did not read back as it was written: ${bad.error}` });
    }
    await renamePatiently(making, target);
    await syncFolder(dirname(target));
    return ok(contents);
  } catch (error) {
    await rm(making, { force: true }).catch(() => undefined);
    return fail(problemFromError(error, `Writing ${target}`));
  }
}
