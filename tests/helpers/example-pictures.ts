// Photographs for the examples of sheets, made by code: wide, upright and square, so that rows of unlike heights are printed.
import { createHash } from 'node:crypto';
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
