// Reckons a whole fleet outside the window, forecasts included, and says what each part took and its share. Given the fleet's folder.
import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import process from 'node:process';
import { moneyOverview } from '../../app/domain/fleet/money-overview.ts';
import { type Shop, shopSchema } from '../../app/domain/fleet/shop.ts';
import { weighVehicle } from '../../app/domain/money/weigh-vehicle.ts';
import { reckonVehicle } from '../../app/domain/vehicle/reckon.ts';
import { type Vehicle, vehicleSchema } from '../../app/domain/vehicle/vehicle.ts';
import { ForecastCache } from '../../app/services/forecast-cache.ts';

const [folder] = process.argv.slice(2);
if (folder === undefined) throw new Error('Name the folder of the fleet.');
const rounds = 3;

function dataOf(file: string): unknown {
  const kept: unknown = JSON.parse(readFileSync(file, 'utf8'));
  return Reflect.get(kept as object, 'data');
}

const parts = [
  'reading and checking',
  'reckoning',
  'history of turnaround',
  'forecasts',
  'weighing and overview',
] as const;
type Part = (typeof parts)[number];

function oneRound(fleet: string): {
  readonly ms: Record<Part, number>;
  readonly vehicles: number;
  readonly open: number;
} {
  const ms = { ...(Object.fromEntries(parts.map((part) => [part, 0])) as Record<Part, number>) };
  let since = performance.now();
  const lap = (part: Part) => {
    const now = performance.now();
    ms[part] += now - since;
    since = now;
  };
  const shop: Shop = shopSchema.parse(dataOf(path.join(fleet, 'shop.json')));
  const names = readdirSync(path.join(fleet, 'vehicles'));
  const vehicles: Vehicle[] = names.map((name) => vehicleSchema.parse(dataOf(path.join(fleet, 'vehicles', name))));
  lap('reading and checking');
  const today = shop.sample?.today ?? '2026-03-18';
  const reckoned = vehicles.map((vehicle) => ({ vehicle, reckoning: reckonVehicle(vehicle, shop, today) }));
  lap('reckoning');
  const forecasts = new ForecastCache(() => vehicles);
  forecasts.history(shop, today);
  const ownDaysToSell = forecasts.daysToSell(shop, today);
  lap('history of turnaround');
  const open = reckoned.filter(({ vehicle }) => vehicle.sale === null);
  const byId = new Map(open.map(({ vehicle }) => [vehicle.id, forecasts.forecast(vehicle, shop, today)]));
  lap('forecasts');
  const overview = moneyOverview(
    reckoned.map(({ vehicle, reckoning }) => {
      const { readiness, held, costs } = reckoning;
      const readyOn = readiness.isReady ? today : (byId.get(vehicle.id)?.likelyOn ?? null);
      const prospect =
        vehicle.sale === null
          ? weighVehicle({ vehicle, shop, today, heldDays: held.heldDays, costs, readyOn, ownDaysToSell })
          : null;
      return { vehicle, reckoning, prospect };
    }),
    shop,
    { today, slowest: [] },
  );
  lap('weighing and overview');
  return { ms, vehicles: vehicles.length, open: overview.open };
}

function median(values: readonly number[]): number {
  return [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)] ?? Number.NaN;
}

const results = Array.from({ length: rounds }, () => oneRound(folder));
const first = results[0];
const medians = parts.map((part) => [part, median(results.map(({ ms }) => ms[part]))] as const);
const total = medians.reduce((sum, [, ms]) => sum + ms, 0);
console.log(`\nReckoning ${first?.vehicles} vehicles, ${first?.open} of them open; medians of ${rounds} rounds:`);
for (const [part, ms] of medians) console.log(`${part} | ${ms.toFixed(0)} ms | ${((100 * ms) / total).toFixed(0)} %`);
console.log(`all | ${total.toFixed(0)} ms | ${(total / (first?.vehicles ?? 1)).toFixed(2)} ms a vehicle`);
