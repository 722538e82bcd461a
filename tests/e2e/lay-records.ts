// A fleet of a test's own, written as the program writes it: the shop and its vehicles, each in its file.
import { mkdir, writeFile } from 'node:fs/promises';
import path from 'node:path';
import type { Shop } from '../../app/domain/fleet/shop.ts';
import type { Vehicle } from '../../app/domain/vehicle/vehicle.ts';
import { recordBytes } from '../../app/storage/record-file.ts';
import { type RecordKind, recordKinds } from '../../app/storage/record-kind.ts';

const savedAt = '2026-03-18T08:00:00.000Z';

function bytesOf<Data>(kind: RecordKind<Data>, data: Data): Buffer {
  const written = recordBytes(kind, { data, revision: 1, savedAt });
  if (!written.ok) throw new Error(`The ${kind.what} of this test does not hold: ${written.error}`);
  return written.value.bytes;
}

/** For the option `fleet`: lays these records. Facts in the past stay the same age where the shop names its own today. */
export function records(shop: Shop, vehicles: readonly Vehicle[]): { lay(folder: string): Promise<void> } {
  return {
    async lay(folder) {
      await mkdir(path.join(folder, 'vehicles'));
      await writeFile(path.join(folder, 'shop.json'), bytesOf(recordKinds.shop, shop));
      for (const vehicle of vehicles) {
        await writeFile(path.join(folder, 'vehicles', `${vehicle.id}.json`), bytesOf(recordKinds.vehicle, vehicle));
      }
    },
  };
}
