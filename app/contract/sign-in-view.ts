// What the page knows of signing in: the names to choose from, and what is open just now. No secret, and nothing derived from one.
import { z } from 'zod';
import { personSchema } from '../domain/fleet/shop.ts';
import { accessPartSchema } from '../domain/people/sign-in.ts';
import { identifierSchema } from '../domain/shared/identifier.ts';

export const nameSchema = personSchema.omit({ labourCentsPerHour: true }).extend({
  /** What this person signs in with; null: with nothing yet. */
  secretForm: z.enum(['pin', 'pass-phrase']).nullable(),
});
export type Name = z.infer<typeof nameSchema>;

export const signInViewSchema = z.strictObject({
  /** Nothing but the list of names may be shown; all that could tell of a record is left out of the desk. */
  isLocked: z.boolean(),
  /** Null: nobody has signed in, whoever is picked as being at the desk. */
  signedInId: identifierSchema.nullable(),
  wantsSignIn: z.boolean(),
  moneyNeedsSignIn: z.boolean(),
  /** What signing in would open for whoever is at the desk. */
  adds: z.array(accessPartSchema).readonly(),
  managerHasSecret: z.boolean(),
  /** Why nobody can sign in just now; null when they can. */
  trouble: z.string().nullable(),
});
export type SignInView = z.infer<typeof signInViewSchema>;
