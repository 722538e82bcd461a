// The channels that look up public holidays for the shop's calendar. Nothing is written: what is taken over is saved with the calendar.
import { z } from 'zod';
import { daySchema } from '../domain/shared/day.ts';

const manager = ['manager'] as const;

/** ISO 3166-1 code of a country; the code of a region as the list names it. */
const placeCode = z.string().regex(/^[A-Z0-9]{1,4}$/);

const namedPlaceSchema = z.strictObject({ code: placeCode, name: z.string() });
export type NamedPlace = z.infer<typeof namedPlaceSchema>;

export const suggestedHolidaySchema = z.strictObject({
  day: daySchema,
  name: z.string(),
  /** Observed by law or by the banks everywhere in the place; false: by some, or by schools or offices only. */
  isPublic: z.boolean(),
});
export type SuggestedHoliday = z.infer<typeof suggestedHolidaySchema>;

export const holidayChannels = {
  /** Countries that are known; with one of them, its regions. */
  'calendar:places': {
    input: z.strictObject({ country: placeCode.nullable() }),
    output: z.array(namedPlaceSchema).readonly(),
    roles: manager,
    mutates: false,
  },
  'calendar:suggest-holidays': {
    input: z.strictObject({ country: placeCode, region: placeCode.nullable(), year: z.int().min(1970).max(2100) }),
    output: z.array(suggestedHolidaySchema).readonly(),
    roles: manager,
    mutates: false,
  },
} as const;
