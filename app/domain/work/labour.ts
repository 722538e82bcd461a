// Work booked on a vehicle: who, on which day, how many minutes, on what.
import { z } from 'zod';
import { daySchema } from '../shared/day.ts';
import { factDraft, keptFact } from '../shared/fact.ts';
import { identifierSchema } from '../shared/identifier.ts';
import { filledLineSchema } from '../shared/text.ts';
import { workAreaSchema } from './work-area.ts';

const shape = {
  workedOn: daySchema,
  person: identifierSchema,
  minutes: z.int().min(1, 'At least one minute.').max(1440, 'A day has 1,440 minutes.'),
  what: filledLineSchema(200),
  area: workAreaSchema,
  faultId: identifierSchema.nullable(),
};
export const labourDraftSchema = factDraft(shape);
export const labourSchema = keptFact(shape);
export type LabourDraft = z.infer<typeof labourDraftSchema>;
export type Labour = z.infer<typeof labourSchema>;
