// A scan as it was taken: which modules answered, which trouble codes they held, how the inspection monitors stood. Decoding is in
// trouble-code.ts and readiness-monitors.ts; nothing here is judged.
import { z } from 'zod';
import { daySchema } from '../shared/day.ts';
import { factDraft, keptFact } from '../shared/fact.ts';
import { filledLineSchema, lineSchema, paragraphSchema } from '../shared/text.ts';
import { odometerSchema } from '../vehicle/identity.ts';

export const scanKindSchema = z.enum(['pre-repair', 'post-repair', 'in-between']);
export type ScanKind = z.infer<typeof scanKindSchema>;

export const scanCodeStatusSchema = z.enum(['present', 'history', 'pending', 'permanent', 'unknown']);
export type ScanCodeStatus = z.infer<typeof scanCodeStatusSchema>;

const byteSchema = z.int().min(0).max(255);

/** Bytes A to D of the reply to service 01 PID 01. */
export const monitorBytesSchema = z.tuple([byteSchema, byteSchema, byteSchema, byteSchema]);
export type MonitorBytes = z.infer<typeof monitorBytesSchema>;

/** More than any report seen so far, and little enough for a record. */
export const longestReport = 120_000;

export const scanCodeSchema = z.strictObject({
  code: z
    .string()
    .regex(/^[PCBU][0-3][0-9A-F]{3}(-[0-9A-F]{2})?$/, 'A trouble code is written like P0171 or U0140-00.'),
  status: scanCodeStatusSchema,
  words: lineSchema(160),
  /** As the module gave it (ISO 14229-1 Annex D.2), where it gave one. */
  statusByte: byteSchema.nullable(),
  /** Its test has not run since the codes were cleared: that the code is quiet proves nothing. */
  isUnproven: z.boolean(),
});
export type ScanCode = z.infer<typeof scanCodeSchema>;

/** A code of which nothing is known but its status and words. */
export function plainCode(code: string, status: ScanCodeStatus, words = ''): ScanCode {
  return { code, status, words, statusByte: null, isUnproven: false };
}

export const scanModuleSchema = z.strictObject({
  name: filledLineSchema(60),
  answered: z.boolean(),
  codes: z.array(scanCodeSchema).max(200),
});
export type ScanModule = z.infer<typeof scanModuleSchema>;

const shape = {
  takenOn: daySchema,
  kind: scanKindSchema,
  /** Which device took it, in the shop's own words. */
  device: lineSchema(60),
  modules: z.array(scanModuleSchema).max(120),
  /** Whether the codes were cleared before it, as part of the same work. */
  clearedBefore: z.boolean(),
  /** Null: not read. A battery-electric vehicle has none. */
  monitorBytes: monitorBytesSchema.nullable(),
  /** Since the last clear, where the vehicle tells them; some inspections ask for them. */
  warmUpsSinceClear: z.int().min(0).max(255).nullable(),
  distanceSinceClear: odometerSchema.nullable(),
  /** The scanner's own text as it was pasted, so that nothing of it is lost. Empty when it was entered by hand. */
  reportText: paragraphSchema(longestReport),
  note: paragraphSchema(2000),
};
export const scanDraftSchema = factDraft(shape);
export const scanSchema = keptFact(shape);
export type ScanDraft = z.infer<typeof scanDraftSchema>;
export type Scan = z.infer<typeof scanSchema>;

/** What a scan says beside its modules when nothing more was read. */
export const nothingElseRead = {
  clearedBefore: false,
  monitorBytes: null,
  warmUpsSinceClear: null,
  distanceSinceClear: null,
  reportText: '',
} as const satisfies Partial<ScanDraft>;
