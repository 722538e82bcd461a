// Photographs when the disk is full or the program is killed between file and record: the record never names what is not whole on the disk.
import { execFileSync, spawn } from 'node:child_process';
import { once } from 'node:events';
import { readdir, rm, stat, statfs, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it, onTestFinished } from 'vitest';
import { attachmentFileName } from '../../app/domain/vehicle/attachment.ts';
import { attachmentPathsOf, listAttachmentPaths, readAttachmentFile } from '../../app/storage/attachment-files.ts';
import { contentHash } from '../../app/storage/content-hash.ts';
import { addPhotographs, pathOf } from '../storage/attachment-fixture.ts';
import { fleetOf, openForTest, tempFolder, unwrapped } from '../storage/fleet-fixture.ts';

describe('a full disk', () => {
  it('refuses the photograph, names nothing, and takes it when there is room', async (context) => {
    const folder = await tempFolder();
    try {
      execFileSync('mount', ['-t', 'tmpfs', '-o', 'size=1024k', 'tmpfs', folder], { stdio: 'ignore' });
    } catch {
      return context.skip('Needs the superuser and tmpfs to make a small disk.');
    }
    onTestFinished(() => execFileSync('umount', ['-l', folder]) && undefined);
    await fleetOf(['abcd'], { folder });
    const store = await openForTest(folder);
    await store.dailyBackup;
    const bytes = Buffer.alloc(60_000, 'p');
    const files = [{ name: attachmentFileName(contentHash(bytes), 'png'), bytes }];
    const { bavail, bsize } = await statfs(folder);
    await writeFile(join(folder, 'filler'), Buffer.alloc(bavail * bsize - 24_000));
    expect(await store.keepAttachmentFiles('abcd', files)).toMatchObject({ error: { code: 'no-space' } });
    expect(await listAttachmentPaths(folder)).toEqual([]);
    expect(store.troubles()).toEqual([]);
    await rm(join(folder, 'filler'));
    unwrapped(await store.keepAttachmentFiles('abcd', files));
    expect(await listAttachmentPaths(folder)).toEqual([pathOf('abcd', bytes)]);
  });

  it('makes the backup of the records all the same when the store has no room left', async (context) => {
    const place = await tempFolder();
    const folder = await fleetOf(['abcd']);
    const store = await openForTest(folder, { secondFolder: place });
    await addPhotographs(store, 'abcd', [10]);
    const bytes = Buffer.alloc(700_000, 'p');
    unwrapped(
      await store.keepAttachmentFiles('abcd', [{ name: attachmentFileName(contentHash(bytes), 'png'), bytes }]),
    );
    try {
      execFileSync('mount', ['-t', 'tmpfs', '-o', 'size=512k', 'tmpfs', place], { stdio: 'ignore' });
    } catch {
      return context.skip('Needs the superuser and tmpfs to make a small disk.');
    }
    onTestFinished(() => execFileSync('umount', ['-l', place]) && undefined);
    const made = unwrapped(await store.backUp('by-hand'));
    expect(made.secondCopy?.ok).toBe(true);
    const [second = ''] = await readdir(place);
    expect(await readdir(join(place, second))).toContain(made.id);
    expect((await listAttachmentPaths(join(place, second))).length).toBeLessThan(2);
    expect(await listAttachmentPaths(join(folder, 'backups'))).toHaveLength(2);
  });
});

describe('killed while adding', () => {
  it('leaves at worst files that no record names: what a record names is whole', async () => {
    const folder = await fleetOf(['abcd']);
    let named = 0;
    for (let round = 1; round <= 4; round++) {
      const child = spawn(
        process.execPath,
        ['--import', 'tsx', fileURLToPath(new URL('adding-child.ts', import.meta.url)), folder, String(round)],
        { stdio: ['ignore', 'pipe', 'inherit'] },
      );
      let said = '';
      child.stdout.on('data', (chunk) => {
        said += String(chunk);
        // Each round ends at another moment of another addition.
        if (said.split('\n').filter((line) => line.startsWith('added')).length >= round * 2) child.kill('SIGKILL');
      });
      await once(child, 'exit');
      const acknowledged = [...said.matchAll(/^added (\S+)$/gm)].map(([, hash]) => hash);
      expect(acknowledged.length).toBeGreaterThanOrEqual(round * 2);
      const store = await openForTest(folder);
      const vehicle = store.vehicles().get('abcd')?.data;
      if (!vehicle) throw new Error('It is there.');
      const hashes = vehicle.attachments.map(({ sha256 }) => sha256);
      expect(hashes).toEqual(expect.arrayContaining(acknowledged));
      for (const path of attachmentPathsOf(vehicle)) {
        const name = path.split('/').at(-1) ?? '';
        expect(typeof (await readAttachmentFile(join(folder, path), name))).toBe('object');
        expect((await stat(join(folder, path))).size).toBe(200_000);
      }
      expect(store.troubles()).toEqual([]);
      const lying = await readdir(join(folder, 'attachments', 'abcd'));
      expect(lying.filter((name) => name.includes('.tmp-'))).toEqual([]);
      named = hashes.length;
      await store.close();
    }
    expect(named).toBeGreaterThanOrEqual(20);
  }, 120_000);
});
