// What the page knows of the invented sample that ships with the program: whether it is open, and the ways there and back.
import { z } from 'zod';

export const sampleViewSchema = z.strictObject({
  /** The open fleet is the program's own copy of the sample, which may be begun again. */
  isOwnCopy: z.boolean(),
  /** The sample lies with the program and is not what is open. */
  canOpen: z.boolean(),
  /** From the sample back to a fleet: the name of its folder; null: none is known, or the sample is not open. */
  wayBack: z.string().nullable(),
});
