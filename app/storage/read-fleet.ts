// Reads the records of a fleet folder once; sold vehicles of a long ledger may be left for later. Changes nothing: what to do about bad
// files is decided by the caller.
import { readFile } from 'node:fs/promises';
import type { Shop } from '../domain/fleet/shop.ts';
import type { Vehicle } from '../domain/vehicle/vehicle.ts';
import { mapAtMost } from './at-most.ts';
import { contentHash } from './content-hash.ts';
import type { BadFile } from './file-trouble.ts';
import { namesIn, pathIn, shopFile, vehiclesFolder } from './fleet-folder.ts';
import type { Foreground } from './foreground.ts';
import { type ReadRecord, type RecordFault, readRecord } from './record-file.ts';
import type { RecordKind, RecordKinds } from './record-kind.ts';
import { systemCode } from './storage-problem.ts';

const filesAtOnce = 32;

export type FoundRecord<Data> = { readonly fileName: string; readonly hash: string; readonly record: ReadRecord<Data> };
export type FoundFleet = {
  readonly shop: FoundRecord<Shop> | null;
  readonly vehicles: readonly FoundRecord<Vehicle>[];
  readonly bad: readonly BadFile[];
  /** Files of sold vehicles that have not been read yet, for `readLater`. Empty unless the caller allowed it. */
  readonly later: readonly string[];
};

export type Reading = {
  /** From so many sold vehicles on they are left for later; null: everything is read at once. */
  readonly readsSoldLaterFrom: number | null;
};

type Found<Data> =
  | { readonly kind: 'good'; readonly found: FoundRecord<Data> }
  | { readonly kind: 'bad'; readonly bad: BadFile; readonly fault: RecordFault<Data> | null }
  | { readonly kind: 'for-later' }
  | { readonly kind: 'none' };

type Glance = (bytes: Buffer) => boolean;
const nothingIsForLater: Glance = () => false;

async function readOne<Data>(
  folder: string,
  fileName: string,
  kind: RecordKind<Data>,
  expectedId: string | null,
  isForLater: Glance = nothingIsForLater,
): Promise<Found<Data>> {
  let bytes: Buffer;
  try {
    bytes = await readFile(pathIn(folder, fileName));
  } catch (error) {
    if (systemCode(error) === 'ENOENT') return { kind: 'none' };
    const why = error instanceof Error ? error.message : String(error);
    return {
      kind: 'bad',
      bad: { fileName, kind: 'cannot-read', reason: `The system cannot read it: ${why}` },
      fault: null,
    };
  }
  if (isForLater(bytes)) return { kind: 'for-later' };
  const read = readRecord(bytes, kind, expectedId);
  if (read.ok) return { kind: 'good', found: { fileName, hash: contentHash(bytes), record: read.value } };
  return { kind: 'bad', bad: { fileName, kind: read.error.kind, reason: read.error.reason }, fault: read.error };
}

/** A file under a wrong name whose vehicle is there under its right name too, or under another wrong one, is doubled. */
function nameDoubles(results: readonly Found<Vehicle>[]): BadFile[] {
  const idOf = (result: Found<Vehicle>): string | null => {
    if (result.kind === 'good') return result.found.record.data.id;
    return result.kind === 'bad' ? (result.fault?.record?.data.id ?? null) : null;
  };
  const holders = new Map<string, number>();
  for (const id of results.map(idOf)) if (id !== null) holders.set(id, (holders.get(id) ?? 0) + 1);
  return results.flatMap((result) => {
    if (result.kind !== 'bad') return [];
    const id = idOf(result);
    if (id === null || (holders.get(id) ?? 0) < 2) return [result.bad];
    const record = result.fault?.record;
    const reason = doubledReason(id, record?.revision ?? 0, record?.savedAt ?? '');
    return [{ ...result.bad, kind: 'doubled' as const, reason }];
  });
}

export function doubledReason(id: string, revision: number, savedAt: string): string {
  return `The vehicle ${id} is there more than once; this copy is revision ${revision}, saved ${savedAt}. Only a file named after its vehicle is used.`;
}

/** Names that can be a record: hidden files and what other programs leave (no '.json') are not looked at. */
export function isRecordName(name: string): boolean {
  return name.endsWith('.json') && !name.startsWith('.');
}

/**
 * True for a file that looks as this program writes the record of a sold vehicle in today's format. A glance only: when it is read for
 * good it is judged like any other.
 */
function looksSold(bytes: Buffer, { version }: RecordKind<Vehicle>): boolean {
  return bytes.includes('\n    "sale": {') && bytes.includes(`\n  "version": ${version},`);
}

/** `isForLater`: a glance at the bytes that leaves the record for later instead of judging it. */
function readVehicle(
  folder: string,
  { vehicle }: RecordKinds,
  name: string,
  isForLater: Glance = nothingIsForLater,
): Promise<Found<Vehicle>> {
  return readOne(folder, `${vehiclesFolder}/${name}`, vehicle, name.slice(0, -'.json'.length), isForLater);
}

/** Throws the system's error when the folder itself cannot be listed. */
export async function readFleet(
  folder: string,
  kinds: RecordKinds,
  { readsSoldLaterFrom }: Reading = { readsSoldLaterFrom: null },
): Promise<FoundFleet> {
  const names = (await namesIn(pathIn(folder, vehiclesFolder))).filter(isRecordName);
  const shop = await readOne(folder, shopFile, kinds.shop, null);
  const mayWait = readsSoldLaterFrom !== null && names.length >= readsSoldLaterFrom;
  const isForLater: Glance = mayWait ? (bytes) => looksSold(bytes, kinds.vehicle) : nothingIsForLater;
  const first = await mapAtMost(names, filesAtOnce, (name) => readVehicle(folder, kinds, name, isForLater));
  const sold = names.filter((_, index) => first[index]?.kind === 'for-later');
  // A file under a wrong name and a migration both concern the whole fleet: then nothing is left for later.
  const allIsWell =
    first.every(({ kind }) => kind !== 'bad') && shop.kind !== 'bad' && !isAnyOld([shop, ...first], kinds);
  const waits = sold.length >= (readsSoldLaterFrom ?? 0) && allIsWell;
  const rest = waits ? [] : await mapAtMost(sold, filesAtOnce, (name) => readVehicle(folder, kinds, name));
  const vehicles = [...first, ...rest];
  return {
    shop: shop.kind === 'good' ? shop.found : null,
    vehicles: vehicles.flatMap((result) => (result.kind === 'good' ? [result.found] : [])),
    bad: [...(shop.kind === 'bad' ? [shop.bad] : []), ...nameDoubles(vehicles)],
    later: waits ? sold : [],
  };
}

function isAnyOld(found: readonly Found<Shop | Vehicle>[], kinds: RecordKinds): boolean {
  return found.some(
    (one) =>
      one.kind === 'good' &&
      one.found.record.version < (one.found.fileName === shopFile ? kinds.shop.version : kinds.vehicle.version),
  );
}

/** How long reading may keep the program from answering something else. */
const sliceMs = 12;

/**
 * Reads what `readFleet` left for later, a few files at a time, standing back for what a person does, and hands over each good record. Answers what was bad.
 */
export async function readLater(
  folder: string,
  kinds: RecordKinds,
  names: readonly string[],
  take: (found: FoundRecord<Vehicle>) => void,
  foreground: Foreground,
): Promise<BadFile[]> {
  const bad: BadFile[] = [];
  let until = performance.now() + sliceMs;
  await mapAtMost(names, 4, async (name) => {
    const result = await readVehicle(folder, kinds, name);
    if (result.kind === 'good') take(result.found);
    if (result.kind === 'bad') bad.push(result.bad);
    if (performance.now() < until && !foreground.isBusy) return;
    await foreground.pause();
    until = performance.now() + sliceMs;
  });
  return bad;
}
