// The channels of signing in: who is at the desk and with which secret. No answer holds a secret or anything derived from one.
import { z } from 'zod';
import { roleSchema } from '../domain/fleet/shop.ts';
import { identifierSchema } from '../domain/shared/identifier.ts';
import { secretTextSchema } from './secret-inputs.ts';
import { deskSchema } from './views.ts';

const everybody = roleSchema.options;
const manager = ['manager'] as const;
const nothing = z.strictObject({});
const onePerson = z.strictObject({ personId: identifierSchema });

export const peopleChannels = {
  'people:sign-in': {
    input: z.strictObject({ personId: identifierSchema, secret: secretTextSchema }),
    output: deskSchema,
    roles: everybody,
    mutates: true,
  },
  /** How long this person must wait before the next try. */
  'people:wait': {
    input: onePerson,
    output: z.strictObject({ waitMilliseconds: z.int().min(0) }),
    roles: everybody,
    mutates: false,
  },
  'people:lock': { input: nothing, output: deskSchema, roles: everybody, mutates: false },
  /** A person has touched the keys or the pointer; sent now and then, so that the desk is not locked under their hands. */
  'people:active': { input: nothing, output: nothing, roles: everybody, mutates: false },
  'people:change-secret': {
    input: z.strictObject({ oldSecret: secretTextSchema, newSecret: secretTextSchema }),
    output: deskSchema,
    roles: everybody,
    mutates: true,
  },
  'people:give-secret': {
    input: z.strictObject({ personId: identifierSchema, secret: secretTextSchema }),
    output: deskSchema,
    roles: manager,
    mutates: true,
  },
  'people:take-secret': { input: onePerson, output: deskSchema, roles: manager, mutates: true },
  /** Puts the keys of the newest backup in place of a file that could not be read. */
  'people:bring-back-keys': { input: nothing, output: deskSchema, roles: everybody, mutates: true },
} as const;
