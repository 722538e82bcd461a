// Prints the sample fleet as a manager would want to read it: `npx tsx app/dev/sample-fleet/look.ts`. Changes nothing.
import { reckonVehicle, type VehicleReckoning } from '../../domain/vehicle/reckon.ts';
import type { Vehicle } from '../../domain/vehicle/vehicle.ts';
import { tellAll } from './sample-fleet.ts';
import { sampleShop, sampleToday } from './sample-shop.ts';

const money = (cents: number | null) => (cents === null ? '–' : Math.round(cents / 100).toString()).padStart(7);

function line(vehicle: Vehicle, { held, costs, nextMove }: VehicleReckoning): string {
  const causes = Object.entries(held.byCause).map(([cause, days]) => `${cause} ${days}`);
  return [
    vehicle.identity.stockNumber,
    held.now.standing.padEnd(11),
    held.now.since,
    String(held.heldDays).padStart(3),
    money(costs.startingMarginCents),
    money(costs.marginLeftCents),
    money(costs.marginExpectedCents),
    money(costs.budgets.at(-1)?.leftCents ?? null),
    costs.breakEvenOn ?? '–'.padEnd(10),
    `${held.now.what}${held.now.expectedOn ? ` (by ${held.now.expectedOn})` : ''} | ${causes.join(', ')} | ${nextMove ? `${nextMove.who}: ${nextMove.what}` : ''}`,
  ].join('  ');
}

const rows = tellAll().map(({ data }) => ({ vehicle: data, reckoning: reckonVehicle(data, sampleShop, sampleToday) }));
const open = rows.filter(({ vehicle }) => vehicle.sale === null);
console.log('stock  standing     since       held  margin    left  expected  budget  covers to');
for (const { vehicle, reckoning } of open) console.log(line(vehicle, reckoning));
console.log(`\n${rows.length - open.length} sold:`);
for (const { vehicle, reckoning } of rows) if (vehicle.sale !== null) console.log(line(vehicle, reckoning));
