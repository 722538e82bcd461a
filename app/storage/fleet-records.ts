// The records of one open fleet in memory, and the only place that changes their files. One call at a time: the store queues them.
import { readFile } from 'node:fs/promises';
import type { Shop } from '../domain/fleet/shop.ts';
import { fail, ok, type Result } from '../domain/shared/result.ts';
import type { Vehicle } from '../domain/vehicle/vehicle.ts';
import { isThere, syncFolder, writeFileAtomically } from './atomic-file.ts';
import { contentHash } from './content-hash.ts';
import { idFromFile, namesIn, pathIn, shopFile, vehicleFile, vehiclesFolder, withdrawnFolder } from './fleet-folder.ts';
import type { Kept } from './kept.ts';
import { moveAside, renamePatiently } from './move-aside.ts';
import { putAside } from './quarantine.ts';
import type { FoundFleet, FoundRecord } from './read-fleet.ts';
import { type ReadRecord, readRecord, recordBytes } from './record-file.ts';
import type { RecordKind, RecordKinds } from './record-kind.ts';
import { problemFromError, type StorageProblem, systemCode } from './storage-problem.ts';

export type Outcome<Value> = Promise<Result<Value, StorageProblem>>;

export type RecordsSetting = {
  readonly folder: string;
  readonly kinds: RecordKinds;
  readonly clock: () => string;
  /** Why the fleet may not be written just now, asked before and after each write; null when it may. */
  readonly guard: () => Promise<StorageProblem | null>;
  readonly isReadOnly: () => boolean;
  /** Called when a damaged file was found and put aside while saving. */
  readonly onPutAside: () => void;
};

/**
 * Called when nothing stands against a change any more, right before the file is touched; a refusal stops the change. `before` and
 * `after` are null while the vehicle is not in the fleet; `revision` is the one to come, null where the record stays as it is.
 */
export type Announce = (
  before: Vehicle | null,
  after: Vehicle | null,
  revision: number | null,
) => Promise<Result<null, StorageProblem>>;

export class FleetRecords {
  readonly vehicles = new Map<string, Kept<Vehicle>>();
  shop: Kept<Shop> | null = null;
  private readonly setting: RecordsSetting;
  /** By path: the hashes of what this store has read or tried to write there. Any other content is not ours to replace. */
  private readonly knownHashes = new Map<string, Set<string>>();

  constructor(setting: RecordsSetting, found: FoundFleet) {
    this.setting = setting;
    if (found.shop) this.shop = this.remember(found.shop);
    for (const vehicle of found.vehicles) this.vehicles.set(vehicle.record.data.id, this.remember(vehicle));
  }

  /** A record that was left for later when the fleet was opened. */
  add(found: FoundRecord<Vehicle>): void {
    this.vehicles.set(found.record.data.id, this.remember(found));
  }

  private remember<Data>({ fileName, hash, record }: FoundRecord<Data>): Kept<Data> {
    this.knownHashes.set(fileName, new Set([hash]));
    return this.kept(record);
  }

  private kept<Data>({ data, revision, savedAt }: Omit<ReadRecord<Data>, 'version'>): Kept<Data> {
    return { data, revision, savedAt, isReadOnly: this.setting.isReadOnly() };
  }

  /** After the fleet was taken over by another desk: every record says that it cannot be changed here. */
  markReadOnly(): void {
    for (const [id, vehicle] of this.vehicles) this.vehicles.set(id, { ...vehicle, isReadOnly: true });
    if (this.shop) this.shop = { ...this.shop, isReadOnly: true };
  }

  /**
   * The bytes of a record's file as it lies on the disk, where they are this very state of it and were judged when they were read or
   * written; null where they are not.
   */
  async bytesOnDisk(path: string, { revision, savedAt }: Kept<unknown>): Promise<Buffer | null> {
    try {
      const bytes = await readFile(pathIn(this.setting.folder, path));
      const isThisState = bytes.includes(`\n  "revision": ${revision},\n  "savedAt": "${savedAt}",\n`);
      return isThisState && this.isKnownContent(path, contentHash(bytes)) ? bytes : null;
    } catch {
      return null;
    }
  }

  isKnownContent(path: string, hash: string): boolean {
    return this.knownHashes.get(path)?.has(hash) ?? false;
  }

  async saveVehicle(vehicle: Vehicle, baseRevision: number, announce: Announce): Outcome<Kept<Vehicle>> {
    const present = this.vehicles.get(vehicle.id) ?? null;
    if (present === null && idFromFile(vehicleFile(vehicle.id)) !== vehicle.id) {
      return fail({ code: 'invalid', detail: `Not an identity that can name a file: ${vehicle.id}` });
    }
    const refusal = this.staleness(vehicle.id, present, baseRevision);
    if (refusal) return fail(refusal);
    return this.writeVehicle(vehicle, baseRevision + 1, announce);
  }

  async saveShop(shop: Shop, baseRevision: number): Outcome<Kept<Shop>> {
    const refusal = this.staleness(shopFile, this.shop, baseRevision);
    if (refusal) return fail(refusal);
    return this.writeShop(shop, baseRevision + 1);
  }

  private staleness(what: string, present: Kept<unknown> | null, baseRevision: number): StorageProblem | null {
    const revision = present?.revision ?? 0;
    if (revision === baseRevision) return null;
    return {
      code: 'stale-revision',
      detail: `${what} is at revision ${revision}; the change was based on ${baseRevision}.`,
    };
  }

  /** Writes whatever the present revision is; the caller has decided. Memory changes only after the file is safely there. */
  async writeVehicle(vehicle: Vehicle, revision: number, announce: Announce): Outcome<Kept<Vehicle>> {
    const before = this.vehicles.get(vehicle.id)?.data ?? null;
    const record = { data: vehicle, revision, savedAt: this.setting.clock() };
    return this.putVehicle(record, (after) => announce(before, after, revision));
  }

  private async putVehicle(
    record: { readonly data: Vehicle; readonly revision: number; readonly savedAt: string },
    announce: (after: Vehicle) => Outcome<null>,
  ): Outcome<Kept<Vehicle>> {
    const { id } = record.data;
    const written = await this.write(vehicleFile(id), this.setting.kinds.vehicle, id, record, announce);
    if (written.ok) this.vehicles.set(id, written.value);
    return written;
  }

  async writeShop(shop: Shop, revision: number): Outcome<Kept<Shop>> {
    const record = { data: shop, revision, savedAt: this.setting.clock() };
    const written = await this.write(shopFile, this.setting.kinds.shop, null, record, nothingToAnnounce);
    if (written.ok) this.shop = written.value;
    return written;
  }

  private async write<Data>(
    path: string,
    kind: RecordKind<Data>,
    id: string | null,
    record: { readonly data: Data; readonly revision: number; readonly savedAt: string },
    announce: (data: Data) => Outcome<null>,
  ): Outcome<Kept<Data>> {
    const prepared = recordBytes(kind, record);
    if (!prepared.ok) return fail({ code: 'invalid', detail: `${path}: ${prepared.error}` });
    const refusal = (await this.setting.guard()) ?? (await this.clearTheWay(path, kind, id));
    if (refusal) return fail(refusal);
    const announced = await announce(prepared.value.data);
    if (!announced.ok) return announced;
    const hash = contentHash(prepared.value.bytes);
    const known = this.knownHashes.get(path) ?? new Set();
    this.knownHashes.set(path, known.add(hash));
    const written = await writeFileAtomically(pathIn(this.setting.folder, path), prepared.value.bytes);
    if (!written.ok) return written;
    const lost = await this.setting.guard();
    if (lost) return fail(lost);
    this.knownHashes.set(path, new Set([hash]));
    return ok(this.kept({ ...record, data: prepared.value.data }));
  }

  /** Looks at what lies where a record will be written. Known content may be replaced; what has been damaged is put aside first. */
  private async clearTheWay<Data>(
    path: string,
    kind: RecordKind<Data>,
    id: string | null,
  ): Promise<StorageProblem | null> {
    let bytes: Buffer;
    try {
      bytes = await readFile(pathIn(this.setting.folder, path));
    } catch (error) {
      return systemCode(error) === 'ENOENT' ? null : problemFromError(error, `Looking at ${path}`);
    }
    if (this.isKnownContent(path, contentHash(bytes))) return null;
    const read = readRecord(bytes, kind, id);
    if (!read.ok && read.error.kind === 'newer-version')
      return { code: 'newer-version', detail: `${path}: ${read.error.reason}` };
    if (read.ok || !this.knownHashes.has(path)) {
      return {
        code: 'stale-revision',
        detail: `${path} was put there by something else. Open the fleet again to see it.`,
      };
    }
    const { kind: fault, reason } = read.error;
    const aside = await putAside(this.setting.folder, { fileName: path, kind: fault, reason }, this.setting.clock());
    if (!aside.ok) return aside.error;
    this.setting.onPutAside();
    return null;
  }

  /** Takes a vehicle out of the fleet by moving its file; its record stays readable in the folder for withdrawn ones. */
  async withdrawVehicle(id: string, baseRevision: number, announce: Announce): Outcome<null> {
    const present = this.vehicles.get(id);
    if (!present) return fail({ code: 'not-found', detail: `There is no vehicle ${id}.` });
    const refusal = this.staleness(id, present, baseRevision) ?? (await this.setting.guard());
    if (refusal) return fail(refusal);
    const { folder, kinds } = this.setting;
    const path = vehicleFile(id);
    const blocked = await this.clearTheWay(path, kinds.vehicle, id);
    if (blocked) return fail(blocked);
    if (!(await isThere(pathIn(folder, path)))) {
      const rewritten = await this.putVehicle(present, nothingToAnnounce);
      if (!rewritten.ok) return rewritten;
    }
    const announced = await announce(present.data, null, null);
    if (!announced.ok) return announced;
    try {
      await moveAside(pathIn(folder, path), pathIn(folder, withdrawnFolder), withdrawnNames(id));
    } catch (error) {
      return fail(problemFromError(error, `Withdrawing ${path}`));
    }
    this.vehicles.delete(id);
    this.knownHashes.delete(path);
    return ok(null);
  }

  /** Brings back the newest withdrawn record of this vehicle, under the revision it had. */
  async bringBackVehicle(id: string, announce: Announce): Outcome<Kept<Vehicle>> {
    const { folder, kinds } = this.setting;
    if (this.vehicles.has(id)) return fail({ code: 'stale-revision', detail: `The vehicle ${id} is in the fleet.` });
    const refusal = await this.setting.guard();
    if (refusal) return fail(refusal);
    try {
      let newest: (FoundRecord<Vehicle> & { readonly name: string }) | null = null;
      for (const name of await this.withdrawnFiles(id)) {
        const bytes = await readFile(pathIn(folder, `${withdrawnFolder}/${name}`));
        const read = readRecord(bytes, kinds.vehicle, id);
        if (!read.ok || (newest && newest.record.savedAt > read.value.savedAt)) continue;
        newest = { name, fileName: vehicleFile(id), hash: contentHash(bytes), record: read.value };
      }
      if (!newest) return fail({ code: 'not-found', detail: `No withdrawn record of ${id} reads well.` });
      if (await isThere(pathIn(folder, newest.fileName))) {
        return fail({ code: 'stale-revision', detail: `Something else is at ${newest.fileName}.` });
      }
      const announced = await announce(null, newest.record.data, null);
      if (!announced.ok) return announced;
      await renamePatiently(pathIn(folder, `${withdrawnFolder}/${newest.name}`), pathIn(folder, newest.fileName));
      await syncFolder(pathIn(folder, vehiclesFolder));
      await syncFolder(pathIn(folder, withdrawnFolder));
      const kept = this.remember(newest);
      this.vehicles.set(id, kept);
      return ok(kept);
    } catch (error) {
      return fail(problemFromError(error, `Bringing back ${id}`));
    }
  }

  private async withdrawnFiles(id: string): Promise<string[]> {
    const names = await namesIn(pathIn(this.setting.folder, withdrawnFolder));
    return names.filter((name) => withdrawnId(name) === id);
  }
}

async function nothingToAnnounce(): Outcome<null> {
  return ok(null);
}

/** 'abcd.json', then 'abcd.2.json': the same vehicle may be withdrawn more than once. */
function* withdrawnNames(id: string): Generator<string> {
  for (let number = 1; ; number++) yield number === 1 ? `${id}.json` : `${id}.${number}.json`;
}

export function withdrawnId(name: string): string | null {
  return /^([^.]+)(?:\.\d+)?\.json$/.exec(name)?.[1] ?? null;
}
