// The rows of the lot, kept up to date in place, and how the person looks at them. Survives going to another screen and back.
import type { LotRow } from '../../app/contract/views.ts';
import { ask, on } from '../bridge.ts';
import { errorSentence } from '../text/errors.ts';
import { withRow, withRows } from './rows-in-place.ts';
import { createStore } from './store.ts';

export type Lot = {
  readonly state: 'reading' | 'here' | 'failed';
  /** Why it could not be read; empty otherwise. */
  readonly trouble: string;
  readonly rows: readonly LotRow[];
  /** How many sold vehicles are still being read. */
  readonly toCome: number;
};

export const lotStore = createStore<Lot>({ state: 'reading', trouble: '', rows: [], toCome: 0 });

type Forecasted = Pick<LotRow, 'id' | 'forecast'>;

/** What changed while the lot was being read is laid over what was read. */
let changedMeanwhile: { id: string; row: LotRow | null }[] | null = null;
let forecastsMeanwhile: readonly Forecasted[] = [];
let addedMeanwhile: readonly LotRow[] = [];
let latestReading = 0;

function withForecasts(rows: readonly LotRow[], forecasts: readonly Forecasted[]): readonly LotRow[] {
  if (forecasts.length === 0) return rows;
  const byId = new Map(forecasts.map(({ id, forecast }) => [id, forecast]));
  return rows.map((row) => {
    const forecast = byId.get(row.id);
    return forecast === undefined ? row : { ...row, forecast };
  });
}

export async function readLot(): Promise<void> {
  latestReading += 1;
  const reading = latestReading;
  changedMeanwhile = [];
  forecastsMeanwhile = [];
  addedMeanwhile = [];
  // How many are still to come is told anew, before the answer.
  lotStore.update((lot) => ({ ...lot, toCome: 0 }));
  const answer = await ask('lot:read', {});
  if (reading !== latestReading) return;
  const changes = changedMeanwhile ?? [];
  changedMeanwhile = null;
  if (!answer.ok) {
    lotStore.update((lot) => ({ ...lot, state: 'failed', trouble: errorSentence(answer.error) }));
    return;
  }
  const withOld = withForecasts(withRows(answer.value, addedMeanwhile), forecastsMeanwhile);
  const rows = changes.reduce<readonly LotRow[]>((all, { id, row }) => withRow(all, id, row), withOld);
  lotStore.update(({ toCome }) => ({ state: 'here', trouble: '', rows, toCome }));
}

/** Keeps the rows up to date from now on. */
export function followLot(): () => void {
  const stops = [
    on('lot:row-changed', ({ id, row }) => {
      changedMeanwhile?.push({ id, row });
      lotStore.update((lot) => ({ ...lot, rows: withRow(lot.rows, id, row) }));
    }),
    on('lot:rows-added', ({ rows, toCome }) => {
      if (changedMeanwhile !== null) addedMeanwhile = [...addedMeanwhile, ...rows];
      lotStore.update((lot) => ({ ...lot, rows: withRows(lot.rows, rows), toCome }));
    }),
    on('lot:forecasts', ({ forecasts }) => {
      if (changedMeanwhile !== null) forecastsMeanwhile = [...forecastsMeanwhile, ...forecasts];
      lotStore.update((lot) => ({ ...lot, rows: withForecasts(lot.rows, forecasts) }));
    }),
    on('lot:all-changed', () => void readLot()),
  ];
  return () => {
    for (const stop of stops) stop();
  };
}

/** True from when somebody asked for the search until the screen has given it the focus. */
export const searchAskedStore = createStore(false);

export function askForSearch(): void {
  searchAskedStore.set(true);
}
