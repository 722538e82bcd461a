// What the page may ask about the invented sample: opening it, leaving it, and beginning it again. Which folders those are the program
// knows itself; no path goes in.
import { z } from 'zod';
import { deskSchema } from './views.ts';

const manager = ['manager'] as const;
const nothing = z.strictObject({});

export const sampleChannels = {
  'sample:open': { input: nothing, output: deskSchema, roles: manager, mutates: true },
  /** Back to the fleet that was open before, or to the one this desk opened last. */
  'sample:leave': { input: nothing, output: deskSchema, roles: manager, mutates: true },
  /** Puts the copy that was worked in aside, where `putAside` says, and opens a new one in its place. */
  'sample:begin-again': {
    input: nothing,
    output: z.strictObject({ desk: deskSchema, putAside: z.string() }),
    roles: manager,
    mutates: true,
  },
  'sample:show-put-aside': { input: nothing, output: nothing, roles: manager, mutates: false },
} as const;
