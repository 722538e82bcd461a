// The form of a record's file as JSON Schema 2020-12, for whoever reads the files without this program. Generated, never written by hand.
import { z } from 'zod';
import { recordKinds } from './record-kind.ts';

function envelopeOf(kind: { readonly format: string; readonly version: number; readonly schema: z.ZodType }) {
  return z.strictObject({
    format: z.literal(kind.format),
    version: z.literal(kind.version),
    revision: z.int().min(1),
    savedAt: z.iso.datetime({ precision: 3 }),
    data: kind.schema,
  });
}

/** Rules that a schema cannot say (days in order, a VIN's check digit) are not in it: it says what a file may look like. */
export function recordJsonSchemas(): Readonly<Record<'vehicle' | 'shop', unknown>> {
  const make = (kind: Parameters<typeof envelopeOf>[0]) => z.toJSONSchema(envelopeOf(kind), { unrepresentable: 'any' });
  return { vehicle: make(recordKinds.vehicle), shop: make(recordKinds.shop) };
}
