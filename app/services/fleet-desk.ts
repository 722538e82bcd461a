// What reckoning over the whole fleet needs: met by the open desk, and by the command without a window. Types only.
import type { FleetStore } from '../storage/fleet-store.ts';
import type { DeskContext } from './desk-context.ts';

export type FleetDesk = Pick<DeskContext, 'shop' | 'today' | 'reckon' | 'forecasts' | 'prospect'> & {
  readonly store: Pick<FleetStore, 'vehicles' | 'shop'>;
};
