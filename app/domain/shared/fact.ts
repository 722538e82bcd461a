// What every dated fact in a record carries beside its own fields: an identity, and who entered it when.
import { z } from 'zod';
import { instantSchema } from './day.ts';
import { identifierSchema } from './identifier.ts';

/** Who entered a fact and at which instant. Set by the main process, never by the page. */
export const stampSchema = z.strictObject({ by: identifierSchema, at: instantSchema });
export type Stamp = z.infer<typeof stampSchema>;

/** The fact as a person enters it: an identity and its own fields. */
export function factDraft<Shape extends z.ZodRawShape>(shape: Shape) {
  return z.strictObject({ id: identifierSchema, ...shape });
}

/** The fact as the record keeps it: the draft plus its stamp. */
export function keptFact<Shape extends z.ZodRawShape>(shape: Shape) {
  return z.strictObject({ id: identifierSchema, ...shape, entered: stampSchema });
}
