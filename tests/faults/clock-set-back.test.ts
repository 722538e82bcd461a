// The computer's clock is set back while a fleet is kept, by hours or by years: nothing is lost, taken over too early or removed.
import { utimes, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { fleetOf, openForTest, testClock, unwrapped } from '../storage/fleet-fixture.ts';
import { aVehicle } from '../storage/fleet-records-fixture.ts';
import { byAda } from '../storage/telling-fixture.ts';

const yearsBack = '2019-01-01T08:00:00.000Z';

describe('a clock that was set back', () => {
  it('takes no save away: the revision tells what is newer, not the time', async () => {
    const folder = await fleetOf(['abcd']);
    const clock = testClock('2026-03-04T12:00:00.000Z');
    const store = await openForTest(folder, { clock });
    unwrapped(await store.saveVehicle(aVehicle('abcd', 'K2'), 1, byAda));
    clock.moveTo(yearsBack);
    const saved = unwrapped(await store.saveVehicle(aVehicle('abcd', 'K3'), 2, byAda));
    expect(saved.revision).toBe(3);
    expect(saved.savedAt < '2020').toBe(true);
    expect(await store.saveVehicle(aVehicle('abcd', 'K2'), 2, byAda)).toMatchObject({
      error: { code: 'stale-revision' },
    });
    await store.close();
    const again = await openForTest(folder, { clock });
    expect(again.troubles()).toEqual([]);
    expect(again.vehicles().get('abcd')?.data).toEqual(aVehicle('abcd', 'K3'));
  });

  it('leaves the history in the order in which things were done, each with the time the clock said', async () => {
    const folder = await fleetOf(['abcd']);
    const clock = testClock('2026-03-04T12:00:00.000Z');
    const store = await openForTest(folder, { clock });
    unwrapped(await store.saveVehicle(aVehicle('abcd', 'K2'), 1, byAda));
    clock.moveTo(yearsBack);
    unwrapped(await store.saveVehicle(aVehicle('abcd', 'K3'), 2, byAda));
    const { lines, faults } = unwrapped(await store.readHistory('abcd', null, 10));
    expect(faults).toEqual([]);
    expect(lines.map(({ revision, wasSaved }) => [revision, wasSaved])).toEqual([
      [3, true],
      [2, true],
      [1, true],
    ]);
    expect(lines.map(({ at }) => at.slice(0, 4))).toEqual(['2019', '2026', '2026']);
  });

  it('makes the backup of its day and removes none that is dated later', async () => {
    const folder = await fleetOf(['abcd']);
    const before = await openForTest(folder, { clock: testClock('2026-03-05T08:00:00.000Z') });
    await before.dailyBackup;
    const later = unwrapped(await before.listBackups()).map(({ id }) => id);
    expect(later).toHaveLength(2);
    await before.close();
    const store = await openForTest(folder, { clock: testClock(yearsBack) });
    expect(unwrapped(await store.dailyBackup)?.id).toContain('2019-01-01');
    const ids = unwrapped(await store.listBackups()).map(({ id }) => id);
    for (const id of later) expect(ids).toContain(id);
    expect(ids).toHaveLength(3);
  });

  it('neither lets another desk in too early nor keeps it out for ever: ages are the drive’s own', async () => {
    const folder = await fleetOf(['abcd']);
    const path = join(folder, 'in-use.json');
    const note = {
      format: 'lotwright-in-use',
      version: 1,
      user: 'ben',
      host: 'desk-2',
      processId: 4242,
      since: '2026-03-04T07:00:00.000Z',
      refreshedAt: '2026-03-04T07:00:00.000Z',
      token: 'another desk',
    };
    await writeFile(path, JSON.stringify(note));
    // Years later by this desk's clock, but heard of just now by the drive's.
    const ahead = await openForTest(folder, { clock: testClock('2040-01-01T08:00:00.000Z') });
    expect(ahead.isReadOnly).toMatchObject({ kind: 'open-elsewhere', canTakeOver: false });
    // Before it was written by this desk's clock, but silent for eleven minutes by the drive's.
    const silentSince = new Date(Date.now() - 11 * 60_000);
    await utimes(path, silentSince, silentSince);
    const behind = await openForTest(folder, { clock: testClock(yearsBack) });
    expect(behind.isReadOnly).toMatchObject({ kind: 'open-elsewhere', canTakeOver: true });
  });
});
