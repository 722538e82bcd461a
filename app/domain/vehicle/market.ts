// The market a vehicle is sold in, as far as the rules for its VIN depend on it. Not a list of countries.
import { z } from 'zod';

/** 'EU' stands for the European Union, 'other' for every market whose VIN rules this program does not know. */
export const marketSchema = z.enum(['US', 'CA', 'MX', 'CN', 'GB', 'EU', 'other']);

export type Market = z.infer<typeof marketSchema>;
