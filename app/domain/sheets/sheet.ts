// A printable document as data: what stands on it, in reading order. How it looks on paper is the printing room's business.
import { z } from 'zod';
import { instantSchema } from '../shared/day.ts';
import { cautionKeySchema } from '../work/cautions.ts';

export const sheetKindSchema = z.enum(['job-sheet', 'readiness-sheet']);
export type SheetKind = z.infer<typeof sheetKindSchema>;

const text = z.string().max(4000);
const cell = z.strictObject({ text, emphasis: z.enum(['none', 'strong', 'quiet']) });

const blockSchema = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('heading'), text }),
  z.strictObject({ kind: z.literal('paragraph'), text, emphasis: z.enum(['none', 'strong', 'quiet']) }),
  /** The answer the sheet exists for, large: 'Ready for sale', 'Not ready'. */
  z.strictObject({ kind: z.literal('verdict'), isGood: z.boolean(), text, reason: text }),
  z.strictObject({ kind: z.literal('facts'), rows: z.array(z.strictObject({ label: text, value: text })).readonly() }),
  z.strictObject({ kind: z.literal('caution'), key: cautionKeySchema, title: text, text }),
  z.strictObject({ kind: z.literal('bullets'), items: z.array(text).readonly() }),
  /** Steps with a box to tick, a place for initials and room for a value. */
  z.strictObject({
    kind: z.literal('steps'),
    items: z
      .array(
        z.strictObject({
          text,
          detail: text,
          isTicked: z.boolean(),
          marks: z.array(text).readonly(),
          /** Blanks to write in: 'volts before', 'code'. */
          blanks: z.array(text).readonly(),
        }),
      )
      .readonly(),
  }),
  z.strictObject({
    kind: z.literal('table'),
    /** Says what the table holds, for a screen reader and as its caption. */
    caption: text,
    columns: z
      .array(z.strictObject({ title: text, share: z.number().positive(), align: z.enum(['left', 'right']) }))
      .readonly(),
    rows: z.array(z.array(cell).readonly()).readonly(),
    whenEmpty: text,
  }),
  z.strictObject({ kind: z.literal('blank-lines'), label: text, count: z.int().min(1).max(40) }),
  z.strictObject({ kind: z.literal('signatures'), labels: z.array(text).readonly() }),
  z.strictObject({
    kind: z.literal('barcode'),
    symbology: z.enum(['code39', 'code128', 'datamatrix']),
    value: z.string().max(60),
    alternateText: text,
  }),
]);
export type SheetBlock = z.infer<typeof blockSchema>;

export const sheetSchema = z.strictObject({
  kind: sheetKindSchema,
  title: text,
  /** Stock number and vehicle, for the running head. */
  subject: text,
  language: z.string(),
  paper: z.enum(['a4', 'letter']),
  dealer: z.strictObject({ name: text, address: text, phone: text }),
  /** Said on every page of the invented sample; empty otherwise. */
  sampleNotice: text,
  printedAt: instantSchema,
  printedBy: text,
  revision: z.int(),
  blocks: z.array(blockSchema).readonly(),
  footer: text,
});
export type Sheet = z.infer<typeof sheetSchema>;
