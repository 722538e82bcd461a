// What trying out a change gives back. Reckoned, never kept.
import type { z } from 'zod';
import { vehicleViewSchema } from './views.ts';

/** A vehicle as it would be after changes that nobody has made: reckoned, not kept. */
export const whatIfSchema = vehicleViewSchema.pick({ vehicle: true, costs: true, forecast: true, prospect: true });
export type WhatIfView = z.infer<typeof whatIfSchema>;
