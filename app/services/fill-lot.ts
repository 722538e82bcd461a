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
  // What was to come may all have been bad.
  if (missing.length === 0 && context.store.readsSoldLater)
    context.deps.emit('lot:rows-added', { rows: [], toCome: 0 });
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

function* overAll({ store }: DeskContext, job: (id: string, vehicle: Vehicle) => void): Generator<void> {
  for (const id of [...store.vehicles().keys()]) {
    const vehicle = store.vehicles().get(id)?.data;
    if (vehicle) job(id, vehicle);
    yield;
  }
}

/** What the history of turnaround is made of, vehicle by vehicle: after it, the history itself is made in a moment. */
function* goThroughThePast(context: DeskContext): Generator<void> {
  const shop = context.shop();
  yield* overAll(context, (_id, vehicle) => context.forecasts.warm(vehicle, shop));
  const wasAwaited = context.isForecastToCome();
  context.notePastIsRead();
  if (wasAwaited) context.deps.emit('lot:past-read', {});
}

function* addForecasts(context: DeskContext): Generator<void> {
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
  yield* overAll(context, forecastOne);
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
    if (!context.rights().seesForecast) return;
    yield* goThroughThePast(context);
    yield* addForecasts(context);
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
