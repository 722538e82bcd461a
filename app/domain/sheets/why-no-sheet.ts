// Why a sheet of this kind cannot be made of a vehicle as its record stands, and which facts have a sheet of their own. Makes no sheet and
// judges no rights.
import type { Shop } from '../fleet/shop.ts';
import type { Vehicle } from '../vehicle/vehicle.ts';
import { letterRequests, whyNoCodeLetter } from './code-letter.ts';
import { whyNoPlanSheet } from './plan-sheet.ts';
import type { SheetKind } from './sheet.ts';

/** A sentence; null when it can be made. `factId` names the one fact that the sheet is about, where it is about one. */
export function whyNoSheet(kind: SheetKind, vehicle: Vehicle, shop: Shop, factId: string | null = null): string | null {
  if (kind === 'plan-sheet') return whyNoPlanSheet(vehicle, factId);
  if (kind === 'code-letter') return whyNoCodeLetter(vehicle, shop, factId);
  return null;
}

/** What is to be printed of this vehicle: a letter for each request that can be asked, one sheet of everything else. */
export function sheetFacts(kind: SheetKind, vehicle: Vehicle, shop: Shop): readonly (string | null)[] {
  const requests = kind === 'code-letter' ? letterRequests(vehicle, shop) : [];
  return requests.length > 0 ? requests : [null];
}
