// Looking at backups and damaged files before anything is put back, putting back and taking that back, the second folder. Real folders.
import { mkdir, readdir, rename, rm, truncate, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { openTestDesk, type TestDesk, takeInOf } from '../helpers/open-test-desk.ts';

const vinOne = '1M8GDM9A3KP000009';
let desk: TestDesk;
let vehicleId: string;
let revision: number;

/** Backups of a desk begin once somebody has seen its first rows. */
async function openedDesk(folder?: string): Promise<TestDesk> {
  const opened = await openTestDesk(folder);
  await opened.ask('lot:read', {});
  return opened;
}

async function note(id: string, text: string): Promise<void> {
  const item = { id, on: '2026-03-18', text };
  const answer = await desk.ask('vehicle:change', {
    id: vehicleId,
    baseRevision: revision,
    change: { kind: 'put', list: 'notes', item },
  });
  revision = answer.view.revision;
}

async function notes(): Promise<string[]> {
  return (await desk.ask('vehicle:open', { id: vehicleId })).vehicle.notes.map(({ text }) => text);
}

async function newestByHand(): Promise<string> {
  await desk.ask('fleet:back-up', {});
  const { backups } = await desk.ask('safety:read', {});
  return backups.find(({ reason }) => reason === 'by-hand')?.id ?? '';
}

beforeEach(async () => {
  desk = await openedDesk();
  const taken = await desk.ask('vehicle:take-in', takeInOf('LW-1001', vinOne));
  vehicleId = taken.view.vehicle.id;
  revision = taken.view.revision;
  await note('note-one', 'First.');
});
afterEach(() => desk.discard());

describe('one vehicle of a backup', () => {
  it('is shown fact by fact before it is put back, and the putting back can be taken back', async () => {
    const backupId = await newestByHand();
    await note('note-one', 'Other words.');
    const preview = await desk.ask('safety:preview-vehicle', { backupId, vehicleId });
    expect(preview).toMatchObject({
      effect: 'changes',
      isShortened: false,
      changes: [{ what: 'Note: text', from: 'Other words.', to: 'First.' }],
    });
    expect(preview.what).toMatch(/^LW-1001, /);
    expect(await notes()).toEqual(['Other words.']);
    const { undoBackupId } = await desk.ask('safety:restore-vehicle', { backupId, vehicleId });
    expect(await notes()).toEqual(['First.']);
    expect(await desk.ask('safety:preview-vehicle', { backupId, vehicleId })).toMatchObject({ effect: 'same' });
    await desk.ask('safety:restore-vehicle', { backupId: undoBackupId, vehicleId });
    expect(await notes()).toEqual(['Other words.']);
  });

  it('that was not there then leaves the lot, and comes back when that is taken back', async () => {
    const backupId = await newestByHand();
    const other = await desk.ask('vehicle:take-in', takeInOf('LW-1002', '1M8GDM9AXKP042788'));
    const { id } = other.view.vehicle;
    expect(await desk.ask('safety:preview-vehicle', { backupId, vehicleId: id })).toMatchObject({ effect: 'goes' });
    const { undoBackupId } = await desk.ask('safety:restore-vehicle', { backupId, vehicleId: id });
    expect((await desk.refused('vehicle:open', { id })).code).toBe('not-found');
    await desk.ask('safety:restore-vehicle', { backupId: undoBackupId, vehicleId: id });
    expect((await desk.ask('vehicle:open', { id })).vehicle.identity.stockNumber).toBe('LW-1002');
  });
});

describe('a whole backup', () => {
  it('says what it would change, bring back and take away, and does just that', async () => {
    const backupId = await newestByHand();
    await note('note-one', 'Other words.');
    const other = await desk.ask('vehicle:take-in', takeInOf('LW-1002', '1M8GDM9AXKP042788'));
    const preview = await desk.ask('safety:preview-backup', { backupId });
    expect(preview.vehicles.map(({ id, effect }) => [id, effect])).toEqual([
      [vehicleId, 'changes'],
      [other.view.vehicle.id, 'goes'],
    ]);
    const done = await desk.ask('safety:restore-all', { backupId, leaving: [] });
    expect(done).toMatchObject({ restored: 1, withdrawn: 1 });
    expect(done.desk.undo).toBeNull();
    expect(await notes()).toEqual(['First.']);
    const back = await desk.ask('safety:restore-all', { backupId: done.undoBackupId, leaving: [] });
    expect(back).toMatchObject({ withdrawn: 0 });
    expect(await notes()).toEqual(['Other words.']);
    expect((await desk.ask('vehicle:open', { id: other.view.vehicle.id })).vehicle.identity.stockNumber).toBe(
      'LW-1002',
    );
  });

  it('names the file that is not as it was written, and changes nothing until it is asked to leave just that', async () => {
    const other = await desk.ask('vehicle:take-in', takeInOf('LW-1002', '1M8GDM9AXKP042788'));
    const backupId = await newestByHand();
    await note('note-one', 'Other words.');
    const gone = other.view.vehicle.id;
    await desk.ask('vehicle:withdraw', { id: gone, baseRevision: other.view.revision });
    const vehicles = join(desk.folder, 'fleet', 'backups', backupId, 'vehicles');
    await truncate(join(vehicles, `${gone}.json`), 50);
    const { damaged, vehicles: whole } = await desk.ask('safety:preview-backup', { backupId });
    const path = `vehicles/${gone}.json`;
    expect(damaged).toEqual([
      { path, name: path, sentence: 'The file is cut off: its end is missing.', isThereNow: false },
    ]);
    expect(whole).toMatchObject([{ id: vehicleId, effect: 'changes' }]);
    const refusal = await desk.refused('safety:restore-all', { backupId, leaving: [] });
    expect(refusal.detail).toContain('Nothing has been changed. Look into the backup');
    await desk.refused('safety:restore-vehicle', { backupId, vehicleId: gone });
    expect(await notes()).toEqual(['Other words.']);
    const done = await desk.ask('safety:restore-all', { backupId, leaving: [path] });
    expect(done).toMatchObject({ restored: 1, withdrawn: 0 });
    expect(await notes()).toEqual(['First.']);
    await desk.ask('safety:restore-all', { backupId: done.undoBackupId, leaving: [] });
    expect(await notes()).toEqual(['Other words.']);
  });
});

describe('a damaged file', () => {
  it('is listed with its place and its last good copy, which is shown before it is put back', async () => {
    await newestByHand();
    const path = join(desk.folder, 'fleet', 'vehicles', `${vehicleId}.json`);
    await desk.session.close();
    await writeFile(path, Buffer.alloc(300));
    desk = await openedDesk(desk.folder);
    const { troubles } = await desk.ask('safety:read', {});
    expect(troubles).toMatchObject([{ fileName: `vehicles/${vehicleId}.json` }]);
    expect(troubles[0]?.quarantinedAs).toMatch(/^quarantine\//);
    const id = troubles[0]?.id ?? '';
    expect(await desk.ask('safety:preview-trouble', { id })).toMatchObject({ effect: 'comes' });
    await desk.ask('fleet:restore-trouble', { id });
    expect(await notes()).toEqual(['First.']);
    expect((await desk.ask('safety:read', {})).troubles).toEqual([]);
  });

  it('of the settings shows which parts become as they were', async () => {
    const shop = await desk.ask('shop:read', {});
    const dealer = { ...shop.shop.dealer, name: 'Yard as it was' };
    await desk.ask('shop:change', { baseRevision: shop.revision, change: { part: 'dealer', value: dealer } });
    await newestByHand();
    await desk.session.close();
    await truncate(join(desk.folder, 'fleet', 'shop.json'), 40);
    desk = await openedDesk(desk.folder);
    const [trouble] = (await desk.ask('safety:read', {})).troubles;
    expect(await desk.ask('safety:preview-trouble', { id: trouble?.id ?? '' })).toMatchObject({ what: 'Settings' });
    expect((await desk.ask('fleet:restore-trouble', { id: trouble?.id ?? '' })).fleetName).toBe('Yard as it was');
  });
});

describe('a vault that had gone', () => {
  it('is there again as soon as its file was put back, without opening the program anew', async () => {
    await desk.ask('vault:make', { passPhrase: 'four plain words here' });
    await newestByHand();
    await desk.session.close();
    await rm(join(desk.folder, 'fleet', 'vault.json'));
    desk = await openedDesk(desk.folder);
    const before = await desk.ask('vault:state', {});
    const { troubles } = await desk.ask('safety:read', {});
    const id = troubles.find(({ fileName }) => fileName === 'vault.json')?.id ?? '';
    await desk.ask('fleet:restore-trouble', { id });
    const after = await desk.ask('vault:state', {});
    expect([before, after]).not.toEqual([after, after]);
    await desk.ask('vault:unlock', { passPhrase: 'four plain words here' });
  });
});

describe('the second folder', () => {
  it('gets a copy at once when it is chosen, and none any more when it is given up', async () => {
    const second = join(desk.folder, 'other-drive');
    await mkdir(second);
    expect((await desk.ask('safety:choose-second', {})).safety.second).toBeNull();
    desk.setChosenFolder(second);
    const chosen = await desk.ask('safety:choose-second', {});
    expect(chosen.safety.second).toEqual({ folder: second, isThere: true });
    const place = join(second, 'fleet-backups');
    expect((await readdir(place)).filter((name) => name.includes('by-hand'))).toHaveLength(1);
    await desk.ask('fleet:back-up', {});
    expect((await readdir(place)).filter((name) => name.includes('by-hand'))).toHaveLength(2);
    expect((await desk.ask('safety:leave-second', {})).safety.second).toBeNull();
    await desk.ask('fleet:back-up', {});
    expect((await readdir(place)).filter((name) => name.includes('by-hand'))).toHaveLength(2);
  });

  it('out of reach is said so, and the backup is made in the first one all the same', async () => {
    const second = join(desk.folder, 'other-drive');
    await mkdir(second);
    desk.setChosenFolder(second);
    await desk.ask('safety:choose-second', {});
    await rename(second, join(desk.folder, 'unplugged'));
    await desk.ask('fleet:back-up', {});
    const { second: told, backups } = await desk.ask('safety:read', {});
    expect(told).toEqual({ folder: second, isThere: false });
    // The one of choosing the folder, and this one.
    expect(backups.filter(({ reason }) => reason === 'by-hand')).toHaveLength(2);
    await expect(readdir(second)).rejects.toThrow('ENOENT');
  });

  it('is not taken inside the fleet folder, nor where nothing can be written', async () => {
    desk.setChosenFolder(join(desk.folder, 'fleet', 'backups'));
    expect((await desk.refused('safety:choose-second', {})).detail).toContain('inside the fleet folder');
    await writeFile(join(desk.folder, 'a-file'), '');
    desk.setChosenFolder(join(desk.folder, 'a-file'));
    expect((await desk.refused('safety:choose-second', {})).detail).toContain('No backup could be written');
    expect((await desk.ask('safety:read', {})).second).toBeNull();
  });
});
