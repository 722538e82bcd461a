// The vehicle that is open, as a value, and what each answer makes of it. Pure; the asking is in vehicle-store.ts.
import type { AppError } from '../../app/contract/app-error.ts';
import type { VehicleView } from '../../app/contract/views.ts';

export type OpenVehicle =
  | { readonly state: 'none' }
  | { readonly state: 'reading'; readonly id: string }
  | { readonly state: 'failed'; readonly id: string; readonly error: AppError }
  | { readonly state: 'here'; readonly id: string; readonly view: VehicleView; readonly error: AppError | null };

/** A vehicle was asked for. The one that is open stays on the page while it is read again. */
export function asked(open: OpenVehicle, id: string): OpenVehicle {
  return open.state === 'here' && open.id === id ? open : { state: 'reading', id };
}

/** A view came. One of another vehicle is not taken, nor one that is older than what is shown: answers may overtake each other. */
export function arrived(open: OpenVehicle, view: VehicleView): OpenVehicle {
  const { id } = view.vehicle;
  if (open.state === 'none' || open.id !== id) return open;
  if (open.state === 'here' && view.revision < open.view.revision) return open;
  return { state: 'here', id, view, error: null };
}

/** It could not be read. What is shown stays, unless it is gone altogether. */
export function failed(open: OpenVehicle, id: string, error: AppError): OpenVehicle {
  if (open.state === 'none' || open.id !== id) return open;
  return open.state === 'here' && error.code !== 'not-found' ? { ...open, error } : { state: 'failed', id, error };
}
