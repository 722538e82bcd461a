// A full disk, a folder that may not be written, a folder that goes away: the last saved state stays, and the answer says why.
import { execFileSync, spawn } from 'node:child_process';
import { once } from 'node:events';
import { chmod, mkdir, readdir, readFile, rename, rm, statfs, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it, onTestFinished } from 'vitest';
import { writeFileAtomically } from '../../app/storage/atomic-file.ts';
import { copySampleFleet } from '../../app/storage/copy-sample-fleet.ts';
import { prepareSample } from '../../app/storage/exchange-sample.ts';
import type { FleetStore } from '../../app/storage/fleet-store.ts';
import { contentsOf, fleetOf, openForTest, tempFolder, textOf, unwrapped } from '../storage/fleet-fixture.ts';
import { aVehicle } from '../storage/fleet-records-fixture.ts';
import { byAda } from '../storage/telling-fixture.ts';

const isRoot = process.getuid?.() === 0;

/** True when the command can do its work here; some of these need the superuser and a system that has them. */
function can(command: string, ...parameters: string[]): boolean {
  try {
    execFileSync(command, parameters, { stdio: 'ignore' });
    return true;
  } catch {
    return false;
  }
}

/** A small disk of its own in memory, or null where it cannot be had. */
async function smallDisk(kilobytes: number): Promise<string | null> {
  const folder = await tempFolder();
  if (!isRoot || !can('mount', '-t', 'tmpfs', '-o', `size=${kilobytes}k`, 'tmpfs', folder)) return null;
  // Runs before the folder is removed: the last one asked for is the first one done.
  onTestFinished(() => execFileSync('umount', ['-l', folder]) && undefined);
  return folder;
}

async function fillUp(folder: string, bytesLeft: number): Promise<void> {
  const { bavail, bsize } = await statfs(folder);
  await writeFile(join(folder, 'filler'), Buffer.alloc(Math.max(0, bavail * bsize - bytesLeft)));
}

async function withoutHistories(folder: string): Promise<Map<string, string>> {
  return new Map([...(await contentsOf(folder))].filter(([path]) => !path.startsWith('history')));
}

describe('a full disk', () => {
  it('never lets a half-written file take the place of a whole one, however little room is left', async (context) => {
    const folder = await smallDisk(256);
    if (folder === null) return context.skip('Needs the superuser and tmpfs to make a small disk.');
    const path = join(folder, 'a.json');
    const good = Buffer.alloc(8_000, 'g');
    const big = Buffer.alloc(20_000, 'b');
    for (const pages of [0, 1, 2, 3, 4]) {
      await rm(join(folder, 'filler'), { force: true });
      unwrapped(await writeFileAtomically(path, good));
      await fillUp(folder, pages * 4096);
      expect(await writeFileAtomically(path, big)).toMatchObject({ ok: false, error: { code: 'no-space' } });
      expect((await readFile(path)).equals(good)).toBe(true);
      expect((await readdir(folder)).sort()).toEqual(['a.json', 'filler']);
    }
    await rm(join(folder, 'filler'));
    unwrapped(await writeFileAtomically(path, big));
    expect((await readFile(path)).equals(big)).toBe(true);
  });

  it('lets no new copy of the sample take the place of the one that was worked in', async (context) => {
    const folder = await smallDisk(256);
    if (folder === null) return context.skip('Needs the superuser and tmpfs to make a small disk.');
    const shipped = await fleetOf(['abcd', 'efgh']);
    const copy = join(folder, 'sample-fleet');
    unwrapped(await copySampleFleet(shipped, copy));
    await fillUp(folder, 4096);
    const before = await contentsOf(copy);
    expect(await prepareSample(shipped, copy)).toMatchObject({ error: { code: 'no-space' } });
    expect(await contentsOf(copy)).toEqual(before);
    expect((await readdir(folder)).sort()).toEqual(['filler', 'sample-fleet']);
  });

  it('refuses saves and backups, keeps the fleet as it was, and saves again when there is room', async (context) => {
    const folder = await smallDisk(1024);
    if (folder === null) return context.skip('Needs the superuser and tmpfs to make a small disk.');
    await fleetOf(['abcd', 'efgh'], { folder });
    const store = await openForTest(folder);
    await store.dailyBackup;
    await fillUp(folder, 0);
    const before = await withoutHistories(folder);
    expect(await store.saveVehicle(aVehicle('abcd', 'K2'), 1, byAda)).toMatchObject({ error: { code: 'no-space' } });
    expect(await store.saveVehicle(aVehicle('wxyz'), 0, byAda)).toMatchObject({ error: { code: 'no-space' } });
    expect(await store.backUp('by-hand')).toMatchObject({ error: { code: 'no-space' } });
    expect(store.vehicles().get('abcd')).toMatchObject({ revision: 1, data: aVehicle('abcd') });
    expect(store.vehicles().has('wxyz')).toBe(false);
    expect(await withoutHistories(folder)).toEqual(before);
    await rm(join(folder, 'filler'));
    expect(unwrapped(await store.saveVehicle(aVehicle('abcd', 'K2'), 1, byAda)).revision).toBe(2);
    // What was announced and could not be saved may stand in the history; it is not taken for a change.
    const { lines } = unwrapped(await store.readHistory('abcd', null, 100));
    expect(lines.filter((line) => line.wasSaved).map((line) => line.revision)).toEqual([2, 1]);
  });

  it('opens for reading only when not even the note of who has it can be written', async (context) => {
    const folder = await smallDisk(1024);
    if (folder === null) return context.skip('Needs the superuser and tmpfs to make a small disk.');
    await fleetOf(['abcd'], { folder });
    await fillUp(folder, 0);
    const store = await openForTest(folder, { createFolder: false });
    // On tmpfs an empty file needs no room, so the note exists but cannot be filled.
    expect(store.isReadOnly).toMatchObject({ kind: 'cannot-write' });
    expect(store.vehicles().get('abcd')?.data).toEqual(aVehicle('abcd'));
    expect((await contentsOf(folder)).get('vehicles/abcd.json')).toBeDefined();
  });
});

describe('no permission', () => {
  /** Whoever runs this: the folder refuses to be written. Answers how, or null where no way works. */
  async function forbid(folder: string): Promise<string | null> {
    if (!isRoot) {
      await chmod(folder, 0o555);
      onTestFinished(() => chmod(folder, 0o755));
      return 'mode 555';
    }
    // The superuser is not bound by modes, but by the immutable attribute.
    if (!can('chattr', '+i', folder)) return null;
    onTestFinished(() => execFileSync('chattr', ['-i', folder]) && undefined);
    return 'immutable attribute';
  }

  it('refuses the save after trying for a moment, and keeps the last saved state', async (context) => {
    const folder = await fleetOf(['abcd']);
    const store = await openForTest(folder);
    await store.dailyBackup;
    const before = await textOf(folder, 'vehicles/abcd.json');
    if ((await forbid(join(folder, 'vehicles'))) === null) return context.skip('No way here to forbid writing.');
    expect(await store.saveVehicle(aVehicle('abcd', 'K2'), 1, byAda)).toMatchObject({
      error: { code: 'no-permission' },
    });
    expect(await store.withdrawVehicle('abcd', 1, byAda)).toMatchObject({ error: { code: 'no-permission' } });
    expect(store.vehicles().get('abcd')).toMatchObject({ revision: 1, data: aVehicle('abcd') });
    expect(await textOf(folder, 'vehicles/abcd.json')).toBe(before);
    expect(await readdir(join(folder, 'vehicles'))).toEqual(['abcd.json']);
    expect(await readdir(join(folder, 'withdrawn'))).toEqual([]);
  });

  it('opens a fleet that may only be read for reading only', async (context) => {
    const folder = await fleetOf(['abcd']);
    if ((await forbid(folder)) === null) return context.skip('No way here to forbid writing.');
    const store = await openForTest(folder, { createFolder: false });
    expect(store.isReadOnly).toMatchObject({ kind: 'cannot-write' });
    expect(store.vehicles().get('abcd')?.isReadOnly).toBe(true);
  });

  it('leaves a damaged file in its place and lists it when it cannot be put aside', async (context) => {
    const folder = await fleetOf(['abcd', 'efgh']);
    await writeFile(join(folder, 'vehicles', 'abcd.json'), 'torn');
    if ((await forbid(join(folder, 'vehicles'))) === null) return context.skip('No way here to forbid writing.');
    const store = await openForTest(folder);
    expect(store.troubles()).toMatchObject([{ kind: 'not-json', quarantinedAs: null, vehicleId: 'abcd' }]);
    expect(await textOf(folder, 'vehicles/abcd.json')).toBe('torn');
    expect([...store.vehicles().keys()]).toEqual(['efgh']);
  });

  it('lists a record that this person may not read, and does not write over it', async (context) => {
    if (isRoot) return context.skip('The superuser may read everything.');
    const folder = await fleetOf(['abcd', 'efgh']);
    const path = join(folder, 'vehicles', 'abcd.json');
    await chmod(path, 0);
    const store = await openForTest(folder);
    expect(store.troubles()).toMatchObject([{ kind: 'cannot-read', quarantinedAs: null }]);
    expect(await store.saveVehicle(aVehicle('abcd'), 0, byAda)).toMatchObject({ ok: false });
    await chmod(path, 0o600);
    expect(JSON.parse(await readFile(path, 'utf8')).data).toEqual(aVehicle('abcd'));
  });
});

describe('a folder that goes away while the fleet is open', () => {
  async function goneWhileOpen(): Promise<{ folder: string; elsewhere: string; store: FleetStore }> {
    const parent = await tempFolder();
    const folder = join(parent, 'fleet');
    await fleetOf(['abcd'], { folder });
    const store = await openForTest(folder);
    await store.dailyBackup;
    const elsewhere = join(parent, 'moved');
    await rename(folder, elsewhere);
    return { folder, elsewhere, store };
  }

  it('refuses the save, makes nothing in its place, and saves again when it is back', async () => {
    const { folder, elsewhere, store } = await goneWhileOpen();
    expect(await store.saveVehicle(aVehicle('abcd', 'K2'), 1, byAda)).toMatchObject({ error: { code: 'folder-gone' } });
    expect(await store.backUp('by-hand')).toMatchObject({ error: { code: 'folder-gone' } });
    await expect(readdir(folder)).rejects.toThrow('ENOENT');
    expect(store.vehicles().get('abcd')?.revision).toBe(1);
    await rename(elsewhere, folder);
    expect(unwrapped(await store.saveVehicle(aVehicle('abcd', 'K2'), 1, byAda)).revision).toBe(2);
  });

  it('does not write into the empty mount point of an unplugged drive', async () => {
    const { folder, store } = await goneWhileOpen();
    await mkdir(folder);
    expect(await store.saveVehicle(aVehicle('abcd', 'K2'), 1, byAda)).toMatchObject({ error: { code: 'folder-gone' } });
    expect(await store.backUp('by-hand')).toMatchObject({ error: { code: 'folder-gone' } });
    expect(await readdir(folder)).toEqual([]);
  });

  it('does not write into another fleet that has come to lie there', async () => {
    const { folder, store } = await goneWhileOpen();
    await fleetOf(['abcd'], { folder });
    const other = await openForTest(folder);
    await other.dailyBackup;
    const before = await textOf(folder, 'vehicles/abcd.json');
    expect(await store.saveVehicle(aVehicle('abcd', 'K2'), 1, byAda)).toMatchObject({ error: { code: 'read-only' } });
    expect(await textOf(folder, 'vehicles/abcd.json')).toBe(before);
  });
});

it('holds for an ordinary person as well when the superuser runs these tests', async (context) => {
  if (!isRoot) return context.skip('They have just been run by one.');
  const vitest = fileURLToPath(new URL('../../node_modules/vitest/vitest.mjs', import.meta.url));
  const asNobody = ['--reuid=65534', '--regid=65534', '--clear-groups', process.execPath];
  if (!can('setpriv', ...asNobody, '-e', `require('node:fs').accessSync(${JSON.stringify(vitest)})`)) {
    return context.skip('Needs setpriv, and a project folder that others may read.');
  }
  // The runner's own way of loading its settings writes into the project folder, which this person may not.
  const runner = [vitest, 'run', '--configLoader=runner', '--config', 'tests/vitest.config.ts', '--reporter=json'];
  const child = spawn('setpriv', [...asNobody, ...runner, '-t', 'no permission', 'tests/faults/disk-faults'], {
    cwd: fileURLToPath(new URL('../..', import.meta.url)),
    env: { ...process.env, HOME: tmpdir() },
  });
  let output = '';
  child.stdout.on('data', (chunk) => {
    output += chunk;
  });
  await once(child, 'close');
  const report = JSON.parse(output.slice(output.indexOf('{'))) as { numPassedTests: number; numFailedTests: number };
  expect(report).toMatchObject({ numPassedTests: 4, numFailedTests: 0 });
});
