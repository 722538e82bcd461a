// What is offered to each role on this screen, read from the same table that the main process enforces.
import type { Role } from '../../../app/domain/fleet/shop.ts';
import { rightsOf } from '../../../app/domain/people/role-rights.ts';
import type { SheetKind } from '../../../app/domain/sheets/sheet.ts';
import type { FactList, Section } from '../../../app/domain/vehicle/change.ts';

export function mayPut(role: Role, list: FactList): boolean {
  return rightsOf(role).puts.includes(list);
}

export function mayRemove(role: Role, list: FactList): boolean {
  return rightsOf(role).removes.includes(list);
}

export function maySet(role: Role, section: Section): boolean {
  return rightsOf(role).sets.includes(section);
}

/** What is done about a fault is the manager's to say. */
export function mayDecide(role: Role): boolean {
  return rightsOf(role).decides;
}

export function maySeeCodes(role: Role): boolean {
  return rightsOf(role).seesCodes;
}

/** That a code was chased and tried; everything else about its request is the manager's. */
export function mayNoteCodeLife(role: Role): boolean {
  return rightsOf(role).notesCodeLife;
}

export function maySeePartPrices(role: Role): boolean {
  return rightsOf(role).seesPartPrices;
}

export function mayPrint(role: Role, kind: SheetKind): boolean {
  return rightsOf(role).prints.includes(kind);
}
