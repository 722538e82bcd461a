// What the sheets of this fleet show beside words, for whoever renders them: the dealer's logo, and photographs by the names of their files.
// Decides no rights: which photographs a sheet names is settled where the sheet is made.
import { attachmentFileName } from '../domain/vehicle/attachment.ts';
import type { SheetImages } from '../printing/sheet-images.ts';
import { attachmentPath, readAttachmentFile } from '../storage/attachment-files.ts';
import { pathIn } from '../storage/fleet-folder.ts';
import { readLogo } from '../storage/logo-file.ts';

/** A photograph that cannot be read keeps no sheet from being printed: the paper says that it is missing. */
async function pictureOf(folder: string, vehicleId: string, sha256: string): Promise<Buffer | null> {
  const name = attachmentFileName(sha256, 'jpeg');
  const read = await readAttachmentFile(pathIn(folder, attachmentPath(vehicleId, name)), name).catch(() => null);
  return typeof read === 'string' ? null : read;
}

export async function readSheetImages(folder: string): Promise<SheetImages> {
  return {
    logo: await readLogo(folder),
    picture: (vehicleId, sha256) => pictureOf(folder, vehicleId, sha256),
  };
}
