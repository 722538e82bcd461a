// What changed on a vehicle, as each role may read it: who, when, from which value to which; undoing and redoing are told as well.
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { VehicleChange } from '../../app/domain/vehicle/change.ts';
import { openTestDesk, type TestDesk, takeInOf, testPeople } from '../helpers/open-test-desk.ts';

let desk: TestDesk;
let id: string;

beforeEach(async () => {
  desk = await openTestDesk();
  const shop = await desk.ask('shop:read', {});
  await desk.ask('shop:change', { baseRevision: shop.revision, change: { part: 'people', value: testPeople } });
  await desk.ask('desk:set-person', { personId: 'manager' });
  const taken = await desk.ask('vehicle:take-in', takeInOf('H-7', '1M8GDM9A3KP000009'));
  id = taken.view.vehicle.id;
});

afterEach(() => desk.discard());

async function change(wanted: VehicleChange): Promise<void> {
  const { revision } = await desk.ask('vehicle:open', { id });
  await desk.ask('vehicle:change', { id, baseRevision: revision, change: wanted });
}

async function told() {
  return (await desk.ask('vehicle:history', { id, place: null })).lines;
}

async function askMore(): Promise<void> {
  const { vehicle } = await desk.ask('vehicle:open', { id });
  await change({ kind: 'set', section: 'targets', value: { ...vehicle.targets, askingCents: 1_234_500 } });
}

describe('what changed', () => {
  it('says who, when, and from which value to which, the newest first', async () => {
    const { vehicle } = await desk.ask('vehicle:open', { id });
    await change({ kind: 'set', section: 'identity', value: { ...vehicle.identity, keyTag: 'Peg 9' } });
    const [newest, first] = await told();
    expect(newest).toMatchObject({ what: 'Vehicle details changed', wasSaved: true });
    expect(newest?.at).toMatch(/^2026-03-18T09:/);
    expect(newest?.by).toBe(testPeople.find((person) => person.id === 'manager')?.name);
    expect(newest?.changes).toEqual([
      { what: 'Vehicle details: key tag', from: vehicle.identity.keyTag || 'nothing', to: 'Peg 9' },
    ]);
    expect(first).toMatchObject({ what: 'Taken in', changes: [] });
  });

  it('tells of undoing and doing again as acts of their own', async () => {
    await askMore();
    await desk.ask('edit:undo', {});
    await desk.ask('edit:redo', {});
    const lines = await told();
    expect(lines.map((line) => line.what)).toEqual([
      'Done again: targets changed',
      'Taken back: targets changed',
      'Targets changed',
      'Taken in',
    ]);
    expect(lines[0]?.changes).toEqual(lines[2]?.changes);
    expect(lines[1]?.changes[0]).toEqual({ what: 'Targets: asking', from: '12,345.00', to: '10,995.00' });
  });

  it('tells of a withdrawal and of taking it back', async () => {
    const { revision } = await desk.ask('vehicle:open', { id });
    await desk.ask('vehicle:withdraw', { id, baseRevision: revision });
    expect((await desk.refused('vehicle:history', { id, place: null })).code).toBe('not-found');
    await desk.ask('edit:undo', {});
    expect((await told()).map((line) => [line.what, line.wasSaved])).toEqual([
      ['Taken back: withdrawn', true],
      ['Withdrawn from the lot', true],
      ['Taken in', true],
    ]);
  });

  it('comes in pages until all was told', async () => {
    const { vehicle } = await desk.ask('vehicle:open', { id });
    for (let count = 0; count < 34; count++)
      await change({ kind: 'set', section: 'identity', value: { ...vehicle.identity, keyTag: `Peg ${count}` } });
    const newest = await desk.ask('vehicle:history', { id, place: null });
    expect(newest.lines).toHaveLength(30);
    const older = await desk.ask('vehicle:history', { id, place: newest.older });
    expect([older.lines.length, older.older, older.lines.at(-1)?.what]).toEqual([5, null, 'Taken in']);
  });
});

describe('by role', () => {
  it('the technician reads no money, not even that an amount was changed; sales reads no history', async () => {
    await askMore();
    const { vehicle } = await desk.ask('vehicle:open', { id });
    const { purchase } = vehicle;
    await change({ kind: 'set', section: 'purchase', value: { ...purchase, priceCents: 777_700 } });
    await change({ kind: 'set', section: 'purchase', value: { ...purchase, priceCents: 888_800, keysReceived: 2 } });
    expect(JSON.stringify(await told())).toContain('8,888.00');
    await desk.ask('desk:set-person', { personId: 'tech-one' });
    const lines = await told();
    expect(lines.map((line) => line.what)).toEqual(['Purchase changed', 'Taken in']);
    expect(lines[0]?.changes.map((each) => each.what)).toEqual(['Purchase: keys received']);
    for (const hidden of ['7,777', '8,888', '12,345', 'price', 'asking'])
      expect(JSON.stringify(lines)).not.toContain(hidden);
    await desk.ask('desk:set-person', { personId: 'sales-one' });
    expect((await desk.refused('vehicle:history', { id, place: null })).code).toBe('not-allowed');
  });
});
