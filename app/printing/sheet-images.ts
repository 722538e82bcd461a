// What a sheet shows beside words: the dealer's logo, and photographs by the names of their files, read when it is a sheet's turn.
import type { Sheet } from '../domain/sheets/sheet.ts';
import { type OpenImage, openImage } from './open-image.ts';

export type SheetImages = {
  readonly logo: Buffer | null;
  /** The copy of a photograph that is made for paper; null where it is missing or damaged. */
  readonly picture: (vehicleId: string, sha256: string) => Promise<Buffer | null>;
};

export const noImages: SheetImages = { logo: null, picture: async () => null };

function openOrNull(doc: PDFKit.PDFDocument, bytes: Buffer): OpenImage | null {
  try {
    return openImage(doc, bytes);
  } catch {
    // The paper then says that the file is missing: a sheet is wanted even so.
    return null;
  }
}

/** The photographs of this sheet, one after the other. `opened` holds what the file has already, and is added to. */
export async function openPictures(
  doc: PDFKit.PDFDocument,
  sheet: Sheet,
  { picture }: SheetImages,
  opened: Map<string, OpenImage>,
): Promise<ReadonlyMap<string, OpenImage>> {
  for (const block of sheet.blocks) {
    if (block.kind !== 'pictures') continue;
    for (const { sha256 } of block.items) {
      if (opened.has(sha256)) continue;
      const bytes = await picture(block.vehicleId, sha256);
      const image = bytes === null ? null : openOrNull(doc, bytes);
      if (image !== null) opened.set(sha256, image);
    }
  }
  return opened;
}
