// What the page may ask about taking in a purchase list. The page hands over the text of the file it was given; no path crosses.
import { z } from 'zod';
import { listMatchSchema } from '../domain/import/list-columns.ts';
import { listReadingSchema } from '../domain/import/try-list.ts';
import { dayFormSchema, decimalFormSchema } from '../domain/import/value-forms.ts';
import { daySchema } from '../domain/shared/day.ts';
import { identifierSchema } from '../domain/shared/identifier.ts';
import { deskSchema } from './views.ts';

const manager = ['manager'] as const;
const listText = z.strictObject({ text: z.string().max(5_000_000) });
const triedRowSchema = z.strictObject({
  row: z.int(),
  stockNumber: z.string(),
  vin: z.string(),
  title: z.string(),
  boughtOn: daySchema.nullable(),
  priceCents: z.int().nullable(),
  problems: z.array(z.string()).readonly(),
  needsReason: z.boolean(),
});
export type TriedRowView = z.infer<typeof triedRowSchema>;

export const listLookSchema = z.strictObject({
  separator: z.enum([',', ';', '\t', '|']),
  headers: z.array(z.string()).readonly(),
  /** The first three values of each column that has any. */
  examples: z.array(z.array(z.string()).readonly()).readonly(),
  rowCount: z.int(),
  match: listMatchSchema,
  isRemembered: z.boolean(),
  decimalForms: z.array(decimalFormSchema),
  dayForms: z.array(dayFormSchema),
});
export type ListLook = z.infer<typeof listLookSchema>;

export const listImportChannels = {
  'list:look': { input: listText, output: listLookSchema, roles: manager, mutates: false },
  'list:try': {
    input: listText.extend({ reading: listReadingSchema }),
    output: z.array(triedRowSchema).readonly(),
    roles: manager,
    mutates: false,
  },
  'list:take-in': {
    input: listText.extend({ reading: listReadingSchema, rows: z.array(z.int().min(0)).min(1).max(5_000) }),
    output: z.strictObject({
      taken: z.array(z.strictObject({ id: identifierSchema, stockNumber: z.string() })).readonly(),
      /** Chosen rows that were not taken in, with the reason of each. */
      left: z.array(z.strictObject({ row: z.int(), stockNumber: z.string(), sentence: z.string() })).readonly(),
      desk: deskSchema,
    }),
    roles: manager,
    mutates: true,
  },
} as const;
