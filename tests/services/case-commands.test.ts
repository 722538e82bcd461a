// The shop's own notebook as it is asked: earlier vehicles only, and amounts only for who sees money.
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { VehicleChange } from '../../app/domain/vehicle/change.ts';
import { openTestDesk, type TestDesk, takeInOf, testPeople } from '../helpers/open-test-desk.ts';
import { makeDecision, makeFault, makePart } from '../helpers/vehicle-maker.ts';

let desk: TestDesk;
let earlierId: string;
let atHandId: string;

async function put(id: string, revision: number, change: VehicleChange): Promise<number> {
  return (await desk.ask('vehicle:change', { id, baseRevision: revision, change })).view.revision;
}

beforeEach(async () => {
  desk = await openTestDesk();
  const shop = await desk.ask('shop:read', {});
  await desk.ask('shop:change', { baseRevision: shop.revision, change: { part: 'people', value: [...testPeople] } });
  const earlier = await desk.ask('vehicle:take-in', takeInOf('LW-1001', '1M8GDM9A3KP000009'));
  const atHand = await desk.ask('vehicle:take-in', takeInOf('LW-1002', '1M8GDM9A4KP000004'));
  earlierId = earlier.view.vehicle.id;
  atHandId = atHand.view.vehicle.id;
  const { entered: _byWhom, ...fault } = makeFault('2026-03-06', {
    module: 'Body control module',
    codes: ['U0140'],
    decision: makeDecision('2026-03-07', { kind: 'replace' }),
    doneOn: '2026-03-10',
  });
  const { entered: _when, ...part } = makePart('2026-03-07', {
    faultId: fault.id,
    priceCents: 18_077,
    orderedOn: '2026-03-07',
    receivedOn: '2026-03-09',
    fittedOn: '2026-03-10',
  });
  const revision = await put(earlierId, earlier.view.revision, { kind: 'put', list: 'faults', item: fault });
  await put(earlierId, revision, { kind: 'put', list: 'parts', item: part });
});
afterEach(() => desk.discard());

const query = () => ({ module: 'Body', codes: ['U0140-00'], exceptVehicleId: atHandId });

describe('the notebook', () => {
  it('finds the earlier vehicle with what fixed it, how long it took and what it came to', async () => {
    const found = await desk.ask('cases:find', query());
    expect(found).toMatchObject({ match: 'both', count: 1, leftAsTheyWere: 0 });
    expect(found.fixes).toEqual([{ fix: 'body module', count: 1, medianCents: 18_077, medianDays: 4 }]);
    expect(found.cases).toMatchObject([{ vehicleId: earlierId, stockNumber: 'LW-1001', totalCents: 18_077 }]);
  });

  it('tells a technician everything but the amounts', async () => {
    await desk.ask('desk:set-person', { personId: 'tech-one' });
    const found = await desk.ask('cases:find', query());
    expect(found.fixes).toEqual([{ fix: 'body module', count: 1, medianCents: null, medianDays: 4 }]);
    expect(JSON.stringify(found)).not.toContain('18077');
  });

  it('does not answer sales', async () => {
    await desk.ask('desk:set-person', { personId: 'sales-one' });
    expect((await desk.refused('cases:find', query())).code).toBe('not-allowed');
  });

  it('does not count the vehicle at hand, and says so when there is nothing', async () => {
    const own = await desk.ask('cases:find', { ...query(), exceptVehicleId: earlierId });
    expect(own).toMatchObject({ match: null, count: 0, fixes: [], cases: [] });
    const other = await desk.ask('cases:find', { ...query(), module: '', codes: ['P0301'] });
    expect(other.match).toBeNull();
  });
});
