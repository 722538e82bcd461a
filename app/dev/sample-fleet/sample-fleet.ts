// The whole sample fleet as files: every story told, numbered in the order of purchase, written by the program's own encoder. No disk here.

import { shopFile, vehicleFile } from '../../storage/fleet-folder.ts';
import { recordBytes } from '../../storage/record-file.ts';
import type { RecordKind } from '../../storage/record-kind.ts';
import { recordKinds } from '../../storage/record-kind.ts';
import { arriving } from './open-arriving.ts';
import { codeWaits } from './open-code-waits.ts';
import { longStay } from './open-long-stay.ts';
import { nearlyThere } from './open-nearly-there.ts';
import { partWaits } from './open-part-waits.ts';
import { programming } from './open-programming.ts';
import { proving } from './open-proving.ts';
import type { Untold } from './open-story.ts';
import { subletAndWork } from './open-sublet-and-work.ts';
import type { Told } from './ruled-record.ts';
import { sampleLogo } from './sample-logo.ts';
import { sampleShop } from './sample-shop.ts';
import { soldVehicles } from './sold-vehicles.ts';

const firstNumber = 1041;

/** Every vehicle of the sample, earliest purchase first. */
export function tellAll(): readonly Told[] {
  const open = [
    ...arriving,
    longStay,
    ...partWaits,
    ...codeWaits,
    ...programming,
    ...subletAndWork,
    ...proving,
    ...nearlyThere,
  ];
  const all: Untold[] = [...soldVehicles(), ...open];
  const inOrder = all.map((story, index) => ({ story, index }));
  inOrder.sort((a, b) =>
    a.story.boughtOn < b.story.boughtOn ? -1 : a.story.boughtOn > b.story.boughtOn ? 1 : a.index - b.index,
  );
  // Serial numbers far apart, each once: 7,919 is a prime that does not divide 900,000.
  return inOrder.map(({ story }, place) =>
    story.tell(`Q${firstNumber + place}`, 100_000 + ((place * 7_919) % 900_000)),
  );
}

function bytesOf<Data>(kind: RecordKind<Data>, record: { data: Data; revision: number; savedAt: string }): Buffer {
  const written = recordBytes(kind, record);
  if (!written.ok) throw new Error(written.error);
  return written.value.bytes;
}

/** Path inside the fleet folder and content of every file. */
export function sampleFleetFiles(): ReadonlyMap<string, Buffer> {
  const files = new Map<string, Buffer>();
  const shop = { data: sampleShop, revision: 1, savedAt: '2024-12-02T13:00:00.000Z' };
  files.set(shopFile, bytesOf(recordKinds.shop, shop));
  files.set('logo.png', sampleLogo());
  for (const told of tellAll()) files.set(vehicleFile(told.data.id), bytesOf(recordKinds.vehicle, told));
  return files;
}
