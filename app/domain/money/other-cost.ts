// A cost that is neither purchase, part, labour, sublet work nor a code fee: fuel, valet, plates, a refund as a negative amount.
import type { z } from 'zod';
import { centsSchema } from '../shared/cents.ts';
import { daySchema } from '../shared/day.ts';
import { factDraft, keptFact } from '../shared/fact.ts';
import { filledLineSchema } from '../shared/text.ts';

const shape = { spentOn: daySchema, what: filledLineSchema(160), amountCents: centsSchema };
export const otherCostDraftSchema = factDraft(shape);
export const otherCostSchema = keptFact(shape);
export type OtherCostDraft = z.infer<typeof otherCostDraftSchema>;
export type OtherCost = z.infer<typeof otherCostSchema>;
