// The dealer's logo: seen in Setup and on sheets, set and taken away in Setup. The page hands over the bytes of a file that the person chose; never a path.
import { z } from 'zod';
import { roleSchema } from '../domain/fleet/shop.ts';

const manager = ['manager'] as const;
const nothing = z.strictObject({});
/** A little more than is kept, so that what is too large is told so in a sentence. Base 64. */
const bytesSchema = z
  .string()
  .max(4_000_000)
  .regex(/^[A-Za-z0-9+/]*={0,2}$/);

export const logoViewSchema = z.strictObject({
  logo: z
    .strictObject({ kind: z.enum(['png', 'jpeg']), base64: bytesSchema, width: z.int(), height: z.int() })
    .nullable(),
});
export type LogoView = z.infer<typeof logoViewSchema>;

export const logoChannels = {
  /** For everybody: it stands on every sheet. */
  'shop:logo': { input: nothing, output: logoViewSchema, roles: roleSchema.options, mutates: false },
  'shop:set-logo': {
    input: z.strictObject({ base64: bytesSchema.nullable() }),
    output: logoViewSchema,
    roles: manager,
    mutates: true,
  },
} as const;
