// What the page may ask about the archive of a whole fleet. Where it lies is chosen in the system's own dialogs; no path crosses.
import { z } from 'zod';
import { deskSchema } from './views.ts';

const manager = ['manager'] as const;

export const archiveChannels = {
  'archive:write': {
    input: z.strictObject({ withKeys: z.boolean(), withAttachments: z.boolean() }),
    /** Null: the person thought better of it. */
    output: z
      .strictObject({
        fileName: z.string(),
        vehicles: z.int(),
        files: z.int(),
        missing: z.array(z.string()).readonly(),
      })
      .nullable(),
    roles: manager,
    mutates: true,
  },
  /** How much photographs and documents would add. */
  'archive:size': {
    input: z.strictObject({}),
    output: z.strictObject({ attachments: z.int(), bytes: z.int() }),
    roles: manager,
    mutates: false,
  },
  'archive:open': {
    input: z.strictObject({}),
    output: z.strictObject({ desk: deskSchema, isOpened: z.boolean() }),
    roles: manager,
    mutates: true,
  },
} as const;
