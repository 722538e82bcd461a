// Photographs and documents in a real fleet folder: the store beside the backups, what is told when a file has gone or is damaged, and
// how it comes back.
import { mkdir, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { basename, join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { attachmentFileName } from '../../app/domain/vehicle/attachment.ts';
import { attachmentPlace, listAttachmentPaths } from '../../app/storage/attachment-files.ts';
import { readContents } from '../../app/storage/backup-contents.ts';
import { contentHash } from '../../app/storage/content-hash.ts';
import type { FleetStore } from '../../app/storage/fleet-store.ts';
import { madePng } from '../helpers/made-pictures.ts';
import { addPhotographs, pathOf, spoil } from './attachment-fixture.ts';
import { contentsOf, fleetOf, openForTest, tempFolder, testClock, unwrapped } from './fleet-fixture.ts';
import { byAda } from './telling-fixture.ts';

const backups = (folder: string) => join(folder, 'backups');
const troubles = (store: FleetStore) => store.troubles().filter(({ fileName }) => fileName.startsWith('attachments/'));

describe('paths', () => {
  it('are only those this program gives', () => {
    const hash = contentHash(Buffer.from('a'));
    expect(attachmentPlace(`attachments/abcd/${hash}.jpg`)).toEqual({ vehicleId: 'abcd', fileName: `${hash}.jpg` });
    for (const path of [
      `attachments/abcd/${hash}.exe`,
      `attachments/abcd/${hash}`,
      `attachments/../${hash}.jpg`,
      `attachments/abcd/x/${hash}.jpg`,
      `attachments/ABCD/${hash}.jpg`,
      `attachments/abcd/${hash.toUpperCase()}.jpg`,
      `vehicles/abcd/${hash}.jpg`,
      'attachments/abcd/front.jpg',
    ])
      expect([path, attachmentPlace(path)]).toEqual([path, null]);
  });
});

describe('the store beside the backups', () => {
  it('takes each file once, however many backups are made, and each backup says what its records need', async () => {
    const folder = await fleetOf(['abcd', 'efgh']);
    const store = await openForTest(folder);
    const [one, two] = await addPhotographs(store, 'abcd', [10, 20]);
    if (!one || !two) throw new Error('Two were made.');
    const first = unwrapped(await store.backUp('by-hand'));
    const [three] = await addPhotographs(store, 'efgh', [30]);
    const second = unwrapped(await store.backUp('by-hand'));
    const paths = [pathOf('abcd', one), pathOf('abcd', two), pathOf('efgh', three ?? one)].sort();
    expect(await listAttachmentPaths(backups(folder))).toEqual(paths);
    for (const { id } of [first, second])
      expect((await readdir(join(backups(folder), id))).includes('attachments')).toBe(false);
    const contents = unwrapped(await readContents(backups(folder), second.id));
    expect(contents.attachments).toEqual(expect.arrayContaining(paths.map((path) => ({ path, isHeld: true }))));
    expect(unwrapped(await readContents(backups(folder), first.id)).attachments).toHaveLength(2);
    expect(await readFile(join(backups(folder), pathOf('abcd', one)))).toEqual(one);
  });

  it('keeps what a record names no more, so that any backup stays whole', async () => {
    const folder = await fleetOf(['abcd']);
    const store = await openForTest(folder);
    const [one] = await addPhotographs(store, 'abcd', [10]);
    if (!one) throw new Error('One was made.');
    unwrapped(await store.backUp('by-hand'));
    const kept = store.vehicles().get('abcd');
    if (!kept) throw new Error('It is there.');
    unwrapped(await store.saveVehicle({ ...kept.data, attachments: [] }, kept.revision, byAda));
    unwrapped(await store.backUp('by-hand'));
    expect(await listAttachmentPaths(backups(folder))).toEqual([pathOf('abcd', one)]);
    expect(await listAttachmentPaths(folder)).toEqual([pathOf('abcd', one)]);
  });

  it('is repeated in the second folder', async () => {
    const secondFolder = await tempFolder();
    const folder = await fleetOf(['abcd']);
    const store = await openForTest(folder, { secondFolder });
    const [one] = await addPhotographs(store, 'abcd', [10]);
    if (!one) throw new Error('One was made.');
    const made = unwrapped(await store.backUp('by-hand'));
    expect(made.secondCopy?.ok).toBe(true);
    const place = join(secondFolder, `${basename(folder)}-backups`);
    expect(await readFile(join(place, pathOf('abcd', one)))).toEqual(one);
    expect(unwrapped(await readContents(place, made.id)).attachments).toEqual([
      { path: pathOf('abcd', one), isHeld: true },
    ]);
  });

  it('makes the backup all the same where a file is damaged or gone, and says that it lacks it', async () => {
    const folder = await fleetOf(['abcd']);
    const store = await openForTest(folder);
    const [one, two, three] = await addPhotographs(store, 'abcd', [10, 20, 30]);
    if (!one || !two || !three) throw new Error('Three were made.');
    await spoil(folder, pathOf('abcd', one));
    await rm(join(folder, pathOf('abcd', two)));
    const made = unwrapped(await store.backUp('by-hand'));
    const { attachments } = unwrapped(await readContents(backups(folder), made.id));
    expect(attachments.filter(({ isHeld }) => isHeld).map(({ path }) => path)).toEqual([pathOf('abcd', three)]);
    const listed = unwrapped(await store.listBackups()).find(({ id }) => id === made.id);
    expect(listed).toMatchObject({ isGood: true, attachmentsNotHeld: 2 });
    expect(troubles(store)).toMatchObject([{ kind: 'missing', lastGoodCopy: null }]);
  });

  it('reads backups that were made before there were photographs', async () => {
    const folder = await fleetOf(['abcd']);
    const [name = ''] = await readdir(backups(folder));
    const path = join(backups(folder), name, 'contents.json');
    const { attachments: _none, ...earlier } = JSON.parse(await readFile(path, 'utf8'));
    await writeFile(path, JSON.stringify(earlier));
    expect(unwrapped(await readContents(backups(folder), name)).attachments).toEqual([]);
  });
});

describe('a file that has gone or is damaged', () => {
  async function fleetWithPhotographs() {
    const folder = await fleetOf(['abcd', 'efgh']);
    const store = await openForTest(folder);
    const pictures = await addPhotographs(store, 'abcd', [10, 20, 30]);
    unwrapped(await store.backUp('by-hand'));
    await store.close();
    return { folder, pictures: pictures as [Buffer, Buffer, Buffer] };
  }

  it('is told when the fleet is opened, once a vehicle, and put back from the store', async () => {
    const { folder, pictures } = await fleetWithPhotographs();
    await rm(join(folder, pathOf('abcd', pictures[0])));
    await rm(join(folder, pathOf('abcd', pictures[1])));
    const store = await openForTest(folder);
    const [trouble, ...others] = store.troubles();
    expect(others).toEqual([]);
    expect(trouble).toMatchObject({
      fileName: 'attachments/abcd',
      kind: 'missing',
      vehicleId: 'abcd',
      lastGoodCopy: { revision: 0 },
    });
    expect(trouble?.reason).toMatch(/^2 photographs and documents of .* are not in the fleet folder/);
    expect(unwrapped(await store.looks.lastGood(trouble?.id ?? ''))).toMatchObject({ kind: 'attachments' });
    unwrapped(await store.restoreLastGood(trouble?.id ?? '', byAda));
    expect(await readFile(join(folder, pathOf('abcd', pictures[0])))).toEqual(pictures[0]);
    expect(store.troubles()).toEqual([]);
  });

  it('is told when it is read and is not what was written, and comes back byte for byte', async () => {
    const { folder, pictures } = await fleetWithPhotographs();
    const store = await openForTest(folder);
    const [one] = pictures;
    const name = attachmentFileName(contentHash(one), 'png');
    expect(await store.readAttachment('abcd', name)).toEqual(one);
    const flipped = Buffer.from(one);
    flipped[40] = (flipped[40] ?? 0) ^ 1;
    await spoil(folder, pathOf('abcd', one), flipped);
    expect(store.troubles()).toEqual([]);
    expect(await store.readAttachment('abcd', name)).toBe('damaged');
    const [trouble] = store.troubles();
    expect(trouble).toMatchObject({ fileName: 'attachments/abcd' });
    unwrapped(await store.restoreLastGood(trouble?.id ?? '', byAda));
    expect(await store.readAttachment('abcd', name)).toEqual(one);
    expect(store.troubles()).toEqual([]);
  });

  it('stays told where the store is damaged too, and nothing bad is put in place', async () => {
    const { folder, pictures } = await fleetWithPhotographs();
    await rm(join(folder, pathOf('abcd', pictures[0])));
    await spoil(backups(folder), pathOf('abcd', pictures[0]));
    const store = await openForTest(folder);
    const [trouble] = store.troubles();
    expect(await store.looks.lastGood(trouble?.id ?? '')).toMatchObject({ error: { code: 'damaged' } });
    expect(await store.restoreLastGood(trouble?.id ?? '', byAda)).toMatchObject({ error: { code: 'damaged' } });
    expect(await listAttachmentPaths(folder)).toHaveLength(2);
    expect(store.troubles()).toHaveLength(1);
  });

  it('comes back from the second folder where the first has none', async () => {
    const { folder, pictures } = await fleetWithPhotographs();
    const secondFolder = await tempFolder();
    const place = join(secondFolder, `${basename(folder)}-backups`);
    await mkdir(join(place, 'attachments', 'abcd'), { recursive: true });
    await writeFile(join(place, pathOf('abcd', pictures[0])), pictures[0]);
    await rm(join(backups(folder), 'attachments'), { recursive: true });
    await rm(join(folder, pathOf('abcd', pictures[0])));
    const store = await openForTest(folder, { secondFolder });
    unwrapped(await store.restoreLastGood(troubles(store)[0]?.id ?? '', byAda));
    expect(await readFile(join(folder, pathOf('abcd', pictures[0])))).toEqual(pictures[0]);
  });

  it('can be left as it is; the next one that goes is told again', async () => {
    const { folder, pictures } = await fleetWithPhotographs();
    await rm(join(folder, pathOf('abcd', pictures[0])));
    const first = await openForTest(folder);
    unwrapped(await first.settleTrouble(first.troubles()[0]?.id ?? ''));
    expect(first.troubles()).toEqual([]);
    await first.close();
    const second = await openForTest(folder);
    expect(second.troubles()).toEqual([]);
    await second.close();
    await rm(join(folder, pathOf('abcd', pictures[1])));
    expect((await openForTest(folder)).troubles()).toHaveLength(1);
  });

  it('is no trouble any more once the record names it no more', async () => {
    const { folder, pictures } = await fleetWithPhotographs();
    await rm(join(folder, pathOf('abcd', pictures[0])));
    const store = await openForTest(folder);
    const kept = store.vehicles().get('abcd');
    if (!kept) throw new Error('It is there.');
    const attachments = kept.data.attachments.slice(1);
    unwrapped(await store.saveVehicle({ ...kept.data, attachments }, kept.revision, byAda));
    expect(store.troubles()).toEqual([]);
  });

  it('comes back with a vehicle that is put back from a backup', async () => {
    const { folder, pictures } = await fleetWithPhotographs();
    const store = await openForTest(folder);
    const [newest] = unwrapped(await store.listBackups());
    const kept = store.vehicles().get('abcd');
    if (!kept || !newest) throw new Error('Both are there.');
    unwrapped(await store.saveVehicle({ ...kept.data, attachments: [] }, kept.revision, byAda));
    await rm(join(folder, 'attachments'), { recursive: true });
    unwrapped(await store.restoreVehicle(newest.id, 'abcd', byAda));
    expect(await listAttachmentPaths(folder)).toEqual(pictures.map((bytes) => pathOf('abcd', bytes)).sort());
    expect(store.troubles()).toEqual([]);
    await rm(join(folder, 'attachments'), { recursive: true });
    unwrapped(await store.restoreBackup(newest.id, byAda, new Set()));
    expect(await listAttachmentPaths(folder)).toHaveLength(3);
  });
});

describe('what lies beside', () => {
  it('is left alone: files that no record names, names of other programs; only half-written ones are cleared away', async () => {
    const folder = await fleetOf(['abcd']);
    const store = await openForTest(folder);
    const [one] = await addPhotographs(store, 'abcd', [10]);
    await store.close();
    if (!one) throw new Error('One was made.');
    const place = join(folder, 'attachments', 'abcd');
    const unnamed = madePng(8, 6, 99);
    await writeFile(join(folder, pathOf('abcd', unnamed)), unnamed);
    await writeFile(join(place, 'notes.txt'), 'somebody’s own');
    await writeFile(join(place, `${contentHash(one)}.png.tmp-1234567890abcdef`), 'half');
    const again = await openForTest(folder, { clock: testClock('2026-03-06T10:00:00.000Z') });
    unwrapped(await again.dailyBackup);
    expect(again.troubles()).toEqual([]);
    const names = [...(await contentsOf(place)).keys()].sort();
    expect(names).toEqual([basename(pathOf('abcd', one)), basename(pathOf('abcd', unnamed)), 'notes.txt'].sort());
    expect(await listAttachmentPaths(backups(folder))).toHaveLength(2);
  });
});
