// What the page is shown of the work that can be done now: vehicles in order with their tasks, and what waits with its reason.
import { z } from 'zod';
import { identifierSchema } from '../domain/shared/identifier.ts';
import { cautionKeySchema } from '../domain/work/cautions.ts';

const taskShape = {
  kind: z.enum(['step', 'repair']),
  /** The job or the fault it belongs to. */
  factId: identifierSchema,
  what: z.string(),
};
const vehicleShape = {
  vehicleId: identifierSchema,
  stockNumber: z.string(),
  title: z.string(),
  location: z.string(),
  keyTag: z.string(),
};

export const nextTaskSchema = z.strictObject({
  ...taskShape,
  minutes: z.int().min(0),
  cannotBeUndone: z.boolean(),
  cautions: z.array(cautionKeySchema).readonly(),
});
export const heldTaskSchema = z.strictObject({ ...taskShape, why: z.string() });

export const nextJobsSchema = z.strictObject({
  order: z
    .array(
      z.strictObject({
        ...vehicleShape,
        minutesLeft: z.int().min(0),
        /** Null for whoever may not see money; then `why` names no amount either. */
        lossCentsPerDay: z.int().nullable(),
        why: z.string(),
        /** Null while there are not several technicians. */
        share: z.strictObject({ name: z.string(), startsInMinutes: z.int().min(0) }).nullable(),
        tasks: z.array(nextTaskSchema).readonly(),
      }),
    )
    .readonly(),
  waiting: z.array(z.strictObject({ ...vehicleShape, held: z.array(heldTaskSchema).readonly() })).readonly(),
});
export type NextJobsView = z.infer<typeof nextJobsSchema>;
