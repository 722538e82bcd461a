// Reads the history of one vehicle backwards, a page at a time. Changes nothing; lines that cannot be read are passed over and told.
import { type FileHandle, open } from 'node:fs/promises';
import { type HistoryEntry, historyEntrySchema, presenceAfter } from '../domain/people/history-entry.ts';
import { fail, ok, type Result } from '../domain/shared/result.ts';
import { historyFile } from './change-log.ts';
import { pathIn } from './fleet-folder.ts';
import { problemFromError, type StorageProblem, systemCode } from './storage-problem.ts';

const chunkBytes = 64 * 1024;
const lineFeed = 0x0a;

/** Where the next older page begins. */
export type HistoryPlace = {
  /** Bytes from the beginning of the file. */
  readonly offset: number;
  /** The lowest revision told of so far; null when none was. */
  readonly lowestRevision: number | null;
  /** Whether the vehicle was in the fleet when what is older had been done; null when that is not known. */
  readonly isInFleet: boolean | null;
};

export type HistoryFault = {
  readonly kind: 'torn-end' | 'unreadable';
  /** Where the line begins, in bytes from the beginning of the file. */
  readonly offset: number;
  readonly sentence: string;
};

export type HistoryLine = HistoryEntry & {
  /** False when the save that it announces did not come about: the disk was full, perhaps, or the program was stopped. */
  readonly wasSaved: boolean;
};

export type HistoryPage = {
  /** Newest first. */
  readonly lines: readonly HistoryLine[];
  readonly faults: readonly HistoryFault[];
  /** Null: there is nothing older. */
  readonly older: HistoryPlace | null;
};

type RawLine = { readonly offset: number; readonly bytes: Buffer; readonly isEnded: boolean };

/** Lines from `end` backwards, empty ones left out. */
async function* linesBefore(handle: FileHandle, end: number): AsyncGenerator<RawLine> {
  let later: Buffer = Buffer.alloc(0);
  let isEnded = false;
  let from = end;
  while (from > 0) {
    const size = Math.min(chunkBytes, from);
    from -= size;
    const chunk = Buffer.alloc(size);
    const { bytesRead } = await handle.read(chunk, 0, size, from);
    if (bytesRead < size) throw new Error('The history became shorter while it was read.');
    let data: Buffer = later.length === 0 ? chunk : Buffer.concat([chunk, later]);
    for (let feed = data.lastIndexOf(lineFeed); feed >= 0; feed = data.lastIndexOf(lineFeed)) {
      const bytes = data.subarray(feed + 1);
      if (bytes.length > 0) yield { offset: from + feed + 1, bytes, isEnded };
      isEnded = true;
      data = data.subarray(0, feed);
    }
    later = data;
  }
  if (later.length > 0) yield { offset: 0, bytes: later, isEnded };
}

function readLine(bytes: Buffer): HistoryEntry | null {
  try {
    const text = new TextDecoder('utf-8', { fatal: true }).decode(bytes);
    const entry = historyEntrySchema.safeParse(JSON.parse(text));
    return entry.success ? entry.data : null;
  } catch {
    return null;
  }
}

function faultOf({ offset, isEnded }: RawLine): HistoryFault {
  return isEnded
    ? {
        kind: 'unreadable',
        offset,
        sentence: 'A line of this history cannot be read and is passed over. It is kept as it is.',
      }
    : {
        kind: 'torn-end',
        offset,
        sentence: 'The last line of this history is cut off, as a power cut leaves it. All lines before it are whole.',
      };
}

/**
 * Up to `count` lines before `place` (null: from the end). `savedRevision` is the record's present revision, null for a vehicle that is
 * not in the fleet: a line that announces a later one, or one that was announced again later, tells of a save that did not come about.
 */
export async function readHistory(
  folder: string,
  vehicleId: string,
  { place, count, savedRevision }: { place: HistoryPlace | null; count: number; savedRevision: number | null },
): Promise<Result<HistoryPage, StorageProblem>> {
  let handle: FileHandle;
  try {
    handle = await open(pathIn(folder, historyFile(vehicleId)), 'r');
  } catch (error) {
    if (systemCode(error) === 'ENOENT') return ok({ lines: [], faults: [], older: null });
    return fail(problemFromError(error, `Reading ${historyFile(vehicleId)}`));
  }
  try {
    const { size } = await handle.stat();
    const lines: HistoryLine[] = [];
    const faults: HistoryFault[] = [];
    let lowestRevision = place?.lowestRevision ?? null;
    let isInFleet = place === null ? savedRevision !== null : place.isInFleet;
    let oldest = Math.min(place?.offset ?? size, size);
    // A place given back begins where a line begins: what is before it is ended.
    for await (const raw of linesBefore(handle, oldest)) {
      if (lines.length === count) break;
      oldest = raw.offset;
      const entry = readLine(raw.bytes);
      if (entry === null) {
        faults.push(faultOf(raw));
        continue;
      }
      const { revision } = entry;
      const limit = lowestRevision === null ? savedRevision : lowestRevision - 1;
      const presence = presenceAfter(entry);
      const isInOrder = revision === null || limit === null || revision <= limit;
      // Taking out and bringing back change no revision: what came of them shows in where the vehicle was afterwards.
      const wasSaved = isInOrder && (revision !== null || presence === null || presence === (isInFleet ?? presence));
      if (revision !== null && wasSaved) lowestRevision = revision;
      if (wasSaved && presence !== null) isInFleet = revision === null ? !presence : null;
      lines.push({ ...entry, wasSaved });
    }
    return ok({
      lines,
      faults,
      older: oldest > 0 && lines.length === count ? { offset: oldest, lowestRevision, isInFleet } : null,
    });
  } catch (error) {
    return fail(problemFromError(error, `Reading ${historyFile(vehicleId)}`));
  } finally {
    await handle.close();
  }
}
