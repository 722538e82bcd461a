// One measurement of the 12 V battery as it was taken. What it says about the charge is worked out in battery-charge.ts.
import { z } from 'zod';
import { daySchema } from '../shared/day.ts';
import { factDraft, keptFact } from '../shared/fact.ts';
import { lineSchema } from '../shared/text.ts';
import { type BatteryCharge, batteryChemistrySchema, chargeFromRestingVolts } from './battery-charge.ts';

const shape = {
  measuredOn: daySchema,
  /** At the posts, of a 12 V battery. */
  volts: z
    .number('Write the volts, for example 12.45.')
    .min(5, 'A 12 V battery: 5 to 16 V.')
    .max(16, 'A 12 V battery: 5 to 16 V.'),
  chemistry: batteryChemistrySchema,
  /** Of the battery; null when not measured. */
  temperatureCelsius: z.number().min(-50).max(80).nullable(),
  /** Six hours or more without charging and with its loads off. Without it the volts do not tell the charge. */
  isRested: z.boolean(),
  note: lineSchema(200),
};
export const batteryReadingDraftSchema = factDraft(shape);
export const batteryReadingSchema = keptFact(shape);
export type BatteryReadingDraft = z.infer<typeof batteryReadingDraftSchema>;
export type BatteryReading = z.infer<typeof batteryReadingSchema>;

/** The charge that a reading tells; null when the battery had not rested, so that its volts tell none. */
export function chargeOf(
  reading: Pick<BatteryReading, 'volts' | 'chemistry' | 'temperatureCelsius' | 'isRested'>,
): BatteryCharge | null {
  const { volts, chemistry, temperatureCelsius, isRested } = reading;
  return isRested ? chargeFromRestingVolts(volts, { chemistry, temperatureCelsius }) : null;
}
