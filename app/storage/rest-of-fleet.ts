// The sold vehicles of a long ledger, read after the rest so that nobody waits for them. Whoever needs the whole fleet awaits `whole`.
import type { Vehicle } from '../domain/vehicle/vehicle.ts';
import type { BadFile } from './file-trouble.ts';
import type { FleetRecords } from './fleet-records.ts';
import type { Foreground } from './foreground.ts';
import { type FoundRecord, readLater } from './read-fleet.ts';
import type { RecordKinds } from './record-kind.ts';
import { problemFromError } from './storage-problem.ts';

export type RestSetting = {
  readonly folder: string;
  readonly kinds: RecordKinds;
  /** Names of the files that were left for later. */
  readonly names: readonly string[];
  /** Reading begins when this comes true. */
  readonly after: Promise<void>;
  readonly records: FleetRecords;
  readonly foreground: Foreground;
  /** Puts bad files aside where the fleet may be written; answers those that stay where they are. */
  readonly putAside: (bad: readonly BadFile[]) => Promise<readonly BadFile[]>;
};

export class RestOfFleet {
  /** What of it was bad and lies where it was found. Comes true when all of it is in the records; never fails. */
  readonly whole: Promise<readonly BadFile[]>;
  #toRead: number;

  constructor(setting: RestSetting) {
    this.#toRead = setting.names.length;
    this.whole = this.#toRead === 0 ? Promise.resolve([]) : this.#read(setting);
  }

  /** How many of them are not read yet. */
  get toRead(): number {
    return this.#toRead;
  }

  async #read({
    folder,
    kinds,
    names,
    after,
    records,
    foreground,
    putAside,
  }: RestSetting): Promise<readonly BadFile[]> {
    await after;
    const take = (found: FoundRecord<Vehicle>) => {
      records.add(found);
      this.#toRead -= 1;
    };
    try {
      return await putAside(await readLater(folder, kinds, names, take, foreground));
    } catch (error) {
      const { detail } = problemFromError(error, 'Reading the sold vehicles');
      return [{ fileName: 'vehicles', kind: 'cannot-read', reason: detail }];
    } finally {
      this.#toRead = 0;
    }
  }
}
