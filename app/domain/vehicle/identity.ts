// Which vehicle it is: the section of the record that identifies it. The VIN's own rules are in vin.ts.
import { z } from 'zod';
import { filledLineSchema, lineSchema } from '../shared/text.ts';

export const driveKindSchema = z.enum(['combustion', 'hybrid', 'electric']);
export type DriveKind = z.infer<typeof driveKindSchema>;

export const odometerSchema = z.strictObject({ reading: z.int().min(0).max(3_000_000), unit: z.enum(['km', 'mi']) });
export type Odometer = z.infer<typeof odometerSchema>;

export const identitySchema = z.strictObject({
  stockNumber: filledLineSchema(24),
  /** Cleaned: upper case, no spaces. Empty only with a reason (a vehicle whose plate cannot be read yet). */
  vin: z.string().max(24, 'A VIN has 17 characters.'),
  /** Why a VIN is kept although it is missing or its check digit does not hold; else empty. */
  vinReason: lineSchema(200),
  modelYear: z
    .int('Write the year with four digits.')
    .min(1900, 'Write the year with four digits.')
    .max(2100)
    .nullable(),
  make: lineSchema(40),
  model: lineSchema(60),
  body: lineSchema(40),
  colour: lineSchema(40),
  drive: driveKindSchema,
  odometer: odometerSchema.nullable(),
  location: lineSchema(60),
  keyTag: lineSchema(24),
});
export type Identity = z.infer<typeof identitySchema>;

/** '2019 Merrowick Mallow', or what is known of it; never empty. */
export function vehicleTitle(identity: Pick<Identity, 'modelYear' | 'make' | 'model'>): string {
  const words = [identity.modelYear?.toString() ?? '', identity.make, identity.model].filter((word) => word !== '');
  return words.join(' ') || 'Vehicle without a name yet';
}
