// How many photographs one file of several sheets may hold: it is in memory until it is whole.
import type { Sheet } from '../domain/sheets/sheet.ts';

/** Some 150 MB, as the page makes the copies for paper. */
export const mostPicturesTogether = 400;

/** Adds those of this sheet to `held`, each once, as the file holds them. A sentence where they have become too many. */
export function notePictures(held: Set<string>, { blocks }: Pick<Sheet, 'blocks'>): string | null {
  for (const block of blocks) if (block.kind === 'pictures') for (const { sha256 } of block.items) held.add(sha256);
  if (held.size <= mostPicturesTogether) return null;
  return `One file holds at most ${mostPicturesTogether} photographs, and these sheets have more. Choose fewer, or have a file each`;
}
