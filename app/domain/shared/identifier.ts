// Identities of records and of the facts inside them. Made by the caller (random passed in), never derived from what a person typed.
import { z } from 'zod';

/** Lower-case letters and digits, 4 to 40 long: safe as a file name on every system. */
export const identifierSchema = z
  .string()
  .regex(/^[a-z0-9][a-z0-9-]{2,38}[a-z0-9]$/, 'Not an identity that this program makes.');

export type Identifier = string;
