// Everything derived about one vehicle at once: readiness, days, money, who acts next. Pure; the one entrance for screens and sheets.

import { codeName, type NamedKinds } from '../codes/code-name.ts';
import { promisedFor } from '../codes/request-life.ts';
import type { Shop } from '../fleet/shop.ts';
import { type Costs, reckonCosts } from '../money/costs.ts';
import { type Actor, type GateItem, isHolding } from '../readiness/gate.ts';
import { judgeReadiness, type Readiness } from '../readiness/gates.ts';
import { nextItem } from '../readiness/next-item.ts';
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

/** A promise that has passed unkept, under the item that waits for it: what to chase. Null while it still stands or none was made. */
function overduePromise(
  vehicle: Vehicle,
  { place }: GateItem,
  { today, kinds }: { readonly today: Day; readonly kinds: NamedKinds },
): string | null {
  const said = (what: string, by: string, promisedOn: Day | null) =>
    promisedOn !== null && promisedOn < today
      ? `Chase${by ? ` ${by}` : ''}: ${what}, promised for ${promisedOn}`
      : null;
  if ('section' in place)
    return place.section === 'arrival' && vehicle.arrival.arrivedOn === null
      ? said('delivery', vehicle.purchase.source, vehicle.arrival.expectedOn)
      : null;
  switch (place.list) {
    case 'parts': {
      const part = vehicle.parts.find((candidate) => candidate.id === place.id);
      return part ? said(part.what, part.supplier, promisedFor(part)) : null;
    }
    case 'codeRequests': {
      const request = vehicle.codeRequests.find((candidate) => candidate.id === place.id);
      return request ? said(codeName(request, kinds), request.askedOf, promisedFor(request)) : null;
    }
    case 'sublets': {
      const sublet = vehicle.sublets.find((candidate) => candidate.id === place.id);
      return sublet ? said(sublet.what, sublet.supplier, promisedFor(sublet)) : null;
    }
    default:
      return null;
  }
}

/** Whose move it is: the next item along the way; where only others owe something and a promise has passed, the manager's, to chase it. */
function nextMoveOf(vehicle: Vehicle, readiness: Readiness, today: Day, kinds: NamedKinds): NextMove | null {
  if (vehicle.sale !== null) return null;
  if (readiness.isReady) return { who: 'sales', what: 'Offer it' };
  const item = nextItem(readiness);
  if (item === null) return null;
  if (item.who !== 'outside') return { who: item.who, what: item.text };
  const owed = readiness.gates.filter(isHolding).flatMap((gate) => gate.items.filter(({ who }) => who === 'outside'));
  for (const candidate of owed) {
    const overdue = overduePromise(vehicle, candidate, { today, kinds });
    if (overdue !== null) return { who: 'manager', what: overdue };
  }
  return { who: item.who, what: item.text };
}

export function reckonVehicle(vehicle: Vehicle, shop: Shop, today: Day): VehicleReckoning {
  const readiness = judgeReadiness(vehicle, shop.checklist, shop.codeKinds);
  const held = chargeHeldDays(vehicle, shop.checklist, {
    today,
    countsFirstDay: shop.rates.countsFirstDay,
    codeKinds: shop.codeKinds,
  });
  const costs = reckonCosts(vehicle, shop, { today, heldDays: held.heldDays });
  return { today, readiness, held, costs, nextMove: nextMoveOf(vehicle, readiness, today, shop.codeKinds) };
}
