// What the page is told about the open code requests of one vehicle: how long such codes usually take, and when to chase next.
import { z } from 'zod';
import { daySchema } from '../domain/shared/day.ts';
import { identifierSchema } from '../domain/shared/identifier.ts';

export const codeUsualSchema = z.strictObject({
  requestId: identifierSchema,
  /** From the shop's own finished requests; null where there are too few to go by. */
  usual: z
    .strictObject({
      among: z.enum(['provider-and-kind', 'provider', 'kind', 'all']),
      cases: z.int().min(1),
      medianDays: z.int().min(0),
      eightiethDays: z.int().min(0),
    })
    .nullable(),
  /** Null while it is not asked. */
  chase: z.strictObject({ on: daySchema, why: z.string() }).nullable(),
});
export type CodeUsual = z.infer<typeof codeUsualSchema>;
export const codesUsualSchema = z.array(codeUsualSchema).readonly();
