// One vehicle as a row of the lot and as an opened view, from its record and its reckoning. Shaping only: no storage, no roles.
import type { LotRow, ReadyDays, VehicleView } from '../contract/views.ts';
import { isHolding } from '../domain/readiness/gate.ts';
import type { OpenPlan } from '../domain/time/open-plan.ts';
import type { VehicleReckoning } from '../domain/vehicle/reckon.ts';
import type { Vehicle } from '../domain/vehicle/vehicle.ts';

export function lotRow(vehicle: Vehicle, reckoning: VehicleReckoning, forecast: ReadyDays): LotRow {
  const { stockNumber, vin, modelYear, make, model, colour, location, keyTag } = vehicle.identity;
  const { spentCents, marginLeftCents, marginExpectedCents, breakEvenOn } = reckoning.costs;
  return {
    id: vehicle.id,
    identity: { stockNumber, vin, modelYear, make, model, colour, location, keyTag },
    boughtOn: vehicle.purchase.boughtOn,
    held: reckoning.held,
    nextMove: reckoning.nextMove,
    holdingGates: vehicle.sale === null ? reckoning.readiness.gates.filter(isHolding).length : 0,
    isReady: reckoning.readiness.isReady,
    askingCents: vehicle.targets.askingCents,
    forecast: forecast && { likelyOn: forecast.likelyOn, safeOn: forecast.safeOn },
    money: {
      paymentsOn: reckoning.costs.payments.map(({ dueOn }) => dueOn),
      spentCents,
      marginLeftCents,
      marginExpectedCents,
      breakEvenOn,
    },
  };
}

export function vehicleView(
  kept: { readonly data: Vehicle; readonly revision: number; readonly savedAt: string; readonly isReadOnly: boolean },
  reckoning: VehicleReckoning,
  {
    openPlan,
    ...ahead
  }: Pick<VehicleView, 'forecast' | 'isForecastToCome' | 'prospect'> & { readonly openPlan: OpenPlan | null },
): VehicleView {
  const { today, readiness, held, costs, nextMove } = reckoning;
  const { revision, savedAt, isReadOnly, data } = kept;
  const course = openPlan && {
    readyOn: openPlan.readyOn,
    items: openPlan.items.map(({ item: { id }, startsOn, endsOn, floatDays, isCritical }) => ({
      id,
      startsOn,
      endsOn,
      floatDays,
      isCritical,
    })),
  };
  return { revision, savedAt, isReadOnly, vehicle: data, today, readiness, held, nextMove, costs, course, ...ahead };
}
