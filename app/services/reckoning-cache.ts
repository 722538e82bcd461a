// Keeps the reckoning of each vehicle until its record, the shop's settings or the day changes: one change reckons one vehicle.
import type { Shop } from '../domain/fleet/shop.ts';
import type { Day } from '../domain/shared/day.ts';
import { reckonVehicle, type VehicleReckoning } from '../domain/vehicle/reckon.ts';
import type { Vehicle } from '../domain/vehicle/vehicle.ts';

export class ReckoningCache {
  readonly #byVehicle = new WeakMap<Vehicle, VehicleReckoning & { readonly shop: Shop }>();

  /** Records are never altered in place, so the record itself is the key. */
  reckon(vehicle: Vehicle, shop: Shop, today: Day): VehicleReckoning {
    const kept = this.#byVehicle.get(vehicle);
    // A vehicle that was sold stands still: a new day changes nothing about it.
    if (kept && kept.shop === shop && (kept.today === today || vehicle.sale !== null)) return kept;
    const fresh = { ...reckonVehicle(vehicle, shop, today), shop };
    this.#byVehicle.set(vehicle, fresh);
    return fresh;
  }
}
