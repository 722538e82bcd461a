// A dated remark on a vehicle.
import type { z } from 'zod';
import { daySchema } from '../shared/day.ts';
import { factDraft, keptFact } from '../shared/fact.ts';
import { paragraphSchema } from '../shared/text.ts';

const shape = {
  on: daySchema,
  text: paragraphSchema(4000).refine((text) => text.trim() !== '', 'Write something here.'),
};
export const noteDraftSchema = factDraft(shape);
export const noteSchema = keptFact(shape);
export type NoteDraft = z.infer<typeof noteDraftSchema>;
export type Note = z.infer<typeof noteSchema>;
