// Damaged, foreign, newer, doubled and missing files: the rest of the fleet opens, nothing is lost, and the way back is offered.
import { mkdir, readdir, rename, rm, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { recordBytes } from '../../app/storage/record-file.ts';
import { recordKinds } from '../../app/storage/record-kind.ts';
import { fleetOf, openForTest, testClock, textOf, unwrapped } from './fleet-fixture.ts';
import { aShop, aVehicle } from './fleet-records-fixture.ts';
import { byAda } from './telling-fixture.ts';

function vehicleText(id: string, keyTag: string, revision: number, savedAt = '2026-03-01T10:00:00.000Z'): Buffer {
  return unwrapped(recordBytes(recordKinds.vehicle, { data: aVehicle(id, keyTag), revision, savedAt })).bytes;
}

describe('a damaged vehicle', () => {
  it('is put aside unchanged with its reason, the others open, and the last good copy is offered', async () => {
    const folder = await fleetOf(['abcd', 'efgh']);
    const torn = (await textOf(folder, 'vehicles/abcd.json')).slice(0, 500);
    await writeFile(join(folder, 'vehicles', 'abcd.json'), torn);
    const store = await openForTest(folder);
    expect([...store.vehicles().keys()]).toEqual(['efgh']);
    const [trouble] = store.troubles();
    expect(trouble).toMatchObject({
      fileName: 'vehicles/abcd.json',
      kind: 'truncated',
      vehicleId: 'abcd',
      lastGoodCopy: { backupId: expect.stringMatching(/-daily$/), revision: 1 },
    });
    expect(await textOf(folder, trouble?.quarantinedAs ?? '')).toBe(torn);
    const reason = await textOf(folder, `${trouble?.quarantinedAs}.reason.txt`);
    expect(reason).toContain('vehicles/abcd.json');
    expect(reason).toContain('cut off');
    expect(await readdir(join(folder, 'vehicles'))).toEqual(['efgh.json']);
  });

  it('is offered again at the next start, until it is restored; the damaged file stays', async () => {
    const folder = await fleetOf(['abcd', 'efgh']);
    await writeFile(join(folder, 'vehicles', 'abcd.json'), '');
    await (await openForTest(folder)).close();
    const store = await openForTest(folder, { clock: testClock('2026-03-05T10:00:00.000Z') });
    unwrapped(await store.dailyBackup);
    const [trouble] = store.troubles();
    expect(trouble).toMatchObject({ kind: 'empty', vehicleId: 'abcd', lastGoodCopy: { revision: 1 } });
    unwrapped(await store.restoreLastGood(trouble?.id ?? '', byAda));
    expect(store.vehicles().get('abcd')).toMatchObject({ data: aVehicle('abcd'), revision: 2 });
    expect(store.troubles()).toEqual([]);
    await store.close();
    const again = await openForTest(folder);
    expect(again.troubles()).toEqual([]);
    expect(again.vehicles().get('abcd')?.revision).toBe(2);
    expect(await textOf(folder, trouble?.quarantinedAs ?? '')).toBe('');
  });

  it('can be settled by a person who wants nothing done', async () => {
    const folder = await fleetOf(['abcd', 'efgh']);
    await writeFile(join(folder, 'vehicles', 'abcd.json'), '{]');
    const store = await openForTest(folder);
    unwrapped(await store.settleTrouble(store.troubles()[0]?.id ?? ''));
    expect(store.troubles()).toEqual([]);
    await store.close();
    expect((await openForTest(folder)).troubles()).toEqual([]);
    expect((await readdir(join(folder, 'quarantine'))).filter((name) => name.endsWith('.json'))).toHaveLength(1);
  });

  it('never takes the place of an earlier damaged file of the same name', async () => {
    const folder = await fleetOf(['abcd']);
    const frozen = () => '2026-03-06T10:00:00.000Z';
    for (const text of ['first', 'second', 'third']) {
      await writeFile(join(folder, 'vehicles', 'abcd.json'), text);
      await (await openForTest(folder, { clock: frozen })).close();
    }
    const names = (await readdir(join(folder, 'quarantine'))).filter((name) => name.endsWith('.json'));
    const texts = await Promise.all(names.map((name) => textOf(folder, `quarantine/${name}`)));
    expect(texts.sort()).toEqual(['first', 'second', 'third']);
  });

  it('has no good copy to offer when no backup holds one', async () => {
    const folder = await fleetOf(['efgh']);
    await writeFile(join(folder, 'vehicles', 'abcd.json'), Buffer.alloc(64));
    const store = await openForTest(folder);
    expect(store.troubles()).toMatchObject([{ kind: 'zero-filled', lastGoodCopy: null }]);
    expect(await store.restoreLastGood(store.troubles()[0]?.id ?? '', byAda)).toMatchObject({
      error: { code: 'not-found' },
    });
  });

  it('is offered from an older backup when the newest copy is damaged too', async () => {
    const folder = await fleetOf(['abcd']);
    const changed = await openForTest(folder, { clock: testClock('2026-03-05T10:00:00.000Z') });
    unwrapped(await changed.saveVehicle(aVehicle('abcd', 'K2'), 1, byAda));
    const { id } = unwrapped(await changed.backUp('by-hand'));
    await changed.close();
    await writeFile(join(folder, 'backups', id, 'vehicles', 'abcd.json'), vehicleText('abcd', 'forged', 9));
    await writeFile(join(folder, 'vehicles', 'abcd.json'), 'torn');
    const store = await openForTest(folder, { clock: testClock('2026-03-05T12:00:00.000Z') });
    const copy = store.troubles()[0]?.lastGoodCopy;
    expect(copy?.backupId).not.toBe(id);
    expect(copy).toMatchObject({ revision: 1 });
  });
});

describe('files that are none of ours or in the wrong place', () => {
  it('puts a foreign file aside and offers nothing for it', async () => {
    const folder = await fleetOf(['abcd']);
    await writeFile(join(folder, 'vehicles', 'Price list.json'), '{"rows": []}');
    const store = await openForTest(folder);
    expect(store.troubles()).toMatchObject([{ kind: 'foreign-format', vehicleId: null, lastGoodCopy: null }]);
    expect(store.vehicles().size).toBe(1);
  });

  it('uses the file named after the vehicle when there are two, and offers the other one only when it is newer', async () => {
    const folder = await fleetOf(['abcd', 'efgh']);
    await writeFile(join(folder, 'vehicles', 'abcd (copy).json'), await textOf(folder, 'vehicles/abcd.json'));
    await writeFile(join(folder, 'vehicles', 'efgh (copy).json'), vehicleText('efgh', 'newer', 8));
    const store = await openForTest(folder);
    expect(store.vehicles().size).toBe(2);
    const byId = new Map(store.troubles().map((trouble) => [trouble.vehicleId, trouble]));
    expect(byId.get('abcd')).toMatchObject({ kind: 'doubled', lastGoodCopy: null });
    expect(byId.get('efgh')).toMatchObject({ kind: 'doubled', lastGoodCopy: { backupId: null, revision: 8 } });
    unwrapped(await store.restoreLastGood(byId.get('efgh')?.id ?? '', byAda));
    expect(store.vehicles().get('efgh')).toMatchObject({ revision: 9, data: aVehicle('efgh', 'newer') });
    expect(store.troubles().map((trouble) => trouble.vehicleId)).toEqual(['abcd']);
    const { backups } = { backups: unwrapped(await store.listBackups()) };
    expect(backups.some((backup) => backup.reason === 'before-restore')).toBe(true);
  });

  it('offers the contents of a file that was renamed by hand', async () => {
    const folder = await fleetOf(['abcd']);
    await rename(join(folder, 'vehicles', 'abcd.json'), join(folder, 'vehicles', 'grey-estate.json'));
    const store = await openForTest(folder);
    expect(store.troubles()).toMatchObject([
      { kind: 'wrong-name', vehicleId: 'abcd', lastGoodCopy: { backupId: null, revision: 1 } },
    ]);
    unwrapped(await store.restoreLastGood(store.troubles()[0]?.id ?? '', byAda));
    expect(store.vehicles().get('abcd')?.data).toEqual(aVehicle('abcd'));
    expect(store.troubles()).toEqual([]);
  });

  it('leaves a folder that is named like a record where it is, and lists it', async () => {
    const folder = await fleetOf(['abcd']);
    await mkdir(join(folder, 'vehicles', 'wxyz.json'));
    const store = await openForTest(folder);
    expect(store.troubles()).toMatchObject([{ kind: 'cannot-read', quarantinedAs: null }]);
    expect(await store.saveVehicle(aVehicle('wxyz'), 0, byAda)).toMatchObject({ ok: false });
    expect(await readdir(join(folder, 'vehicles'))).toContain('wxyz.json');
  });
});

describe('a newer version', () => {
  async function withNewer(path: string): Promise<{ folder: string; text: string }> {
    const folder = await fleetOf(['abcd', 'efgh']);
    const text = (await textOf(folder, path))
      .replace('"version": 1', '"version": 2')
      .replace('"data": {', '"data": {"new": 1,');
    await writeFile(join(folder, path), text);
    return { folder, text };
  }

  it('of a vehicle stays untouched in its place, is listed, and cannot be written over', async () => {
    const { folder, text } = await withNewer('vehicles/abcd.json');
    const store = await openForTest(folder);
    expect(store.isReadOnly).toBeNull();
    expect(store.troubles()).toMatchObject([{ kind: 'newer-version', quarantinedAs: null, lastGoodCopy: null }]);
    expect(await store.saveVehicle(aVehicle('abcd'), 0, byAda)).toMatchObject({ error: { code: 'newer-version' } });
    expect(await textOf(folder, 'vehicles/abcd.json')).toBe(text);
    expect(unwrapped(await store.saveVehicle(aVehicle('efgh', 'K2'), 1, byAda)).revision).toBe(2);
  });

  it("of the shop's settings opens the fleet for reading only", async () => {
    const { folder, text } = await withNewer('shop.json');
    const store = await openForTest(folder);
    expect(store.isReadOnly).toMatchObject({ kind: 'newer-version' });
    expect(await store.saveShop(aShop(), 0)).toMatchObject({ error: { code: 'read-only' } });
    expect(store.vehicles().size).toBe(2);
    expect(await textOf(folder, 'shop.json')).toBe(text);
  });
});

describe("the shop's settings", () => {
  it('are put aside when damaged, and come back from the last good copy', async () => {
    const folder = await fleetOf(['abcd']);
    await writeFile(join(folder, 'shop.json'), '{"format":"lotwright-shop","version":1');
    const store = await openForTest(folder);
    expect([store.shop(), store.vehicles().size]).toEqual([null, 1]);
    const [trouble] = store.troubles();
    expect(trouble).toMatchObject({
      fileName: 'shop.json',
      kind: 'truncated',
      vehicleId: null,
      lastGoodCopy: { revision: 1 },
    });
    unwrapped(await store.restoreLastGood(trouble?.id ?? '', byAda));
    expect(store.shop()).toMatchObject({ data: aShop(), revision: 2 });
    expect(store.troubles()).toEqual([]);
  });
});

describe('a missing file', () => {
  it('is noticed by the last backup, told again the day after, and can be brought back', async () => {
    const folder = await fleetOf(['abcd', 'efgh']);
    await rm(join(folder, 'vehicles', 'abcd.json'));
    const first = await openForTest(folder);
    expect(first.troubles()).toMatchObject([{ kind: 'missing', vehicleId: 'abcd' }]);
    await first.close();
    const next = await openForTest(folder, { clock: testClock('2026-03-05T10:00:00.000Z') });
    unwrapped(await next.dailyBackup);
    await next.close();
    const later = await openForTest(folder, { clock: testClock('2026-03-05T11:00:00.000Z') });
    expect(later.troubles()).toMatchObject([{ kind: 'missing', vehicleId: 'abcd', lastGoodCopy: { revision: 1 } }]);
    unwrapped(await later.restoreLastGood(later.troubles()[0]?.id ?? '', byAda));
    expect(later.vehicles().get('abcd')?.data).toEqual(aVehicle('abcd'));
    expect(later.troubles()).toEqual([]);
  });

  it('can be settled', async () => {
    const folder = await fleetOf(['abcd', 'efgh']);
    await rm(join(folder, 'vehicles', 'abcd.json'));
    const store = await openForTest(folder);
    unwrapped(await store.settleTrouble(store.troubles()[0]?.id ?? ''));
    await store.close();
    expect((await openForTest(folder)).troubles()).toEqual([]);
  });

  it("is told for the shop's settings too", async () => {
    const folder = await fleetOf(['abcd']);
    await rm(join(folder, 'shop.json'));
    const store = await openForTest(folder);
    expect(store.troubles()).toMatchObject([{ fileName: 'shop.json', kind: 'missing' }]);
    unwrapped(await store.restoreLastGood(store.troubles()[0]?.id ?? '', byAda));
    expect(store.shop()?.data).toEqual(aShop());
  });
});
