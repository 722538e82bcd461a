// A vehicle as it would be after changes that nobody has made yet: judged and reckoned like real ones, and never kept.
import type { ChannelInput, ChannelOutput } from '../contract/channels.ts';
import { ok } from '../domain/shared/result.ts';
import { applyChange } from '../domain/vehicle/apply-change.ts';
import { reckonVehicle } from '../domain/vehicle/reckon.ts';
import { type Answer, type DeskContext, refuse } from './desk-context.ts';
import { refusalOf } from './role-rules.ts';

export async function whatIf(
  context: DeskContext,
  input: ChannelInput<'vehicle:what-if'>,
): Answer<ChannelOutput<'vehicle:what-if'>> {
  const kept = context.visible(input.id);
  if (!kept) return refuse('not-found');
  let vehicle = kept.data;
  for (const change of input.changes) {
    const refusal = refusalOf(context.person().role, vehicle, change, context.rights());
    if (refusal !== null) return refuse('not-allowed', refusal);
    const applied = applyChange(vehicle, change, context.changeContext());
    if (!applied.ok) return refuse('refused', '', applied.error);
    vehicle = applied.value;
  }
  const shop = context.shop();
  const today = context.today();
  const reckoning = reckonVehicle(vehicle, shop, today);
  const forecast = context.forecasts.forecastOf(vehicle, shop, today);
  return ok({ vehicle, costs: reckoning.costs, forecast, prospect: context.prospect(vehicle, reckoning, forecast) });
}
