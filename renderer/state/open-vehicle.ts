// The vehicle that is open, as a value, and what each answer makes of it. Pure; the asking is in vehicle-store.ts.
import type { AppError } from '../../app/contract/app-error.ts';
import type { VehicleView } from '../../app/contract/views.ts';

export type OpenVehicle =
  | { readonly state: 'none' }
  | { readonly state: 'reading'; readonly id: string }
  | { readonly state: 'failed'; readonly id: string; readonly error: AppError }
  /** `turn`: the number of the question that this view answered. */
  | { readonly state: 'here'; readonly id: string; readonly view: VehicleView; readonly turn: number };

/** A vehicle was asked for. The one that is open stays on the page while it is read again. */
export function asked(open: OpenVehicle, id: string): OpenVehicle {
  return open.state === 'here' && open.id === id ? open : { state: 'reading', id };
}

/**
 * A view came as the answer to question number `turn`. One of another vehicle is not taken. Answers may overtake each other: one that was
 * asked for earlier and knows nothing newer is not taken either; an older revision that was asked for later is what is kept now.
 */
export function arrived(open: OpenVehicle, view: VehicleView, turn: number): OpenVehicle {
  const { id } = view.vehicle;
  if (open.state === 'none' || open.id !== id) return open;
  if (open.state === 'here' && turn < open.turn && view.revision <= open.view.revision) return open;
  return { state: 'here', id, view, turn };
}

/** It could not be read. What is shown stays, unless it is gone altogether. */
export function failed(open: OpenVehicle, id: string, error: AppError): OpenVehicle {
  if (open.state === 'none' || open.id !== id) return open;
  return open.state === 'here' && error.code !== 'not-found' ? open : { state: 'failed', id, error };
}
