// Forecasts over a fleet: worked out after the rows went out, kept until something changes, and tried out without keeping anything.

import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import type { VehicleChange } from '../../app/domain/vehicle/change.ts';
import { noTargets } from '../../app/domain/vehicle/purchase.ts';
import { ForecastCache } from '../../app/services/forecast-cache.ts';
import { openTestDesk, type TestDesk, takeInOf, testToday } from '../helpers/open-test-desk.ts';
import { makePart, makeScan, makeShop, makeVehicle } from '../helpers/vehicle-maker.ts';

const shop = makeShop();

describe('kept forecasts', () => {
  const vehicle = makeVehicle('2026-03-02', { id: 'one', scans: [makeScan('2026-03-04')] });

  it('are made once for a record, and again for another record, day or setting', () => {
    const vehicles = vi.fn(() => [vehicle]);
    const cache = new ForecastCache(vehicles);
    expect(cache.known(vehicle, shop, testToday)).toBeUndefined();
    const first = cache.forecast(vehicle, shop, testToday);
    expect(cache.forecast(vehicle, shop, testToday)).toBe(first);
    expect(cache.known({ ...vehicle }, shop, testToday)).toBeUndefined();
    expect(cache.known(vehicle, shop, '2026-03-19')).toBeUndefined();
    const slower = { ...shop, turnaround: { ...shop.turnaround, days: { ...shop.turnaround.days, verify: 60 } } };
    expect(cache.known(vehicle, slower, testToday)).toBeUndefined();
    expect(cache.forecast(vehicle, slower, testToday)?.likelyOn).not.toBe(first?.likelyOn);
    expect(vehicles).toHaveBeenCalledTimes(2);
  });

  it('are the same each time for the same vehicle', () => {
    const again = () => new ForecastCache(() => [vehicle]).forecast(vehicle, shop, testToday);
    expect(again()).toEqual(again());
  });

  it('keep their history through work of today, and make it anew for a correction of the past', () => {
    const vehicles = vi.fn(() => [vehicle]);
    const cache = new ForecastCache(vehicles);
    cache.history(shop, testToday);
    const part = makePart('2026-03-05', { orderedOn: '2026-03-06' });
    const ordered = { ...vehicle, parts: [part] };
    cache.noteChange('one', { ...vehicle, parts: [part] });
    cache.noteChange('one', { ...ordered, parts: [{ ...part, receivedOn: testToday }] });
    const before = vehicles.mock.calls.length;
    cache.history(shop, testToday);
    cache.noteChange('one', { ...ordered, parts: [{ ...part, receivedOn: '2026-03-09' }] });
    cache.history(shop, testToday);
    expect(vehicles.mock.calls.length).toBeGreaterThan(before);
  });

  it('are none for what is sold', () => {
    const sold = { ...vehicle, sale: { soldOn: '2026-03-10', priceCents: 1, buyer: '', paidOffOn: null } };
    expect(new ForecastCache(() => []).forecast(sold, shop, testToday)).toBeNull();
  });
});

let desk: TestDesk;
let id: string;
let revision: number;
beforeEach(async () => {
  desk = await openTestDesk();
  const taken = await desk.ask('vehicle:take-in', takeInOf('LW-1001', '1M8GDM9A3KP000009'));
  id = taken.view.vehicle.id;
  revision = taken.view.revision;
});
afterEach(() => desk.discard());

describe('the lot', () => {
  it('goes out without waiting, and its forecasts follow', async () => {
    const reopened = await desk.reopen();
    const [row] = await reopened.ask('lot:read', {});
    expect(row?.forecast).toBeNull();
    await vi.waitFor(() => expect(reopened.emitted.some(({ name }) => name === 'lot:forecasts')).toBe(true));
    const told = reopened.emitted.find(({ name }) => name === 'lot:forecasts')?.payload;
    const [known] = await reopened.ask('lot:read', {});
    expect(told).toEqual({ forecasts: [{ id, forecast: known?.forecast }] });
    expect(known?.forecast).not.toBeNull();
    desk = reopened;
  });
});

describe('trying out', () => {
  const asking = (askingCents: number): VehicleChange => ({
    kind: 'set',
    section: 'targets',
    value: { ...noTargets, askingCents },
  });

  it('moves margin and date, and keeps nothing', async () => {
    const before = await desk.ask('vehicle:open', { id });
    const paper: VehicleChange = {
      kind: 'set',
      section: 'purchase',
      value: { ...before.vehicle.purchase, paperExpectedOn: '2026-09-01' },
    };
    const tried = await desk.ask('vehicle:what-if', { id, changes: [asking(1_199_500), paper] });
    const { costs } = before;
    if (costs?.marginExpectedCents == null) throw new Error('The test vehicle has a price.');
    expect(tried.costs?.marginExpectedCents).toBe(costs.marginExpectedCents + 100_000);
    expect(tried.forecast?.likelyOn).toBe('2026-09-01');
    expect(tried.prospect?.readyOn).toBe('2026-09-01');
    const after = await desk.ask('vehicle:open', { id });
    expect(after).toEqual(before);
    expect(after.revision).toBe(revision);
  });

  it('says what stands against a change, like keeping it would', async () => {
    const arrival: VehicleChange = {
      kind: 'set',
      section: 'arrival',
      value: { expectedOn: null, arrivedOn: '2030-01-01' },
    };
    const error = await desk.refused('vehicle:what-if', { id, changes: [arrival] });
    expect(error.code).toBe('refused');
    expect(error.problems[0]?.field).toBe('arrivedOn');
  });
});
