// Sharing the vehicles of Next jobs out among technicians: whoever is free first takes the next.
import { describe, expect, it } from 'vitest';
import { shareOut } from '../../../app/domain/time/share-out.ts';
import { makeVehicle } from '../../helpers/vehicle-maker.ts';

const order = [60, 30, 45].map((minutesLeft, at) => ({
  vehicle: makeVehicle('2026-03-02', { id: `v${at}` }),
  minutesLeft,
  lossCentsPerDay: 100,
}));
const person = (id: string, role: 'technician' | 'manager', isActive = true) => ({
  id,
  name: id.toUpperCase(),
  role,
  labourCentsPerHour: null,
  isActive,
});

describe('sharing out', () => {
  it('gives the next vehicle to the technician who is free first', () => {
    const shares = shareOut(order, [
      person('boss', 'manager'),
      person('ann', 'technician'),
      person('bob', 'technician'),
    ]);
    expect([...shares]).toEqual([
      ['v0', { name: 'ANN', startsInMinutes: 0 }],
      ['v1', { name: 'BOB', startsInMinutes: 0 }],
      ['v2', { name: 'BOB', startsInMinutes: 30 }],
    ]);
  });

  it('says nothing where one technician is alone', () => {
    const people = [person('boss', 'manager'), person('ann', 'technician'), person('bob', 'technician', false)];
    expect(shareOut(order, people).size).toBe(0);
  });
});
