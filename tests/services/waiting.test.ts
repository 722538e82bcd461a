// What is owed from outside, on a real folder: who sees which of it, and the same as a file.
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, it } from 'vitest';
import { defaultShop } from '../../app/services/default-shop.ts';
import { openTestDesk, type TestDesk, takeInOf, testPeople } from '../helpers/open-test-desk.ts';
import { makePart } from '../helpers/vehicle-maker.ts';

let desk: TestDesk;

beforeEach(async () => {
  desk = await openTestDesk();
  const change = async (part: object) => {
    const { revision } = await desk.ask('shop:read', {});
    await desk.ask('shop:change', { baseRevision: revision, change: part as never });
  };
  await change({ part: 'people', value: [...testPeople] });
  await change({ part: 'rates', value: { ...defaultShop.rates, fundingRatePpm: 0, overheadCentsPerDay: 47_11 } });
  const { view } = await desk.ask('vehicle:take-in', takeInOf('LW-1001', '1M8GDM9A3KP000009'));
  const { entered: _stamp, ...item } = makePart('2026-03-09', { orderedOn: '2026-03-10', what: 'Window motor' });
  await desk.ask('vehicle:change', {
    id: view.vehicle.id,
    baseRevision: view.revision,
    change: { kind: 'put', list: 'parts', item },
  });
});
afterEach(() => desk.discard());

it('tells the manager what another day costs', async () => {
  const { lines, dayCents } = await desk.ask('waiting:read', {});
  expect(lines[0]).toMatchObject({ what: 'Window motor', waitedDays: 8, dayCents: 47_11 });
  expect(dayCents).toBe(47_11);
});

it('tells the technician the days, and no money', async () => {
  await desk.ask('desk:set-person', { personId: 'tech-one' });
  const view = await desk.ask('waiting:read', {});
  expect(view).toMatchObject({ vehicles: 1, dayCents: null, sharedCents: null });
  expect(view.lines[0]).toMatchObject({ what: 'Window motor', waitedDays: 8, dayCents: null, shareCents: null });
  const { fileName } = await desk.ask('waiting:export', {});
  const written = await readFile(join(desk.folder, 'fleet', 'exports', fileName), 'utf8');
  expect(written).toContain('Window motor');
  expect(JSON.stringify(view) + written).not.toMatch(/4711|47\.11|Another day/);
});

it('tells sales nothing', async () => {
  await desk.ask('desk:set-person', { personId: 'sales-one' });
  expect((await desk.refused('waiting:read', {})).code).toBe('not-allowed');
  expect((await desk.refused('waiting:export', {})).code).toBe('not-allowed');
});
