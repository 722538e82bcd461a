// Writes the whole fleet as one zip file: records, histories and withdrawn records with a table of contents and hashes. One file at a
// time is held in memory. Nothing is there under the archive's name before all of it has been read back.
import { randomUUID } from 'node:crypto';
import { open, readFile, rm } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { Zip, ZipDeflate } from 'fflate';
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
import { contentHash } from './content-hash.ts';
import { namesIn, pathIn, shopFile, vehicleFile, vehicleIdOf, vehiclesFolder } from './fleet-folder.ts';
import { renamePatiently } from './move-aside.ts';
import { listOtherFiles } from './other-files.ts';
import { checkArchive } from './read-archive.ts';
import { problemFromError, type StorageProblem } from './storage-problem.ts';

/** More files than this, or more bytes, need another form of zip (APPNOTE.TXT, 4.3.9 and 4.4.1.4). */
const mostFiles = 65_000;
const mostBytes = 4_000_000_000;

async function pathsOf(folder: string, withKeys: boolean): Promise<string[]> {
  const records = (await namesIn(pathIn(folder, vehiclesFolder)))
    .map((name) => vehicleFile(name.replace(/\.json$/, '')))
    .filter((path) => vehicleIdOf(path) !== null);
  const others = (await listOtherFiles(folder)).filter((path) => withKeys || !keptOutUnlessAsked.includes(path));
  return [shopFile, ...records, ...others].filter(isArchived);
}

type Writing = { readonly write: (bytes: Uint8Array) => Promise<unknown>; readonly bytesSoFar: () => number };

async function writeZip(folder: string, paths: readonly string[], madeAt: string, { write, bytesSoFar }: Writing) {
  let chunks: Uint8Array[] = [];
  let failure: Error | null = null;
  const zip = new Zip((error, chunk) => {
    if (error) failure = error;
    else chunks.push(chunk);
  });
  const put = async (path: string, bytes: Uint8Array) => {
    const entry = new ZipDeflate(path, { level: 6 });
    entry.mtime = madeAt;
    zip.add(entry);
    entry.push(bytes, true);
    const ready = chunks;
    chunks = [];
    for (const chunk of ready) await write(chunk);
    if (failure !== null) throw failure;
    if (bytesSoFar() > mostBytes) throw new Error('The fleet is larger than one archive can hold (4 GB).');
  };
  const files: ArchiveContents['files'] = [];
  const missing: string[] = [];
  for (const path of paths) {
    const bytes = await readFile(pathIn(folder, path)).catch(() => null);
    if (bytes === null || whyBadArchived(path, bytes) !== null) {
      missing.push(path);
      continue;
    }
    await put(path, bytes);
    files.push({ path, sha256: contentHash(bytes), bytes: bytes.length });
  }
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

/** `withKeys`: with the vault and people's keys too. Answers what is in it; `missing` names what could not be read and is not. */
export async function writeArchive(
  folder: string,
  target: string,
  { withKeys, madeAt }: { readonly withKeys: boolean; readonly madeAt: string },
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
      contents = await writeZip(folder, paths, madeAt, { write, bytesSoFar: () => bytes });
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
