// What every part of the vehicle screen knows: the vehicle, the desk, what may be done, and how to change it.
import { createContext, useContext } from 'react';
import type { AppError } from '../../../../app/contract/app-error.ts';
import type { Desk, VehicleView } from '../../../../app/contract/views.ts';
import type { Role } from '../../../../app/domain/fleet/shop.ts';
import type { Day } from '../../../../app/domain/shared/day.ts';
import type { Result } from '../../../../app/domain/shared/result.ts';
import type { FactList, Section, VehicleChange } from '../../../../app/domain/vehicle/change.ts';
import type { Vehicle } from '../../../../app/domain/vehicle/vehicle.ts';
import { mayNoteCodeLife, mayPut, mayRemove, maySet } from '../may-change.ts';

export type VehicleScreenState = {
  readonly id: string;
  readonly view: VehicleView;
  readonly vehicle: Vehicle;
  readonly desk: Desk;
  readonly today: Day;
  readonly role: Role;
  readonly currency: string;
  readonly canPut: (list: FactList) => boolean;
  readonly canRemove: (list: FactList) => boolean;
  readonly canSet: (section: Section) => boolean;
  readonly canNoteCodeLife: boolean;
  readonly change: (change: VehicleChange) => Promise<Result<VehicleView, AppError>>;
};

export function screenStateOf(
  id: string,
  view: VehicleView,
  desk: Desk,
  change: VehicleScreenState['change'],
): VehicleScreenState {
  const { role } = desk.person;
  const isWritable = !view.isReadOnly && desk.readOnlyReason === null;
  return {
    id,
    view,
    vehicle: view.vehicle,
    desk,
    today: view.today,
    role,
    currency: desk.shop?.dealer.currency ?? 'USD',
    canPut: (list) => isWritable && mayPut(role, list),
    canRemove: (list) => isWritable && mayRemove(role, list),
    canSet: (section) => isWritable && maySet(role, section),
    canNoteCodeLife: isWritable && mayNoteCodeLife(role),
    change,
  };
}

export const VehicleContext = createContext<VehicleScreenState | null>(null);

export function useVehicle(): VehicleScreenState {
  const state = useContext(VehicleContext);
  if (state === null) throw new Error('Drawn outside the vehicle screen.');
  return state;
}
