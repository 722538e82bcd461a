// Sheets of many vehicles, several sheets at once with progress, and finding a sheet by its mark: what may be asked. Where a file goes
// is asked of the person by the system's own dialog, never said by the page.
import { z } from 'zod';
import { roleSchema } from '../domain/fleet/shop.ts';
import { daySchema, instantSchema } from '../domain/shared/day.ts';
import { identifierSchema } from '../domain/shared/identifier.ts';
import { anySheetKindSchema, fleetSheetKindSchema, sheetSchema } from '../domain/sheets/sheet.ts';

const everybody = roleSchema.options;
const nothing = z.strictObject({});

/** 'folder' is the fleet's own, 'file' asks where, 'printer' hands one file to the system. */
export const sheetTargetSchema = z.enum(['folder', 'file', 'printer']);
export type SheetTarget = z.infer<typeof sheetTargetSchema>;

const kinds = z.array(anySheetKindSchema).min(1).max(20);
export const sheetChoiceSchema = z.strictObject({ kinds, to: sheetTargetSchema, isJoint: z.boolean() });
export type SheetChoice = z.infer<typeof sheetChoiceSchema>;

export const sheetOrderSchema = sheetChoiceSchema.extend({
  /** Of sheets of one vehicle, one each; a fleet sheet tells of these alone, or of the whole fleet when there are none. */
  vehicleIds: z.array(identifierSchema).max(2000),
});
export type SheetOrder = z.infer<typeof sheetOrderSchema>;

export const sheetProgressSchema = z.strictObject({ done: z.int(), total: z.int(), now: z.string() });
export type SheetProgress = z.infer<typeof sheetProgressSchema>;

const outcomeSchema = z.strictObject({
  end: z.enum(['done', 'cancelled', 'failed', 'not-begun']),
  /** What went wrong, and what to do, in sentences; empty otherwise. */
  sentence: z.string(),
  /** Whole files that are there now; of those in the fleet's own folder the name opens them. */
  files: z.array(z.strictObject({ fileName: z.string(), pages: z.int().min(1), sheets: z.int().min(1) })).readonly(),
  isInFolder: z.boolean(),
});
export type SheetOutcome = z.infer<typeof outcomeSchema>;

const foundSheetSchema = z.strictObject({
  kind: anySheetKindSchema,
  /** Null for a sheet of many vehicles. */
  vehicleId: identifierSchema.nullable(),
  subject: z.string(),
  printedAt: instantSchema,
  printedBy: z.string(),
  asOf: daySchema,
  revision: z.int(),
  standing: z.enum(['current', 'older', 'gone']),
  /** The record's revision now; null where it is gone, and for many vehicles. */
  nowRevision: z.int().nullable(),
  /** False when the record is the same but the day has moved on, and with it days held, forecasts and what is overdue. */
  isOfToday: z.boolean(),
});
export type FoundSheet = z.infer<typeof foundSheetSchema>;

export const sheetChannels = {
  'sheet:preview-fleet': {
    input: z.strictObject({ kind: fleetSheetKindSchema, vehicleIds: z.array(identifierSchema).max(2000) }),
    output: sheetSchema,
    roles: everybody,
    mutates: false,
  },
  /** Answers when all is made, cancelled or failed; tells how far it is meanwhile. Changes no record, so nothing waits for it. */
  'sheet:make': { input: sheetOrderSchema, output: outcomeSchema, roles: everybody, mutates: false },
  'sheet:cancel': { input: nothing, output: nothing, roles: everybody, mutates: false },
  'sheet:choice': { input: nothing, output: sheetChoiceSchema.nullable(), roles: everybody, mutates: false },
  'sheet:find-mark': {
    input: z.strictObject({ mark: z.string().max(40) }),
    output: z.strictObject({
      /** Why what was typed is no mark; empty when it is one. */
      problem: z.string(),
      found: z.array(foundSheetSchema).readonly(),
    }),
    roles: everybody,
    mutates: false,
  },
} as const;
