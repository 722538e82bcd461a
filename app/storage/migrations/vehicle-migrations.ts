// The steps from older vehicle records to today's, in order. None yet: version 1 is the first.
import type { Migration } from './migration.ts';

export const vehicleVersion = 1;
export const vehicleMigrations: readonly Migration[] = [];
