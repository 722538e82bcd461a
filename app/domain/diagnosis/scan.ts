// A scan as it was taken: which modules answered, which trouble codes they held. Decoding is in trouble-code.ts.
import { z } from 'zod';
import { daySchema } from '../shared/day.ts';
import { factDraft, keptFact } from '../shared/fact.ts';
import { filledLineSchema, lineSchema, paragraphSchema } from '../shared/text.ts';

export const scanKindSchema = z.enum(['pre-repair', 'post-repair', 'in-between']);
export type ScanKind = z.infer<typeof scanKindSchema>;

export const scanCodeStatusSchema = z.enum(['present', 'history', 'pending', 'permanent', 'unknown']);
export type ScanCodeStatus = z.infer<typeof scanCodeStatusSchema>;

export const scanCodeSchema = z.strictObject({
  code: z
    .string()
    .regex(/^[PCBU][0-3][0-9A-F]{3}(-[0-9A-F]{2})?$/, 'A trouble code is written like P0171 or U0140-00.'),
  status: scanCodeStatusSchema,
  words: lineSchema(160),
});
export type ScanCode = z.infer<typeof scanCodeSchema>;

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
  note: paragraphSchema(2000),
};
export const scanDraftSchema = factDraft(shape);
export const scanSchema = keptFact(shape);
export type ScanDraft = z.infer<typeof scanDraftSchema>;
export type Scan = z.infer<typeof scanSchema>;
