// What may be offered to whoever is at the desk: the table that the main process enforces, as far as signing in has opened it.
import type { Role } from '../../app/domain/fleet/shop.ts';
import { rightsWithin } from '../../app/domain/people/rights-within.ts';
import { type Rights, rightsOf } from '../../app/domain/people/role-rights.ts';
import { deskStore } from './desk-store.ts';

export function rightsHere(role: Role): Rights {
  // Before there is a desk no screen is drawn.
  return rightsWithin(rightsOf(role), { mayWork: true, seesMoney: deskStore.read()?.seesMoney ?? true });
}
