// The steps from older shop records to today's, in order. None yet: version 1 is the first.
import type { Migration } from './migration.ts';

export const shopVersion = 1;
export const shopMigrations: readonly Migration[] = [];
