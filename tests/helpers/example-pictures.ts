// Photographs for the examples of sheets, made by code: wide, upright and square, so that rows of unlike heights are printed.
import { createHash } from 'node:crypto';
import type { Attachment } from '../../app/domain/vehicle/attachment.ts';
import type { SheetImages } from '../../app/printing/sheet-images.ts';
import { testPicture } from './make-jpeg.ts';

export const examplePictures = [
  testPicture(640, 480, [168, 52, 48]),
  testPicture(480, 640, [52, 96, 150]),
  testPicture(400, 400, [120, 120, 116]),
] as const;

export function hashOf(bytes: Uint8Array): string {
  return createHash('sha256').update(bytes).digest('hex');
}

const byHash = new Map(examplePictures.map((bytes) => [hashOf(bytes), bytes]));

/** As a fleet folder would answer that holds these and no other. */
export const exampleImages: SheetImages = {
  logo: null,
  picture: async (_vehicleId, sha256) => byHash.get(sha256) ?? null,
};

const words = [
  'Scratch on the left front door, before it was polished',
  'Instrument panel with the engine running after the body control module was programmed: no lamp lit, clock and range shown',
  'Key and spare key',
] as const;

/** What a record says of these photographs, each chosen for sheets and for everyone. */
export const exampleAttachments: readonly Attachment[] = examplePictures.map((bytes, index) => ({
  id: `photograph-${index + 1}`,
  on: `2026-03-0${index + 4}`,
  name: `IMG_203${index}.jpg`,
  kind: 'jpeg',
  sha256: hashOf(Buffer.from(`as it was taken ${index}`)),
  smallSha256: null,
  printSha256: hashOf(bytes),
  sizeBytes: 2_400_000,
  widthDots: 4000,
  heightDots: 3000,
  caption: words[index] ?? '',
  readers: 'everyone',
  isOnSheets: true,
  entered: { by: 'mara', at: '2026-03-10T10:00:00.000Z' },
}));
