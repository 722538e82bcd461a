// Which screen is shown and for what. The page has no addresses: the program is one window without a location bar.
import type { GateItem } from '../../app/domain/readiness/gate.ts';
import type { AnySheetKind } from '../../app/domain/sheets/sheet.ts';
import { createStore } from './store.ts';

export type Route =
  | { readonly screen: 'lot' }
  /** `place` names where in the record to begin: a list and maybe a fact, or a section. */
  | { readonly screen: 'vehicle'; readonly id: string; readonly place?: VehiclePlace }
  /** `vin` was scanned and is filled in. */
  | { readonly screen: 'take-in'; readonly vin?: string }
  | { readonly screen: 'import-list' }
  | { readonly screen: 'next-jobs' }
  | { readonly screen: 'waiting' }
  | { readonly screen: 'sheets'; readonly vehicleId?: string; readonly kind?: AnySheetKind }
  | { readonly screen: 'setup' }
  | { readonly screen: 'safety' }
  | { readonly screen: 'money' };

/** The screens of the top bar in their order; Alt and their number go to them. */
export const screensInOrder = ['lot', 'next-jobs', 'waiting', 'money', 'sheets', 'setup'] as const;

export type VehiclePlace = GateItem['place'];

export const routeStore = createStore<Route>({ screen: 'lot' });

export function goTo(route: Route): void {
  routeStore.set(route);
}
