// The bytes of a file as they travel between the page and the main process: as they are, in one piece, copied on the way.
import { z } from 'zod';

/** At least one byte, at most `most`. A little more than is kept may pass, so that what is too large is told so in a sentence. */
export function bytesSchema(most: number) {
  return z
    .instanceof(Uint8Array)
    .refine(({ byteLength }) => byteLength > 0 && byteLength <= most, 'Too many bytes, or none.');
}
