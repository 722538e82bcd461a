// What the page asks about programming beyond one vehicle: the rules in force, how routes worked before, what can be done next. Reads only.
import type { ChannelInput, ChannelOutput } from '../contract/channels.ts';
import type { Person } from '../domain/fleet/shop.ts';
import { currentPack } from '../domain/programming/current-pack.ts';
import { routeHistory } from '../domain/programming/route-history.ts';
import { ok } from '../domain/shared/result.ts';
import { type NextJobs, nextJobs } from '../domain/time/next-jobs.ts';
import { shareOut } from '../domain/time/share-out.ts';
import { vehicleTitle } from '../domain/vehicle/identity.ts';
import type { Vehicle } from '../domain/vehicle/vehicle.ts';
import type { Answer, DeskContext } from './desk-context.ts';

export async function readRulePack(context: DeskContext): Answer<ChannelOutput<'programming:pack'>> {
  return ok(currentPack(context.shop()));
}

/** Counts only: whoever programs may know what worked, whatever vehicle it was. */
export async function readRouteHistory(
  context: DeskContext,
  { moduleKind }: ChannelInput<'programming:routes'>,
): Answer<ChannelOutput<'programming:routes'>> {
  const vehicles = [...context.store.vehicles().values()].map((kept) => kept.data);
  return ok(routeHistory(vehicles, moduleKind));
}

function nameOf({ id, identity }: Vehicle) {
  const { stockNumber, location, keyTag } = identity;
  return { vehicleId: id, stockNumber, title: vehicleTitle(identity), location, keyTag };
}

function viewOf(
  { order, waiting }: NextJobs,
  people: readonly Person[],
  seesMoney: boolean,
): ChannelOutput<'next-jobs:read'> {
  const shares = shareOut(order, people);
  return {
    order: order.map(({ vehicle, minutesLeft, lossCentsPerDay, why, whyWithoutMoney, tasks }) => ({
      ...nameOf(vehicle),
      minutesLeft,
      lossCentsPerDay: seesMoney ? lossCentsPerDay : null,
      why: seesMoney ? why : whyWithoutMoney,
      share: shares.get(vehicle.id) ?? null,
      tasks,
    })),
    waiting: waiting.map(({ vehicle, held }) => ({ ...nameOf(vehicle), held })),
  };
}

export async function readNextJobs(context: DeskContext): Answer<ChannelOutput<'next-jobs:read'>> {
  const vehicles = [...context.store.vehicles().values()]
    .map((kept) => kept.data)
    .map((vehicle) => ({ vehicle, heldDays: context.reckon(vehicle).held.heldDays }));
  const found = nextJobs(vehicles, context.shop(), context.today());
  return ok(viewOf(found, context.shop().people, context.rights().seesMoney));
}
