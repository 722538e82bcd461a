// What of the lot may come after its first rows: sold vehicles of a long ledger, then forecasts. In short slices, so that nobody waits.
import { setImmediate } from 'node:timers';
import type { LotRow, ReadyDays } from '../contract/views.ts';
import type { Vehicle } from '../domain/vehicle/vehicle.ts';
import type { DeskContext } from './desk-context.ts';
import { maySeeVehicle } from './role-rules.ts';

/** How long one slice may keep the program from answering something else. */
const sliceMs = 12;
/** Rows and forecasts are told of in batches of about this many. */
const batchSize = 120;

const turns = new WeakMap<DeskContext, number>();

/** The rows that were not there yet when the lot was read. */
function* addRows(context: DeskContext, sent: ReadonlySet<string>): Generator<void> {
  const missing = [...context.store.vehicles().keys()].filter((id) => !sent.has(id));
  let rows: LotRow[] = [];
  for (const [index, id] of missing.entries()) {
    rows.push(...context.rows([id]));
    const toCome = missing.length - index - 1;
    if (rows.length >= batchSize || toCome === 0) {
      context.deps.emit('lot:rows-added', { rows, toCome });
      rows = [];
    }
    yield;
  }
}

function* addForecasts(context: DeskContext): Generator<void> {
  const { store } = context;
  const shop = context.shop();
  const today = context.today();
  const { role } = context.person();
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
  const ids = [...store.vehicles().keys()];
  for (const round of rounds) {
    for (const id of ids) {
      const vehicle = store.vehicles().get(id)?.data;
      if (vehicle) round(id, vehicle);
      yield;
    }
  }
  send();
}

/** `sent`: the vehicles whose rows have gone out. Starts anew each time it is called: another person, day or fleet may see other rows. */
export function fillLot(context: DeskContext, sent: ReadonlySet<string>): void {
  const turn = (turns.get(context) ?? 0) + 1;
  turns.set(context, turn);
  const { store } = context;
  const shop = context.shop();
  const isOver = () =>
    turns.get(context) !== turn || context.signIn.isLocked() || context.store !== store || context.shop() !== shop;
  function* work(): Generator<void> {
    yield* addRows(context, sent);
    if (context.rights().seesForecast) yield* addForecasts(context);
  }
  const steps = work();
  const slice = () => {
    if (isOver()) return;
    const until = performance.now() + sliceMs;
    while (performance.now() < until) if (steps.next().done) return;
    void context.foreground.pause().then(slice);
  };
  if (store.soldToRead > 0) context.deps.emit('lot:rows-added', { rows: [], toCome: store.soldToRead });
  void store.whole.then(() => setImmediate(slice));
}
