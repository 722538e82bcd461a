// What finishing a vehicle or letting it go would bring, from its reckoning and its forecast. The only place that puts the inputs together.
import type { Shop } from '../domain/fleet/shop.ts';
import { type Prospect, weighVehicle } from '../domain/money/weigh-vehicle.ts';
import type { Day } from '../domain/shared/day.ts';
import type { Forecast } from '../domain/time/forecast.ts';
import type { VehicleReckoning } from '../domain/vehicle/reckon.ts';
import type { Vehicle } from '../domain/vehicle/vehicle.ts';
import type { ForecastCache } from './forecast-cache.ts';

/** Null once it is sold: then everything is known. */
export function prospectOf(
  vehicle: Vehicle,
  { readiness, held, costs }: VehicleReckoning,
  forecast: Forecast | null,
  { shop, today, forecasts }: { readonly shop: Shop; readonly today: Day; readonly forecasts: ForecastCache },
): Prospect | null {
  if (vehicle.sale !== null) return null;
  return weighVehicle({
    vehicle,
    shop,
    today,
    heldDays: held.heldDays,
    costs,
    readyOn: readiness.isReady ? today : (forecast?.likelyOn ?? null),
    ownDaysToSell: forecasts.daysToSell(shop, today),
  });
}
