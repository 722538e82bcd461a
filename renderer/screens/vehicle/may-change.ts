// What is offered to each role on this screen, read from the same table that the main process enforces.
import type { Role } from '../../../app/domain/fleet/shop.ts';
import type { SheetKind } from '../../../app/domain/sheets/sheet.ts';
import type { FactList, Section } from '../../../app/domain/vehicle/change.ts';
import { rightsHere } from '../../state/rights-here.ts';

export function mayPut(role: Role, list: FactList): boolean {
  return rightsHere(role).puts.includes(list);
}

export function mayRemove(role: Role, list: FactList): boolean {
  return rightsHere(role).removes.includes(list);
}

export function maySet(role: Role, section: Section): boolean {
  return rightsHere(role).sets.includes(section);
}

/** What is done about a fault is the manager's to say. */
export function mayDecide(role: Role): boolean {
  return rightsHere(role).decides;
}

export function maySeeCodes(role: Role): boolean {
  return rightsHere(role).seesCodes;
}

/** That a code was chased and tried; everything else about its request is the manager's. */
export function mayNoteCodeLife(role: Role): boolean {
  return rightsHere(role).notesCodeLife;
}

export function maySeePartPrices(role: Role): boolean {
  return rightsHere(role).seesPartPrices;
}

export function mayPrint(role: Role, kind: SheetKind): boolean {
  return rightsHere(role).prints.includes(kind);
}
