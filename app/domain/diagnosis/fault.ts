// One thing that is wrong with a vehicle and what was decided about it.
import { z } from 'zod';
import { daySchema } from '../shared/day.ts';
import { factDraft, keptFact } from '../shared/fact.ts';
import { filledLineSchema, lineSchema, paragraphSchema } from '../shared/text.ts';
import { workAreaSchema } from '../work/work-area.ts';

export const decisionKindSchema = z.enum(['repair', 'replace', 'leave']);
export type DecisionKind = z.infer<typeof decisionKindSchema>;

export const decisionSchema = z.strictObject({
  kind: decisionKindSchema,
  decidedOn: daySchema,
  /** Required for 'leave': a buyer will ask, and so will the next technician. */
  reason: lineSchema(300),
  /** Labour expected for it, in minutes; null when nobody has said. */
  estimateMinutes: z.int().min(0).max(60_000).nullable(),
});
export type Decision = z.infer<typeof decisionSchema>;

const shape = {
  foundOn: daySchema,
  what: filledLineSchema(200),
  area: workAreaSchema,
  /** Control module concerned, if any, in the words of the scan. */
  module: lineSchema(60),
  /** Trouble codes that belong to it. */
  codes: z.array(z.string().max(12)).max(40),
  note: paragraphSchema(2000),
  decision: decisionSchema.nullable(),
  /** The day on which the decided work was finished. */
  doneOn: daySchema.nullable(),
  /** Whether a buyer must be told, fixed or not. */
  tellBuyer: z.boolean(),
};
export const faultDraftSchema = factDraft(shape);
export const faultSchema = keptFact(shape);
export type FaultDraft = z.infer<typeof faultDraftSchema>;
export type Fault = z.infer<typeof faultSchema>;

/** Work is decided for it and not finished. */
export function isOpenRepair(fault: Fault): boolean {
  return fault.decision !== null && fault.decision.kind !== 'leave' && fault.doneOn === null;
}
