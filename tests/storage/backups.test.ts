// Backups are whole or not there, and going back can itself be undone.
import { mkdir, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { basename, join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { describe, expect, it } from 'vitest';
import { contentHash } from '../../app/storage/content-hash.ts';
import { Foreground } from '../../app/storage/foreground.ts';
import { makeBackup, whyNotGood } from '../../app/storage/make-backup.ts';
import { recordKinds } from '../../app/storage/record-kind.ts';
import { contentsOf, fleetOf, openForTest, tempFolder, testClock, textOf, unwrapped } from './fleet-fixture.ts';
import { aShop, aVehicle } from './fleet-records-fixture.ts';
import { byAda } from './telling-fixture.ts';

/** All of a plan but its files. */
const plan = {
  reason: 'by-hand' as const,
  madeAt: '2026-03-04T10:00:00.000Z',
  madeFrom: 'x',
  missing: [],
  attachments: [],
  givesWay: null,
};

describe('making one', () => {
  it('holds the same files as the fleet and a table with the hash of each', async () => {
    const folder = await fleetOf(['abcd', 'efgh']);
    const store = await openForTest(folder);
    const { id, fileCount } = unwrapped(await store.backUp('by-hand'));
    expect(id).toMatch(/^2026-03-04T10-00-00-by-hand$/);
    const contents = JSON.parse(await textOf(folder, `backups/${id}/contents.json`));
    expect([fileCount, contents.fileCount, contents.vehicleCount]).toEqual([5, 5, 2]);
    for (const file of contents.files) {
      const copy = await readFile(join(folder, 'backups', id, file.path));
      expect(copy.equals(await readFile(join(folder, file.path)))).toBe(true);
      expect(file).toMatchObject({ sha256: contentHash(copy), bytes: copy.length });
    }
    expect((await readdir(join(folder, 'backups'))).filter((name) => name.startsWith('.'))).toEqual([]);
  });

  it('gives two of the same second different names', async () => {
    const store = await openForTest(await fleetOf(['abcd']), { clock: () => '2026-03-05T10:00:00.000Z' });
    const ids = [unwrapped(await store.backUp('by-hand')).id, unwrapped(await store.backUp('by-hand')).id];
    expect(ids).toEqual(['2026-03-05T10-00-00-by-hand', '2026-03-05T10-00-00-by-hand-2']);
  });

  it('does not copy a file that was damaged on the disk in the meantime: it holds what was acknowledged', async () => {
    const folder = await fleetOf(['abcd']);
    const store = await openForTest(folder);
    const good = await textOf(folder, 'vehicles/abcd.json');
    await writeFile(join(folder, 'vehicles', 'abcd.json'), 'torn');
    const { id } = unwrapped(await store.backUp('by-hand'));
    expect(await textOf(folder, `backups/${id}/vehicles/abcd.json`)).toBe(good);
  });

  it('leaves nothing behind when a file cannot be had', async () => {
    const place = await tempFolder();
    const read = () => Promise.reject(new Error('gone'));
    const file = { path: 'vehicles/abcd.json', revision: 1, savedAt: '2026-03-04T10:00:00.000Z', read };
    expect(await makeBackup(place, { ...plan, files: [file] })).toMatchObject({ ok: false });
    expect(await readdir(place)).toEqual([]);
  });

  it('is refused when what was written does not read back the same', async () => {
    const place = await tempFolder();
    const common = { revision: 1, savedAt: '2026-03-04T10:00:00.000Z' };
    const first = { ...common, path: 'vehicles/abcd.json', read: async () => Buffer.from('good') };
    // Stands for a drive that gives back other bytes than it was given: the first copy changes once it has been written.
    const second = {
      ...common,
      path: 'vehicles/efgh.json',
      read: async () => {
        const [making = ''] = await readdir(place);
        const copy = join(place, making, 'vehicles', 'abcd.json');
        while ((await readFile(copy, 'utf8').catch(() => '')) !== 'good') await pause(1);
        await writeFile(copy, 'evil');
        return Buffer.from('good too');
      },
    };
    expect(await makeBackup(place, { ...plan, files: [first, second] })).toMatchObject({ error: { code: 'damaged' } });
    expect(await readdir(place)).toEqual([]);
  });

  it('is made once at the first opening of a day, and not for an empty fleet', async () => {
    const empty = await openForTest(await tempFolder());
    expect(await empty.dailyBackup).toEqual({ ok: true, value: null });
    const folder = await fleetOf(['abcd']);
    const days = ['2026-03-05T06:00:00.000Z', '2026-03-05T18:00:00.000Z', '2026-03-06T06:00:00.000Z'];
    for (const day of days) {
      const store = await openForTest(folder, { clock: testClock(day) });
      await store.dailyBackup;
      await store.close();
    }
    expect((await readdir(join(folder, 'backups'))).map((name) => name.slice(0, 10))).toEqual([
      '2026-03-04',
      '2026-03-05',
      '2026-03-06',
    ]);
  });

  it('stands back for what a person does, and then holds the fleet as it was when the day was begun', async () => {
    const folder = await fleetOf(['abcd', 'efgh']);
    const foreground = new Foreground();
    const isOver = foreground.begin();
    const store = await openForTest(folder, { clock: testClock('2026-03-05T06:00:00.000Z'), foreground });
    const before = await textOf(folder, 'vehicles/abcd.json');
    const record = store.vehicles().get('abcd');
    if (!record) throw new Error('The vehicle is not there.');
    const changed = { ...record.data, identity: { ...record.data.identity, colour: 'another one' } };
    unwrapped(await store.saveVehicle(changed, record.revision, byAda));
    expect(await textOf(folder, 'vehicles/abcd.json')).not.toBe(before);
    expect((await readdir(join(folder, 'backups'))).filter((name) => name.startsWith('2026-03-05'))).toEqual([]);
    isOver();
    const made = unwrapped(await store.dailyBackup);
    expect(await textOf(folder, `backups/${made?.id}/vehicles/abcd.json`)).toBe(before);
  });

  it('rotates the automatic ones over two months and keeps every one made by hand', async () => {
    const folder = await fleetOf(['abcd']);
    const byHand = await openForTest(folder, { clock: testClock('2026-03-04T12:00:00.000Z') });
    const { id } = unwrapped(await byHand.backUp('by-hand'));
    await byHand.close();
    for (let day = 1; day <= 60; day++) {
      const clock = testClock(new Date(Date.UTC(2026, 2, 4 + day, 9)).toISOString());
      const store = await openForTest(folder, { clock });
      unwrapped(await store.dailyBackup);
      await store.close();
    }
    const names = await readdir(join(folder, 'backups'));
    expect(names).toContain(id);
    expect(names).toContain('2026-05-03T09-00-00-daily');
    expect(names.length).toBeLessThanOrEqual(1 + 7 + 4 + 6);
  });
});

describe('the second folder', () => {
  it('gets the same backup, which can be listed and restored when the first is gone', async () => {
    const secondFolder = await tempFolder();
    const folder = await fleetOf(['abcd']);
    const store = await openForTest(folder, { secondFolder });
    const made = unwrapped(await store.backUp('by-hand'));
    expect(made.secondCopy).toEqual({ ok: true, value: made.id });
    const place = join(secondFolder, `${basename(folder)}-backups`);
    expect(await contentsOf(join(place, made.id))).toEqual(await contentsOf(join(folder, 'backups', made.id)));
    await rm(join(folder, 'backups'), { recursive: true });
    await mkdir(join(folder, 'backups'));
    unwrapped(await store.saveVehicle(aVehicle('abcd', 'K2'), 1, byAda));
    expect(unwrapped(await store.listBackups())).toMatchObject([{ id: made.id, where: 'second', isGood: true }]);
    unwrapped(await store.restoreBackup(made.id, byAda));
    expect(store.vehicles().get('abcd')?.data).toEqual(aVehicle('abcd'));
  });

  it('is not made when it is missing (an unplugged drive), and the first backup stands', async () => {
    const secondFolder = join(await tempFolder(), 'unplugged');
    const store = await openForTest(await fleetOf(['abcd']), { secondFolder });
    const made = unwrapped(await store.backUp('by-hand'));
    expect(made.secondCopy).toMatchObject({ ok: false, error: { code: 'folder-gone' } });
    await expect(readdir(secondFolder)).rejects.toThrow('ENOENT');
    expect(unwrapped(await store.listBackups()).some((backup) => backup.id === made.id)).toBe(true);
  });
});

describe('going back', () => {
  it('makes the fleet what it was, and going back to the snapshot makes it what it became', async () => {
    const folder = await fleetOf(['abcd', 'efgh']);
    const store = await openForTest(folder);
    const { id } = unwrapped(await store.backUp('by-hand'));
    unwrapped(await store.saveVehicle(aVehicle('abcd', 'changed'), 1, byAda));
    unwrapped(await store.saveVehicle(aVehicle('wxyz'), 0, byAda));
    unwrapped(await store.withdrawVehicle('efgh', 1, byAda));
    unwrapped(await store.saveShop(aShop('Renamed Motors'), 1));
    const keyTags = () => [...store.vehicles()].map(([key, kept]) => [key, kept.data.identity.keyTag]).sort();

    const done = unwrapped(await store.restoreBackup(id, byAda));
    expect(done).toMatchObject({ restored: 3, unchanged: 0, withdrawn: 1 });
    expect(keyTags()).toEqual([
      ['abcd', 'K1'],
      ['efgh', 'K1'],
    ]);
    expect(store.shop()?.data).toEqual(aShop());
    expect(await readdir(join(folder, 'withdrawn'))).toEqual(['efgh.json', 'wxyz.json']);

    unwrapped(await store.restoreBackup(done.undoBackupId, byAda));
    expect(keyTags()).toEqual([
      ['abcd', 'changed'],
      ['wxyz', 'K1'],
    ]);
    expect(store.shop()?.data).toEqual(aShop('Renamed Motors'));
    await store.close();
    const again = await openForTest(folder);
    expect([...again.vehicles().keys()].sort()).toEqual(['abcd', 'wxyz']);
    expect(again.troubles()).toEqual([]);
  });

  it('raises the revisions, so that a change from before is refused', async () => {
    const store = await openForTest(await fleetOf(['abcd']));
    const { id } = unwrapped(await store.backUp('by-hand'));
    unwrapped(await store.saveVehicle(aVehicle('abcd', 'changed'), 1, byAda));
    unwrapped(await store.restoreBackup(id, byAda));
    expect(store.vehicles().get('abcd')?.revision).toBe(3);
    expect(await store.saveVehicle(aVehicle('abcd', 'late'), 2, byAda)).toMatchObject({
      error: { code: 'stale-revision' },
    });
  });

  it('brings one vehicle back and leaves the rest', async () => {
    const store = await openForTest(await fleetOf(['abcd', 'efgh']));
    const { id } = unwrapped(await store.backUp('by-hand'));
    unwrapped(await store.saveVehicle(aVehicle('abcd', 'changed'), 1, byAda));
    unwrapped(await store.saveVehicle(aVehicle('efgh', 'changed'), 1, byAda));
    expect(unwrapped(await store.restoreVehicle(id, 'abcd', byAda))).toMatchObject({
      revision: 3,
      data: aVehicle('abcd'),
    });
    expect(store.vehicles().get('efgh')?.data.identity.keyTag).toBe('changed');
    expect(await store.restoreVehicle(id, 'none', byAda)).toMatchObject({ error: { code: 'not-found' } });
    expect(await store.restoreVehicle('../../etc', 'abcd', byAda)).toMatchObject({ error: { code: 'not-found' } });
  });

  it.each([
    ['a changed file', (backup: string) => writeFile(join(backup, 'vehicles', 'efgh.json'), '{}')],
    ['a missing file', (backup: string) => rm(join(backup, 'vehicles', 'efgh.json'))],
    ['a torn table of contents', (backup: string) => writeFile(join(backup, 'contents.json'), '{"format":')],
    ['no table of contents', (backup: string) => rm(join(backup, 'contents.json'))],
  ])('refuses a backup with %s and changes nothing', async (_what, damage) => {
    const folder = await fleetOf(['abcd', 'efgh']);
    const store = await openForTest(folder);
    const { id } = unwrapped(await store.backUp('by-hand'));
    unwrapped(await store.saveVehicle(aVehicle('abcd', 'changed'), 1, byAda));
    await damage(join(folder, 'backups', id));
    const before = await contentsOf(folder);
    expect(await store.restoreBackup(id, byAda)).toMatchObject({ ok: false });
    expect(await contentsOf(folder)).toEqual(before);
    expect(await whyNotGood(join(folder, 'backups'), id)).not.toBeNull();
  });

  it('puts back all that is whole where the damaged files are named, leaves those as they are, and can be taken back', async () => {
    const folder = await fleetOf(['abcd', 'efgh', 'ijkl']);
    const store = await openForTest(folder);
    const { id } = unwrapped(await store.backUp('by-hand'));
    for (const vehicleId of ['abcd', 'efgh'])
      unwrapped(await store.saveVehicle(aVehicle(vehicleId, 'changed'), 1, byAda));
    unwrapped(await store.withdrawVehicle('ijkl', 1, byAda));
    unwrapped(await store.saveShop(aShop('Renamed Motors'), 1));
    const backup = join(folder, 'backups', id);
    await writeFile(join(backup, 'vehicles', 'efgh.json'), '{"format":"lotwright-vehicle"');
    await writeFile(join(backup, 'shop.json'), Buffer.alloc(80));
    const look = unwrapped(await store.looks.whole(id));
    expect(look.damaged).toMatchObject([
      { path: 'shop.json', sentence: 'The file holds nothing but zero bytes, as a power cut leaves it.' },
      { path: 'vehicles/efgh.json', sentence: 'The file is cut off: its end is missing.', present: { id: 'efgh' } },
    ]);
    expect(look.vehicles.map(({ copy }) => copy.id).sort()).toEqual(['abcd', 'ijkl']);

    // Whoever has been told of one of two has not been told of the other.
    const half = await store.restoreBackup(id, byAda, new Set(['vehicles/efgh.json']));
    expect(half).toMatchObject({ error: { code: 'damaged' } });
    expect(store.vehicles().get('abcd')?.data.identity.keyTag).toBe('changed');

    const leaving = new Set(look.damaged.map(({ path }) => path));
    const done = unwrapped(await store.restoreBackup(id, byAda, leaving));
    expect(done).toMatchObject({ restored: 2, withdrawn: 0 });
    const keyTags = () => [...store.vehicles()].map(([key, kept]) => `${key} ${kept.data.identity.keyTag}`).sort();
    expect(keyTags()).toEqual(['abcd K1', 'efgh changed', 'ijkl K1']);
    expect(store.shop()?.data).toEqual(aShop('Renamed Motors'));
    unwrapped(await store.restoreBackup(done.undoBackupId, byAda));
    expect(keyTags()).toEqual(['abcd changed', 'efgh changed']);
  });

  it('puts back one whole vehicle of it and refuses a damaged one, also where its bytes are a record', async () => {
    const folder = await fleetOf(['abcd', 'efgh']);
    const store = await openForTest(folder);
    const { id } = unwrapped(await store.backUp('by-hand'));
    unwrapped(await store.saveVehicle(aVehicle('abcd', 'changed'), 1, byAda));
    unwrapped(await store.saveVehicle(aVehicle('efgh', 'forged'), 1, byAda));
    const copy = join(folder, 'backups', id, 'vehicles', 'efgh.json');
    await writeFile(copy, await textOf(folder, 'vehicles/efgh.json'));
    expect(unwrapped(await store.looks.whole(id)).damaged).toMatchObject([
      { path: 'vehicles/efgh.json', sentence: 'It has changed since it was written.' },
    ]);
    unwrapped(await store.restoreVehicle(id, 'abcd', byAda));
    expect(store.vehicles().get('abcd')?.data.identity.keyTag).toBe('K1');
    expect(await store.restoreVehicle(id, 'efgh', byAda)).toMatchObject({ error: { code: 'damaged' } });
    expect(await store.looks.vehicle(id, 'efgh')).toMatchObject({ error: { code: 'damaged' } });
  });

  it('is refused where no file is whole', async () => {
    const folder = await fleetOf(['abcd']);
    const store = await openForTest(folder);
    const { id } = unwrapped(await store.backUp('by-hand'));
    const backup = join(folder, 'backups', id);
    for (const name of (await readdir(backup)).filter((one) => one !== 'contents.json'))
      await rm(join(backup, name), { recursive: true });
    expect(await store.looks.whole(id)).toMatchObject({ error: { code: 'damaged' } });
  });
});

describe('an older format', () => {
  // Invented: a version 2 of the vehicle record that writes its key tag in capitals.
  const migrate = (data: unknown) => {
    const old = data as ReturnType<typeof aVehicle>;
    return { ...old, identity: { ...old.identity, keyTag: old.identity.keyTag.toUpperCase() } };
  };
  const vehicle = { ...recordKinds.vehicle, version: 2, migrations: [{ from: 1, what: 'Capitals', migrate }] };
  const kinds = { ...recordKinds, vehicle };

  it('is snapshotted as it was, then brought up, and only once', async () => {
    const folder = await fleetOf(['abcd', 'efgh']);
    const setup = await openForTest(folder);
    unwrapped(await setup.saveVehicle(aVehicle('abcd', 'peg 7'), 1, byAda));
    await setup.close();
    const old = await textOf(folder, 'vehicles/abcd.json');
    const store = await openForTest(folder, { kinds });
    expect(store.isReadOnly).toBeNull();
    expect(store.vehicles().get('abcd')).toMatchObject({ revision: 2, data: { identity: { keyTag: 'PEG 7' } } });
    expect(await textOf(folder, 'vehicles/abcd.json')).toContain('"version": 2');
    const snapshot = unwrapped(await store.listBackups()).find((backup) => backup.reason === 'before-migration');
    expect(await textOf(folder, `backups/${snapshot?.id}/vehicles/abcd.json`)).toBe(old);
    expect(unwrapped(await store.saveVehicle(aVehicle('abcd', 'NEXT'), 2, byAda)).revision).toBe(3);
    await store.close();
    const again = await openForTest(folder, { kinds });
    const snapshots = unwrapped(await again.listBackups()).filter((backup) => backup.reason === 'before-migration');
    expect(snapshots).toHaveLength(1);
    unwrapped(await again.restoreVehicle(snapshot?.id ?? '', 'abcd', byAda));
    expect(again.vehicles().get('abcd')?.data.identity.keyTag).toBe('PEG 7');
  });

  it('opens for reading only when the snapshot cannot be made, and no file is touched', async () => {
    const folder = await fleetOf(['abcd']);
    await rm(join(folder, 'backups'), { recursive: true });
    await writeFile(join(folder, 'backups'), 'a file where the folder should be');
    const before = await textOf(folder, 'vehicles/abcd.json');
    const opened = await openForTest(folder, { kinds }).catch((error: Error) => error);
    // The folder cannot even be made: either way nothing has been rewritten.
    expect(opened instanceof Error || opened.isReadOnly?.kind === 'no-safe-copy').toBe(true);
    expect(await textOf(folder, 'vehicles/abcd.json')).toBe(before);
  });
});
