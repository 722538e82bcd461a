// The lot of a long ledger: what is in stock goes out first, sold vehicles follow in batches, and nothing answers from half a fleet.
import { readdir, readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { afterEach, expect, it, vi } from 'vitest';
import { openTestDesk, type TestDesk, takeInOf } from '../helpers/open-test-desk.ts';

const soldCount = 205;
let desk: TestDesk;
afterEach(() => desk.discard());

async function longLedger(): Promise<TestDesk> {
  const first = await openTestDesk();
  await first.ask('vehicle:take-in', takeInOf('LW-1001', '1M8GDM9A3KP000009'));
  await first.session.close();
  const vehicles = join(first.folder, 'fleet', 'vehicles');
  const [name = ''] = await readdir(vehicles);
  const record = JSON.parse(await readFile(join(vehicles, name), 'utf8'));
  for (let index = 0; index < soldCount; index += 1) {
    const id = `sold-${String(index).padStart(4, '0')}`;
    const identity = { ...record.data.identity, stockNumber: `S-${index}` };
    const sale = {
      ...record.data,
      id,
      identity,
      sale: { soldOn: '2026-03-10', priceCents: 900_000, buyer: '', paidOffOn: null },
    };
    await writeFile(join(vehicles, `${id}.json`), `${JSON.stringify({ ...record, data: sale }, null, 2)}\n`);
  }
  return openTestDesk(first.folder);
}

async function idInStock({ folder }: TestDesk): Promise<string> {
  const names = await readdir(join(folder, 'fleet', 'vehicles'));
  return (names.find((name) => !name.startsWith('sold-')) ?? '').replace('.json', '');
}

function added(of: TestDesk): { rows: { id: string }[]; toCome: number }[] {
  return of.emitted
    .filter(({ name }) => name === 'lot:rows-added')
    .map(({ payload }) => payload as { rows: { id: string }[]; toCome: number });
}

it('sends what is in stock at once and the sold vehicles after it, each once', async () => {
  desk = await longLedger();
  const rows = await desk.ask('lot:read', {});
  expect(rows.map((row) => row.identity.stockNumber)).toEqual(['LW-1001']);
  expect(added(desk)).toEqual([{ rows: [], toCome: soldCount }]);
  await vi.waitFor(() => expect(added(desk).at(-1)?.toCome).toBe(0));
  const ids = added(desk).flatMap((one) => one.rows.map(({ id }) => id));
  expect(ids).toHaveLength(soldCount);
  expect(new Set(ids).size).toBe(soldCount);
  expect(await desk.ask('lot:read', {})).toHaveLength(soldCount + 1);
});

it('refuses a stock number that a sold vehicle has, though it is not read yet when asked', async () => {
  desk = await longLedger();
  // Asked in the same breath as the lot, before any sold vehicle has been read.
  const [, taken] = await Promise.all([
    desk.ask('lot:read', {}),
    desk.refused('vehicle:take-in', takeInOf('S-204', '1M8GDM9AXKP042788')),
  ]);
  expect(taken.problems.map(({ field }) => field).join()).toContain('stockNumber');
});

it('opens and changes a vehicle in stock while the sold ones are still unread, and forecasts it when they are read', async () => {
  desk = await longLedger();
  const id = await idInStock(desk);
  // Nobody has asked for the lot, so not one sold vehicle has been read.
  const early = await desk.ask('vehicle:open', { id });
  expect(early).toMatchObject({ isForecastToCome: true, forecast: null, prospect: null });
  const note = {
    kind: 'put' as const,
    list: 'notes' as const,
    item: { id: 'note-0001', on: early.today, text: 'Seen.' },
  };
  const saved = await desk.ask('vehicle:change', { id, baseRevision: early.revision, change: note });
  expect(saved.view.vehicle.notes).toHaveLength(1);
  expect(added(desk)).toEqual([]);
  await desk.ask('lot:read', {});
  await vi.waitFor(() => expect(desk.emitted.some(({ name }) => name === 'lot:past-read')).toBe(true));
  const late = await desk.ask('vehicle:open', { id });
  expect(late.isForecastToCome).toBe(false);
  expect(late.forecast).not.toBeNull();
  expect(
    JSON.parse(await readFile(join(desk.folder, 'fleet', 'vehicles', `${id}.json`), 'utf8')).data.notes,
  ).toHaveLength(1);
  await desk.ask('edit:undo', {});
  expect((await desk.ask('vehicle:open', { id })).vehicle.notes).toEqual([]);
});

it('looks among the sold ones before an identity is changed, though they are not read yet', async () => {
  desk = await longLedger();
  const id = await idInStock(desk);
  const { vehicle, revision } = await desk.ask('vehicle:open', { id });
  const value = { ...vehicle.identity, stockNumber: 'S-204' };
  const change = { kind: 'set' as const, section: 'identity' as const, value };
  const [, refused] = await Promise.all([
    desk.ask('lot:read', {}),
    desk.refused('vehicle:change', { id, baseRevision: revision, change }),
  ]);
  expect(refused.problems.map(({ field }) => field).join()).toContain('stockNumber');
});
