// The program itself: what it is made of, and a report of a fault. Nothing about a vehicle, a person or an amount comes out of these.
import { z } from 'zod';
import { roleSchema } from '../domain/fleet/shop.ts';

const nothing = z.strictObject({});

export const packageLicenceSchema = z.strictObject({
  name: z.string(),
  version: z.string(),
  licence: z.string(),
  /** The whole text as its makers wrote it. */
  text: z.string(),
});
export type PackageLicence = z.infer<typeof packageLicenceSchema>;

export const programViewSchema = z.strictObject({
  version: z.string(),
  /** Names and versions: Electron, Chromium, Node. */
  runtime: z.string(),
  system: z.string(),
  packages: z.array(packageLicenceSchema).readonly(),
});
export type ProgramView = z.infer<typeof programViewSchema>;

export const programChannels = {
  'program:read': { input: nothing, output: programViewSchema, roles: roleSchema.options, mutates: false },
  /** Text to be looked at and copied by a person; it goes nowhere by itself. */
  'program:report': {
    input: nothing,
    output: z.strictObject({ text: z.string() }),
    roles: roleSchema.options,
    mutates: false,
  },
} as const;
