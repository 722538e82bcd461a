// Opening, saving, withdrawing: what is acknowledged is on the disk, what is refused changes nothing.
import { mkdir, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { openFleet } from '../../app/storage/open-fleet.ts';
import {
  contentsOf,
  fleetOf,
  openForTest,
  tempFolder,
  testClock,
  testOwner,
  textOf,
  unwrapped,
} from './fleet-fixture.ts';
import { aShop, aVehicle } from './fleet-records-fixture.ts';
import { byAda } from './telling-fixture.ts';

describe('opening', () => {
  it('makes a new fleet where it is told to, without settings or vehicles', async () => {
    const folder = join(await tempFolder(), 'new', 'fleet');
    const store = await openForTest(folder);
    expect([store.shop(), store.vehicles().size, store.isReadOnly, store.troubles()]).toEqual([null, 0, null, []]);
    expect(unwrapped(await store.saveShop(aShop(), 0)).revision).toBe(1);
  });

  it('does not make one in a folder that is missing or is no fleet', async () => {
    const folder = await tempFolder();
    const options = { clock: testClock(), owner: testOwner };
    expect(await openFleet({ ...options, folder: join(folder, 'none') })).toMatchObject({
      error: { code: 'folder-gone' },
    });
    expect(await openFleet({ ...options, folder })).toMatchObject({ error: { code: 'not-found' } });
    expect(await readdir(folder)).toEqual([]);
  });

  it('gives back what an earlier opening saved', async () => {
    const folder = await fleetOf(['abcd', 'efgh']);
    const store = await openForTest(folder, { createFolder: false });
    expect(store.shop()).toMatchObject({ data: aShop(), revision: 1, isReadOnly: false });
    expect([...store.vehicles().keys()].sort()).toEqual(['abcd', 'efgh']);
    expect(store.vehicles().get('abcd')?.data).toEqual(aVehicle('abcd'));
    expect(store.troubles()).toEqual([]);
  });

  it('clears away temp files of a killed run, and nothing else', async () => {
    const folder = await fleetOf(['abcd']);
    const leftovers = ['shop.json.tmp-1234567890abcdef', 'vehicles/abcd.json.tmp-1234567890abcdef'];
    const others = ['vehicles/.hidden.json', 'vehicles/desktop.ini', 'vehicles/notes.tmp-1', 'price list.txt'];
    for (const path of [...leftovers, ...others]) await writeFile(join(folder, path), 'half');
    await mkdir(join(folder, 'backups', '.unfinished-12345678-1234-1234-1234-123456789012'));
    const store = await openForTest(folder);
    const files = [...(await contentsOf(folder)).keys()];
    expect(files).toEqual(expect.arrayContaining(others));
    expect(files.filter((path) => path.includes('.tmp-1234567890'))).toEqual([]);
    expect((await readdir(join(folder, 'backups'))).filter((name) => name.startsWith('.'))).toEqual([]);
    expect(store.troubles()).toEqual([]);
  });
});

describe('saving', () => {
  it('counts revisions, and the file says the same as the answer', async () => {
    const folder = await tempFolder();
    const store = await openForTest(folder);
    const first = unwrapped(await store.saveVehicle(aVehicle('abcd'), 0, byAda));
    const second = unwrapped(await store.saveVehicle(aVehicle('abcd', 'K2'), first.revision, byAda));
    expect([first.revision, second.revision]).toEqual([1, 2]);
    const file = JSON.parse(await textOf(folder, 'vehicles/abcd.json'));
    expect(file).toEqual({
      format: 'lotwright-vehicle',
      version: 1,
      revision: 2,
      savedAt: second.savedAt,
      data: aVehicle('abcd', 'K2'),
    });
    expect(store.vehicles().get('abcd')).toEqual(second);
  });

  it('refuses a change that was based on an older state, and keeps the newer one', async () => {
    const folder = await fleetOf(['abcd']);
    const store = await openForTest(folder);
    const [one, two] = await Promise.all([
      store.saveVehicle(aVehicle('abcd', 'first'), 1, byAda),
      store.saveVehicle(aVehicle('abcd', 'second'), 1, byAda),
    ]);
    expect(unwrapped(one).revision).toBe(2);
    expect(two).toMatchObject({ ok: false, error: { code: 'stale-revision' } });
    expect(await textOf(folder, 'vehicles/abcd.json')).toContain('"keyTag": "first"');
    expect(await store.saveVehicle(aVehicle('abcd'), 0, byAda)).toMatchObject({ error: { code: 'stale-revision' } });
    expect(await store.saveVehicle(aVehicle('wxyz'), 1, byAda)).toMatchObject({ error: { code: 'stale-revision' } });
    expect(await store.saveShop(aShop('Other'), 0)).toMatchObject({ error: { code: 'stale-revision' } });
  });

  it('refuses a record that does not hold and an identity that is no file name', async () => {
    const folder = await tempFolder();
    const store = await openForTest(folder);
    const long = { ...aVehicle('abcd'), sale: { soldOn: 'yesterday', priceCents: 1, buyer: '', paidOffOn: null } };
    expect(await store.saveVehicle(long, 0, byAda)).toMatchObject({ error: { code: 'invalid' } });
    expect(await store.saveVehicle(aVehicle('../../evil'), 0, byAda)).toMatchObject({ error: { code: 'invalid' } });
    expect(await readdir(join(folder, 'vehicles'))).toEqual([]);
    expect(store.vehicles().size).toBe(0);
  });

  it('does not change when the caller goes on changing the object that was saved', async () => {
    const store = await openForTest(await tempFolder());
    const vehicle = aVehicle('abcd');
    await store.saveVehicle(vehicle, 0, byAda);
    vehicle.identity.keyTag = 'changed afterwards';
    expect(store.vehicles().get('abcd')?.data.identity.keyTag).toBe('K1');
  });

  it('does not replace a file that something else put there while the fleet was open', async () => {
    const folder = await fleetOf(['abcd']);
    const store = await openForTest(folder);
    const path = join(folder, 'vehicles', 'abcd.json');
    const foreign = (await readFile(path, 'utf8'))
      .replace('"K1"', '"copied in"')
      .replace('"revision": 1', '"revision": 5');
    await writeFile(path, foreign);
    expect(await store.saveVehicle(aVehicle('abcd', 'mine'), 1, byAda)).toMatchObject({
      error: { code: 'stale-revision' },
    });
    expect(await readFile(path, 'utf8')).toBe(foreign);
    const unknown = join(folder, 'vehicles', 'wxyz.json');
    await writeFile(unknown, 'no record at all');
    expect(await store.saveVehicle(aVehicle('wxyz'), 0, byAda)).toMatchObject({ ok: false });
    expect(await readFile(unknown, 'utf8')).toBe('no record at all');
  });

  it('puts a file aside that was damaged while the fleet was open, and saves what it has in memory', async () => {
    const folder = await fleetOf(['abcd']);
    const store = await openForTest(folder);
    await writeFile(join(folder, 'vehicles', 'abcd.json'), Buffer.alloc(100));
    expect(unwrapped(await store.saveVehicle(aVehicle('abcd', 'K2'), 1, byAda)).revision).toBe(2);
    expect(store.troubles()).toMatchObject([{ kind: 'zero-filled', vehicleId: 'abcd', lastGoodCopy: null }]);
    expect(await readFile(join(folder, store.troubles()[0]?.quarantinedAs ?? ''))).toEqual(Buffer.alloc(100));
  });

  it('writes a file again that was taken away while the fleet was open', async () => {
    const folder = await fleetOf(['abcd']);
    const store = await openForTest(folder);
    await rm(join(folder, 'vehicles', 'abcd.json'));
    expect(unwrapped(await store.saveVehicle(aVehicle('abcd', 'K2'), 1, byAda)).revision).toBe(2);
  });

  it('finishes what was asked before it closes, and refuses what is asked after', async () => {
    const folder = await tempFolder();
    const store = await openForTest(folder);
    const asked = ['aaaa', 'bbbb', 'cccc'].map((id) => store.saveVehicle(aVehicle(id), 0, byAda));
    const closed = store.close();
    expect(await store.saveVehicle(aVehicle('dddd'), 0, byAda)).toMatchObject({ error: { code: 'read-only' } });
    await closed;
    for (const result of await Promise.all(asked)) expect(result.ok).toBe(true);
    expect(await readdir(join(folder, 'vehicles'))).toEqual(['aaaa.json', 'bbbb.json', 'cccc.json']);
  });
});

describe('withdrawing', () => {
  it('moves the file and brings it back as it was', async () => {
    const folder = await fleetOf(['abcd']);
    const store = await openForTest(folder);
    const before = await textOf(folder, 'vehicles/abcd.json');
    expect(await store.withdrawVehicle('abcd', 0, byAda)).toMatchObject({ error: { code: 'stale-revision' } });
    unwrapped(await store.withdrawVehicle('abcd', 1, byAda));
    expect(store.vehicles().has('abcd')).toBe(false);
    expect(await textOf(folder, 'withdrawn/abcd.json')).toBe(before);
    const back = unwrapped(await store.bringBackVehicle('abcd', byAda));
    expect(back).toMatchObject({ revision: 1, data: aVehicle('abcd') });
    expect(await textOf(folder, 'vehicles/abcd.json')).toBe(before);
    expect(unwrapped(await store.saveVehicle(aVehicle('abcd', 'K2'), 1, byAda)).revision).toBe(2);
  });

  it('never loses an earlier withdrawn record, and brings back the newest', async () => {
    const folder = await fleetOf(['abcd']);
    const store = await openForTest(folder);
    unwrapped(await store.withdrawVehicle('abcd', 1, byAda));
    unwrapped(await store.saveVehicle(aVehicle('abcd', 'taken in anew'), 0, byAda));
    unwrapped(await store.withdrawVehicle('abcd', 1, byAda));
    expect(await readdir(join(folder, 'withdrawn'))).toEqual(['abcd.2.json', 'abcd.json']);
    expect(unwrapped(await store.bringBackVehicle('abcd', byAda)).data.identity.keyTag).toBe('taken in anew');
    expect(await readdir(join(folder, 'withdrawn'))).toEqual(['abcd.json']);
  });

  it('says so when there is nothing to withdraw or to bring back', async () => {
    const store = await openForTest(await fleetOf(['abcd']));
    expect(await store.withdrawVehicle('none', 1, byAda)).toMatchObject({ error: { code: 'not-found' } });
    expect(await store.bringBackVehicle('none', byAda)).toMatchObject({ error: { code: 'not-found' } });
    expect(await store.bringBackVehicle('abcd', byAda)).toMatchObject({ error: { code: 'stale-revision' } });
  });

  it('is not mistaken for a vehicle that has gone missing', async () => {
    const folder = await fleetOf(['abcd', 'efgh']);
    const store = await openForTest(folder);
    unwrapped(await store.withdrawVehicle('abcd', 1, byAda));
    await store.close();
    expect((await openForTest(folder)).troubles()).toEqual([]);
  });
});
