// Everything derived about one vehicle at once: readiness, days, money, who acts next. Pure; the one entrance for screens and sheets.
import type { Shop } from '../fleet/shop.ts';
import { type Costs, reckonCosts } from '../money/costs.ts';
import { type Actor, type GateItem, isHolding } from '../readiness/gate.ts';
import { judgeReadiness, type Readiness } from '../readiness/gates.ts';
import type { Day } from '../shared/day.ts';
import { chargeHeldDays, type HeldDays } from '../time/held-days.ts';
import type { Vehicle } from './vehicle.ts';

export type NextMove = { readonly who: Actor; readonly what: string };

export type VehicleReckoning = {
  readonly today: Day;
  readonly readiness: Readiness;
  readonly held: HeldDays;
  readonly costs: Costs;
  readonly nextMove: NextMove | null;
};

/** Whose move it is: the first open item along the way that the shop itself can do, else the first that somebody else owes. */
function nextMoveOf(vehicle: Vehicle, readiness: Readiness): NextMove | null {
  if (vehicle.sale !== null) return null;
  if (readiness.isReady) return { who: 'sales', what: 'Offer it' };
  const items: readonly GateItem[] = readiness.gates.filter(isHolding).flatMap((gate) => gate.items);
  const isHere = vehicle.arrival.arrivedOn !== null;
  const item =
    (isHere ? items.find((candidate) => candidate.who !== 'outside' && !isPaper(candidate)) : undefined) ?? items[0];
  return item ? { who: item.who, what: item.text } : null;
}

/** Paper is chased beside the work; it is the next move only when nothing else is. */
function isPaper(item: GateItem): boolean {
  return 'section' in item.place && item.place.section === 'purchase';
}

export function reckonVehicle(vehicle: Vehicle, shop: Shop, today: Day): VehicleReckoning {
  const readiness = judgeReadiness(vehicle, shop.checklist);
  const held = chargeHeldDays(vehicle, readiness, { today, countsFirstDay: shop.rates.countsFirstDay });
  const costs = reckonCosts(vehicle, shop, { today, heldDays: held.heldDays });
  return { today, readiness, held, costs, nextMove: nextMoveOf(vehicle, readiness) };
}
