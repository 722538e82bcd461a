// What reckoning over the whole fleet needs: met by the open desk, and by a fleet that was only read, for the command without a window.
import type { Shop } from '../domain/fleet/shop.ts';
import type { Day } from '../domain/shared/day.ts';
import { reckonVehicle } from '../domain/vehicle/reckon.ts';
import type { Vehicle } from '../domain/vehicle/vehicle.ts';
import type { DeskContext } from './desk-context.ts';
import { ForecastCache } from './forecast-cache.ts';
import { prospectOf } from './prospect-of.ts';

type Read<Data> = { readonly data: Data; readonly revision: number };

export type FleetDesk = Pick<DeskContext, 'shop' | 'today' | 'reckon' | 'forecasts' | 'prospect'> & {
  readonly store: {
    readonly vehicles: () => ReadonlyMap<string, Read<Vehicle>>;
    readonly shop: () => Read<Shop> | null;
  };
};

/** A fleet as it was read at one moment; nothing in it changes. */
export function readFleetDesk(vehicles: readonly Read<Vehicle>[], shop: Read<Shop>, today: Day): FleetDesk {
  const byId = new Map(vehicles.map((one) => [one.data.id, one]));
  const forecasts = new ForecastCache(() => vehicles.map(({ data }) => data));
  return {
    shop: () => shop.data,
    today: () => today,
    reckon: (vehicle) => reckonVehicle(vehicle, shop.data, today),
    forecasts,
    prospect: (vehicle, reckoning, forecast) =>
      prospectOf(vehicle, reckoning, forecast, { shop: shop.data, today, forecasts }),
    store: { vehicles: () => byId, shop: () => shop },
  };
}
