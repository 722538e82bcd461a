// Photographs in a real fleet folder, for the tests of their files: kept first, named by a record after that.
import { chmod, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { type Attachment, attachmentFileName } from '../../app/domain/vehicle/attachment.ts';
import type { Vehicle } from '../../app/domain/vehicle/vehicle.ts';
import { attachmentPath } from '../../app/storage/attachment-files.ts';
import { contentHash } from '../../app/storage/content-hash.ts';
import type { FleetStore } from '../../app/storage/fleet-store.ts';
import { madePng } from '../helpers/made-pictures.ts';
import { unwrapped } from './fleet-fixture.ts';
import { byAda } from './telling-fixture.ts';

export function aPhotograph(bytes: Buffer, name = 'front.png'): Attachment {
  const sha256 = contentHash(bytes);
  return {
    id: `photo-${sha256.slice(0, 8)}`,
    on: '2026-03-04',
    name,
    kind: 'png',
    sha256,
    smallSha256: null,
    printSha256: null,
    sizeBytes: bytes.length,
    widthDots: 8,
    heightDots: 6,
    caption: '',
    readers: 'workshop',
    isOnSheets: false,
    entered: { by: 'person-ada', at: '2026-03-04T10:00:00.000Z' },
  };
}

export function pathOf(vehicleId: string, bytes: Buffer): string {
  return attachmentPath(vehicleId, attachmentFileName(contentHash(bytes), 'png'));
}

/** Each shade makes another photograph. */
export async function addPhotographs(store: FleetStore, id: string, shades: readonly number[]): Promise<Buffer[]> {
  const pictures = shades.map((shade) => madePng(8, 6, shade));
  for (const bytes of pictures) {
    const name = attachmentFileName(contentHash(bytes), 'png');
    unwrapped(await store.keepAttachmentFiles(id, [{ name, bytes }]));
    const kept = store.vehicles().get(id);
    if (!kept) throw new Error(`There is no ${id}.`);
    const attachments = [...kept.data.attachments, aPhotograph(bytes, `shade-${bytes.length}.png`)];
    const vehicle: Vehicle = { ...kept.data, attachments };
    unwrapped(await store.saveVehicle(vehicle, kept.revision, byAda));
  }
  return pictures;
}

/** As another program would, which cares nothing for a file being protected. */
export async function spoil(root: string, path: string, bytes: Buffer | string = 'spoilt'): Promise<void> {
  await chmod(join(root, path), 0o644);
  await writeFile(join(root, path), bytes);
}
