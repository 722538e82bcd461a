// The entries of a zip file by its central directory, and the bytes of each. Reads one entry at a time; trusts no name and no size.
// Source of the layout: PKWARE APPNOTE.TXT 6.3, sections 4.3.7, 4.3.12 and 4.3.16.
import type { FileHandle } from 'node:fs/promises';
import { inflateRawSync } from 'node:zlib';
import { fail, ok, type Result } from '../domain/shared/result.ts';

export type ZipEntry = {
  readonly name: string;
  readonly method: number;
  readonly packedBytes: number;
  readonly bytes: number;
  readonly at: number;
};

const endSignature = 0x06054b50;
const entrySignature = 0x02014b50;
const fileSignature = 0x04034b50;
/** No record of this program comes near it. */
const largestEntryBytes = 64_000_000;
const largestDirectoryBytes = 32_000_000;

const noZip = 'This is no archive of this program, or it was cut off on its way. Copy it again from where it was made.';

async function readAt(file: FileHandle, at: number, size: number): Promise<Buffer> {
  const buffer = Buffer.alloc(size);
  const { bytesRead } = await file.read(buffer, 0, size, at);
  return buffer.subarray(0, bytesRead);
}

export async function zipEntries(file: FileHandle): Promise<Result<readonly ZipEntry[], string>> {
  const { size } = await file.stat();
  const tailSize = Math.min(size, 65_557);
  const tail = await readAt(file, size - tailSize, tailSize);
  let end = tail.length - 22;
  while (end >= 0 && tail.readUInt32LE(end) !== endSignature) end -= 1;
  if (end < 0) return fail(noZip);
  const count = tail.readUInt16LE(end + 10);
  const directorySize = tail.readUInt32LE(end + 12);
  const directoryAt = tail.readUInt32LE(end + 16);
  if (directorySize > largestDirectoryBytes || directoryAt + directorySize > size) return fail(noZip);
  const directory = await readAt(file, directoryAt, directorySize);
  const entries: ZipEntry[] = [];
  let at = 0;
  for (let index = 0; index < count; index += 1) {
    if (at + 46 > directory.length || directory.readUInt32LE(at) !== entrySignature) return fail(noZip);
    const nameLength = directory.readUInt16LE(at + 28);
    entries.push({
      name: directory.subarray(at + 46, at + 46 + nameLength).toString('utf8'),
      method: directory.readUInt16LE(at + 10),
      packedBytes: directory.readUInt32LE(at + 20),
      bytes: directory.readUInt32LE(at + 24),
      at: directory.readUInt32LE(at + 42),
    });
    at += 46 + nameLength + directory.readUInt16LE(at + 30) + directory.readUInt16LE(at + 32);
  }
  return ok(entries);
}

/** Packed by "deflate" or not at all; anything else, and what does not come out at its size, is refused. */
export async function readEntry(file: FileHandle, entry: ZipEntry): Promise<Result<Buffer, string>> {
  const broken = `${entry.name.slice(0, 100)} in the archive cannot be unpacked. Copy the archive again from where it was made.`;
  if (entry.bytes > largestEntryBytes || entry.packedBytes > largestEntryBytes) return fail(broken);
  const head = await readAt(file, entry.at, 30);
  if (head.length < 30 || head.readUInt32LE(0) !== fileSignature) return fail(broken);
  const from = entry.at + 30 + head.readUInt16LE(26) + head.readUInt16LE(28);
  const packed = await readAt(file, from, entry.packedBytes);
  if (packed.length !== entry.packedBytes) return fail(broken);
  if (entry.method === 0) return ok(packed);
  if (entry.method !== 8) return fail(broken);
  try {
    const bytes = inflateRawSync(packed, { maxOutputLength: Math.max(entry.bytes, 1) });
    return bytes.length === entry.bytes ? ok(bytes) : fail(broken);
  } catch {
    return fail(broken);
  }
}
