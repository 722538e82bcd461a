// Reads every record of a fleet folder once. Changes nothing: what to do about bad files is decided by the caller.
import { readFile } from 'node:fs/promises';
import type { Shop } from '../domain/fleet/shop.ts';
import type { Vehicle } from '../domain/vehicle/vehicle.ts';
import { mapAtMost } from './at-most.ts';
import { contentHash } from './content-hash.ts';
import type { BadFile } from './file-trouble.ts';
import { namesIn, pathIn, shopFile, vehiclesFolder } from './fleet-folder.ts';
import { type ReadRecord, type RecordFault, readRecord } from './record-file.ts';
import type { RecordKind, RecordKinds } from './record-kind.ts';
import { systemCode } from './storage-problem.ts';

const filesAtOnce = 32;

export type FoundRecord<Data> = { readonly fileName: string; readonly hash: string; readonly record: ReadRecord<Data> };
export type FoundFleet = {
  readonly shop: FoundRecord<Shop> | null;
  readonly vehicles: readonly FoundRecord<Vehicle>[];
  readonly bad: readonly BadFile[];
};

type Found<Data> =
  | { readonly kind: 'good'; readonly found: FoundRecord<Data> }
  | { readonly kind: 'bad'; readonly bad: BadFile; readonly fault: RecordFault<Data> | null }
  | { readonly kind: 'none' };

async function readOne<Data>(
  folder: string,
  fileName: string,
  kind: RecordKind<Data>,
  expectedId: string | null,
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

/** Throws the system's error when the folder itself cannot be listed. */
export async function readFleet(folder: string, kinds: RecordKinds): Promise<FoundFleet> {
  const names = (await namesIn(pathIn(folder, vehiclesFolder))).filter(isRecordName);
  const shop = await readOne(folder, shopFile, kinds.shop, null);
  const vehicles = await mapAtMost(names, filesAtOnce, (name) =>
    readOne(folder, `${vehiclesFolder}/${name}`, kinds.vehicle, name.slice(0, -'.json'.length)),
  );
  return {
    shop: shop.kind === 'good' ? shop.found : null,
    vehicles: vehicles.flatMap((result) => (result.kind === 'good' ? [result.found] : [])),
    bad: [...(shop.kind === 'bad' ? [shop.bad] : []), ...nameDoubles(vehicles)],
  };
}
