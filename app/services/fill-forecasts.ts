// Works out the forecasts of the lot after its rows have gone out, in short slices, so that nobody waits for them.
import { setImmediate } from 'node:timers';
import type { ReadyDays } from '../contract/views.ts';
import { rightsOf } from '../domain/people/role-rights.ts';
import type { Vehicle } from '../domain/vehicle/vehicle.ts';
import type { DeskContext } from './desk-context.ts';
import { maySeeVehicle } from './role-rules.ts';

/** How long one slice may keep the program from answering something else. */
const sliceMs = 12;
/** Rows are told of in batches of about this many. */
const batchSize = 120;

const turns = new WeakMap<DeskContext, number>();

/** Starts anew each time it is called: another person, day or fleet may see other rows. */
export function fillForecasts(context: DeskContext): void {
  const turn = (turns.get(context) ?? 0) + 1;
  turns.set(context, turn);
  const { role } = context.person();
  if (!rightsOf(role).seesForecast) return;
  const { store } = context;
  const shop = context.shop();
  const today = context.today();
  const ids = [...store.vehicles().keys()];
  let next = 0;
  let batch: { id: string; forecast: ReadyDays }[] = [];
  const send = () => {
    if (batch.length > 0) context.deps.emit('lot:forecasts', { forecasts: batch });
    batch = [];
  };
  const forecastOne = (id: string, vehicle: Vehicle) => {
    if (vehicle.sale !== null || !maySeeVehicle(role, vehicle, context.reckon(vehicle))) return;
    if (context.forecasts.known(vehicle, shop, today) !== undefined) return;
    const forecast = context.forecasts.forecast(vehicle, shop, today);
    if (forecast !== null) batch.push({ id, forecast: { likelyOn: forecast.likelyOn, safeOn: forecast.safeOn } });
    if (batch.length >= batchSize) send();
  };
  // Once around for what the history is made of, once more for the forecasts that rest on it.
  const rounds = [(_id: string, vehicle: Vehicle) => context.forecasts.warm(vehicle, shop), forecastOne];
  const slice = () => {
    if (turns.get(context) !== turn || context.store !== store || context.shop() !== shop) return;
    const until = performance.now() + sliceMs;
    while (next < 2 * ids.length && performance.now() < until) {
      const id = ids[next % ids.length] ?? '';
      const vehicle = store.vehicles().get(id)?.data;
      if (vehicle) rounds[next < ids.length ? 0 : 1]?.(id, vehicle);
      next += 1;
    }
    if (next < 2 * ids.length) setImmediate(slice);
    else send();
  };
  setImmediate(slice);
}
