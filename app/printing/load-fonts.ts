// Reads the embedded typefaces from their folder. The sheets use no other font, and never one of the PDF reader's own.
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';

export type SheetFonts = { readonly regular: Buffer; readonly semibold: Buffer; readonly italic: Buffer };

const files = {
  regular: 'SourceSans3-Regular.ttf',
  semibold: 'SourceSans3-SemiBold.ttf',
  italic: 'SourceSans3-It.ttf',
} as const;

async function readFont(folder: string, file: string): Promise<Buffer> {
  try {
    return await readFile(join(folder, file));
  } catch (cause) {
    throw new Error(`The typeface ${file} for printing is missing or cannot be read. Install the program again.`, {
      cause,
    });
  }
}

/** @throws when a file is missing, with a sentence for the person. */
export async function loadFonts(folder: string): Promise<SheetFonts> {
  const [regular, semibold, italic] = await Promise.all([
    readFont(folder, files.regular),
    readFont(folder, files.semibold),
    readFont(folder, files.italic),
  ]);
  return { regular, semibold, italic };
}
