// A printable document as data: what stands on it, in reading order. How it looks on paper is the printing room's business.
import { z } from 'zod';
import { instantSchema } from '../shared/day.ts';
import { identifierSchema } from '../shared/identifier.ts';
import { dayFormSchema } from '../shared/show-day.ts';
import { causeSchema } from '../time/cause.ts';
import { cautionKeySchema } from '../work/cautions.ts';
import { stripAxisSchema, stripOfDaysSchema } from './strip-of-days.ts';

export const sheetKindSchema = z.enum([
  'job-sheet',
  'plan-sheet',
  'readiness-sheet',
  'window-sheet',
  'code-letter',
  'cost-sheet',
]);
/** Of one vehicle. */
export type SheetKind = z.infer<typeof sheetKindSchema>;

export const fleetSheetKindSchema = z.enum(['parts-list', 'fleet-list', 'money-summary']);
/** Of many vehicles at once. */
export type FleetSheetKind = z.infer<typeof fleetSheetKindSchema>;

export const anySheetKindSchema = z.enum([...sheetKindSchema.options, ...fleetSheetKindSchema.options]);
export type AnySheetKind = z.infer<typeof anySheetKindSchema>;

const text = z.string().max(4000);
const emphasis = z.enum(['none', 'strong', 'quiet']);
const wording = z.strictObject({ text, emphasis });
const labelled = z.strictObject({ label: text, value: text });

/** One photograph of the vehicle. Its dots are not here: by the hash the printing room is given the copy that is made for paper. */
const pictureSchema = z.strictObject({
  attachmentId: identifierSchema,
  sha256: z.string().regex(/^[0-9a-f]{64}$/),
  /** Printed under it. */
  caption: text,
  /** Read aloud instead of it; never empty. */
  alternateText: text.min(1),
});
export type SheetPicture = z.infer<typeof pictureSchema>;

const stepSchema = z.strictObject({
  text,
  detail: text,
  /** 'open' has an empty box, 'done' a ticked one, 'left-out' none. */
  state: z.enum(['open', 'done', 'left-out']),
  /** Short remarks beside the step: cautions and what cannot be undone strong, how it stands quiet. */
  marks: z.array(wording).readonly(),
  /** Blanks to write in: 'volts before', 'code'. */
  blanks: z.array(text).readonly(),
  /** What must be true first, each with a small box of its own, ticked where the record says that it is. */
  needs: z
    .array(z.strictObject({ text, isMet: z.boolean() }))
    .readonly()
    .optional(),
});
export type SheetStep = z.infer<typeof stepSchema>;

const blockSchema = z.discriminatedUnion('kind', [
  /** First on the sheet: the stock number large, the vehicle's name, and the few words needed to find it. */
  z.strictObject({ kind: z.literal('masthead'), number: text, name: text, tags: z.array(labelled).readonly() }),
  z.strictObject({ kind: z.literal('heading'), level: z.union([z.literal(2), z.literal(3)]), text }),
  z.strictObject({ kind: z.literal('paragraph'), text, emphasis }),
  /** The answer the sheet exists for, large: 'Ready for sale', 'Not ready', and why, a sentence each. */
  z.strictObject({ kind: z.literal('verdict'), isGood: z.boolean(), text, reasons: z.array(text).readonly() }),
  z.strictObject({ kind: z.literal('facts'), rows: z.array(labelled).readonly() }),
  /** A few large figures side by side. */
  z.strictObject({ kind: z.literal('figures'), items: z.array(labelled).max(5).readonly() }),
  /** The whole of a sheet for the windscreen, on one page whatever stands on it, to be read from two metres. */
  z.strictObject({
    kind: z.literal('window-card'),
    number: text,
    name: text,
    /** Short lines about the vehicle: reading, colour. */
    lines: z.array(text).readonly(),
    isGood: z.boolean(),
    verdict: text,
    /** Empty where none is set, or the shop does not want it in the window. */
    price: text,
    told: z.strictObject({ title: text, items: z.array(text).readonly() }),
    /** Where the whole of it stands. */
    more: text,
  }),
  /** Beginning of a letter: to whom, what identifies it, and what it is about as the first heading. */
  z.strictObject({
    kind: z.literal('letter-head'),
    addressee: text,
    rows: z.array(labelled).readonly(),
    about: text,
  }),
  /** `concerns` says why it stands on this sheet: 'hybrid drive'. */
  z.strictObject({ kind: z.literal('caution'), key: cautionKeySchema, title: text, text, concerns: text }),
  z.strictObject({ kind: z.literal('bullets'), items: z.array(text).readonly() }),
  /** Things to tick off, numbered where their order counts; `hasInitials` leaves a place for initials beside each. */
  z.strictObject({
    kind: z.literal('steps'),
    isNumbered: z.boolean(),
    hasInitials: z.boolean(),
    /** Where the numbers go on from; 1 if left out. */
    firstNumber: z.int().min(1).optional(),
    items: z.array(stepSchema).readonly(),
  }),
  z.strictObject({
    kind: z.literal('table'),
    /** Says what the table holds, for a screen reader. */
    caption: text,
    columns: z
      .array(z.strictObject({ title: text, share: z.number().positive(), align: z.enum(['left', 'right']) }))
      .min(1)
      .readonly(),
    /** Each row has as many cells as there are columns. */
    rows: z.array(z.array(wording).readonly()).readonly(),
    whenEmpty: text,
    /** 'writing' leaves room in every row to write by hand. */
    rowRoom: z.enum(['text', 'writing']),
    /** A last column of hold strips under one axis, one for each row. */
    strips: z
      .strictObject({
        title: text,
        share: z.number().positive(),
        axis: stripAxisSchema,
        items: z.array(stripOfDaysSchema).readonly(),
      })
      .optional(),
  }),
  /** The hold strip of one vehicle over the whole width, with its axis above. */
  z.strictObject({ kind: z.literal('hold-strip'), axis: stripAxisSchema, strip: stripOfDaysSchema }),
  /** What the colours and hatches of the strips on this sheet mean. */
  z.strictObject({
    kind: z.literal('strip-legend'),
    causes: z.array(causeSchema).readonly(),
    marks: z.array(z.enum(['forecast', 'today', 'breakEven', 'before'])).readonly(),
  }),
  /** Lines to write on; `fillsPage` adds as many as the rest of the page holds beside what follows. */
  z.strictObject({
    kind: z.literal('blank-lines'),
    label: text,
    count: z.int().min(1).max(40),
    fillsPage: z.boolean(),
  }),
  z.strictObject({ kind: z.literal('signatures'), labels: z.array(text).readonly() }),
  /** Barcodes that follow each other stand side by side. The value is always printed under the bars. */
  z.strictObject({
    kind: z.literal('barcode'),
    symbology: z.enum(['code39', 'code128', 'datamatrix']),
    value: z.string().max(60),
    /** What it is: 'VIN'. Printed before the value. */
    label: text,
    alternateText: text,
  }),
  /** Photographs, two abreast, each with its caption under it. */
  z.strictObject({
    kind: z.literal('pictures'),
    /** In whose folder they are. */
    vehicleId: identifierSchema,
    items: z.array(pictureSchema).min(1).readonly(),
  }),
]);
export type SheetBlock = z.infer<typeof blockSchema>;

export const sheetSchema = z.strictObject({
  kind: anySheetKindSchema,
  title: text,
  /** Stock number and vehicle, for the running head. */
  subject: text,
  /** BCP 47 tag of the words on the sheet, for a screen reader. */
  language: z.string(),
  paper: z.enum(['a4', 'letter']),
  orientation: z.enum(['portrait', 'landscape']),
  /** How the day of printing is written; the days in the blocks are written already. */
  dayForm: dayFormSchema,
  dealer: z.strictObject({ name: text, address: text, phone: text }),
  /** Said on every page of the invented sample; empty otherwise. */
  sampleNotice: text,
  printedAt: instantSchema,
  printedBy: text,
  /** The revision of the record it was printed from: tells an old sheet from the current one. */
  revision: z.int(),
  /** Six characters by which the program finds what this paper is: see sheet-mark.ts. */
  mark: z.string().max(12),
  blocks: z.array(blockSchema).readonly(),
  footer: text,
});
export type Sheet = z.infer<typeof sheetSchema>;
