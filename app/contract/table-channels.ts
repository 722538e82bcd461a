// The tables that the page may have written as CSV files. Which rows and columns are in them is judged by role in the main process.
import { z } from 'zod';
import { roleSchema } from '../domain/fleet/shop.ts';
import { identifierSchema } from '../domain/shared/identifier.ts';

export const tableSchema = z.discriminatedUnion('table', [
  /** The rows in view, in their order. */
  z.strictObject({ table: z.literal('lot'), ids: z.array(identifierSchema).min(1).max(50_000) }),
  z.strictObject({ table: z.literal('next-jobs') }),
  /** Everything dated in one vehicle's record. */
  z.strictObject({ table: z.literal('ledger'), id: identifierSchema }),
  /** Parts of one vehicle. */
  z.strictObject({ table: z.literal('parts'), id: identifierSchema }),
]);
export type Table = z.infer<typeof tableSchema>;

export const tableChannels = {
  'table:export': {
    input: tableSchema,
    output: z.strictObject({ fileName: z.string() }),
    roles: roleSchema.options,
    mutates: true,
  },
  'table:show-folder': {
    input: z.strictObject({}),
    output: z.strictObject({}),
    roles: roleSchema.options,
    mutates: false,
  },
} as const;
