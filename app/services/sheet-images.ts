// What a sheet of this fleet shows beside words, for whoever renders it: the dealer's logo. Decides no rights: which photographs a sheet
// names is settled where the sheet is made.
import { noImages, type SheetImages } from '../printing/sheet-images.ts';
import { readLogo } from '../storage/logo-file.ts';

export async function readSheetImages(folder: string): Promise<SheetImages> {
  return { ...noImages, logo: await readLogo(folder) };
}
