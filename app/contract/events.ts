// What the main process tells the page unasked. Payloads are plain data.
import { z } from 'zod';
import { identifierSchema } from '../domain/shared/identifier.ts';
import { sheetProgressSchema } from './sheet-channels.ts';
import { deskSchema, lotRowSchema, readyDaysSchema } from './views.ts';

export const events = {
  /** One vehicle changed; `row` is null when it left the lot. */
  'lot:row-changed': z.strictObject({ id: identifierSchema, row: lotRowSchema.nullable() }),
  /** Sold vehicles of a long ledger, read after the lot went out; `toCome` says how many are still to come. */
  'lot:rows-added': z.strictObject({ rows: z.array(lotRowSchema).readonly(), toCome: z.int().min(0) }),
  /** The sold vehicles of a long ledger have been read and gone through: forecasts can be had now. */
  'lot:past-read': z.strictObject({}),
  /** Forecasts that were worked out after the lot was read, for rows that are there already. */
  'lot:forecasts': z.strictObject({
    forecasts: z.array(z.strictObject({ id: identifierSchema, forecast: readyDaysSchema })).readonly(),
  }),
  /** A new day, a new fleet, or another person at the desk: read everything again. */
  'lot:all-changed': z.strictObject({}),
  'desk:changed': deskSchema,
  /** How far the sheets are that are being made. */
  'sheet:progress': sheetProgressSchema,
  /** Codes, or who has a key to the vault: read again. */
  'vault:changed': z.strictObject({}),
  /** The vault was locked: a code that is shown is hidden at once. */
  'vault:locked': z.strictObject({}),
  /** A command of the window's own menu. */
  'menu:chosen': z.strictObject({
    command: z.enum([
      'undo',
      'redo',
      'find',
      'take-in',
      'choose-fleet',
      'lock',
      'lot',
      'next-jobs',
      'waiting',
      'money',
      'sheets',
      'setup',
      'about',
      'report',
    ]),
  }),
} as const satisfies Record<string, z.ZodType>;
export type EventName = keyof typeof events;
export type EventPayload<Name extends EventName> = z.infer<(typeof events)[Name]>;
