// What people-keys.json holds: for each person who signs in, how to tell whether a pass phrase or PIN is theirs. Opens nothing by itself.
import { z } from 'zod';
import { triesSchema } from '../../domain/people/try-delay.ts';
import { instantSchema } from '../../domain/shared/day.ts';
import { identifierSchema } from '../../domain/shared/identifier.ts';
import type { RecordKind } from '../record-kind.ts';
import { scryptCostSchema } from './scrypt-key.ts';
import { base64Schema } from './sealed-box.ts';

export const peopleKeysFile = 'people-keys.json';

const personVerifierSchema = z.strictObject({
  personId: identifierSchema,
  setAt: instantSchema,
  /** So that the field for it can say what to type. */
  form: z.enum(['pin', 'pass-phrase']),
  cost: scryptCostSchema,
  salt: base64Schema({ exactly: 16 }),
  verifier: base64Schema({ exactly: 32 }),
  tries: triesSchema,
});
export type PersonVerifier = z.infer<typeof personVerifierSchema>;

export const peopleKeysSchema = z.strictObject({ people: z.array(personVerifierSchema).max(200) });
export type PeopleKeys = z.infer<typeof peopleKeysSchema>;

export const peopleKeysKind: RecordKind<PeopleKeys> = {
  format: 'lotwright-people-keys',
  version: 1,
  schema: peopleKeysSchema,
  migrations: [],
  what: 'list of sign-in keys',
  idOf: () => null,
};
