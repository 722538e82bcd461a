// Why a sheet of this kind cannot be made of a vehicle as its record stands, in a sentence. Makes no sheet and judges no rights.
import type { Vehicle } from '../vehicle/vehicle.ts';
import { whyNoPlanSheet } from './plan-sheet.ts';
import type { SheetKind } from './sheet.ts';

/** Null when it can be made. `factId` names the one fact that the sheet is about, where it is about one. */
export function whyNoSheet(kind: SheetKind, vehicle: Vehicle, factId: string | null): string | null {
  return kind === 'plan-sheet' ? whyNoPlanSheet(vehicle, factId) : null;
}
