// The report of a fault: versions and counts, and nothing that is somebody's.
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { openTestDesk, type TestDesk, takeInOf } from '../helpers/open-test-desk.ts';

let desk: TestDesk;
beforeEach(async () => {
  desk = await openTestDesk();
});
afterEach(() => desk.discard());

describe('a report of a fault', () => {
  it('has versions, system, screens, counts and the last lines of the log', async () => {
    await desk.ask('vehicle:take-in', takeInOf('LW-77', '1M8GDM9A3KP000009'));
    const { text } = await desk.ask('program:report', {});
    for (const part of [
      'Lotwright 0.0.0',
      'Runtime 1',
      'System 2',
      '1280 × 800 at 1',
      'Vehicles: 1',
      'line of the log',
    ])
      expect(text).toContain(part);
    expect(text).toContain('Files that could not be read: 0');
  });

  it('has no fact of any vehicle, no person and no folder in it', async () => {
    const { view } = await desk.ask('vehicle:take-in', takeInOf('LW-77', '1M8GDM9A3KP000009'));
    const { text } = await desk.ask('program:report', {});
    const { identity, purchase, id } = view.vehicle;
    expect(purchase.priceCents).not.toBeNull();
    for (const secret of [identity.vin, identity.stockNumber, id, desk.folder, 'tester', 'desk-one'])
      if (secret !== null && secret !== '') expect(text).not.toContain(secret);
    expect(text).not.toContain(String(purchase.priceCents));
  });
});

describe('the licences', () => {
  it('name what the program is made of', async () => {
    const { packages } = await desk.ask('program:read', {});
    expect(packages.map(({ name }) => name)).toEqual(['some-package']);
  });
});
