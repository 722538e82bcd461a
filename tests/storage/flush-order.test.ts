// In which order the disk is asked: a rename before the flush would leave an empty file after a power cut.
import fs from 'node:fs';
import { mkdtemp, open, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, it, onTestFinished } from 'vitest';

it('flushes the temp file, waits for it, renames, and then flushes the folder', async () => {
  const folder = await mkdtemp(join(tmpdir(), 'lotwright-test-'));
  const order: string[] = [];
  const { fsync, rename } = fs;
  const handle = await open(folder, 'r');
  const handleMethods = Object.getPrototypeOf(handle) as { sync: () => Promise<void> };
  await handle.close();
  const { sync } = handleMethods;
  onTestFinished(async () => {
    Object.assign(fs, { fsync, rename });
    handleMethods.sync = sync;
    await rm(folder, { recursive: true });
  });
  fs.fsync = ((fd: number, done: fs.NoParamCallback) => {
    order.push('file flush begins');
    const finish: fs.NoParamCallback = (error) => {
      order.push('file flush ends');
      done(error);
    };
    // Late enough that a caller who does not wait is found out.
    setTimeout(() => fsync(fd, finish), 50);
  }) as typeof fs.fsync;
  fs.rename = ((from: string, to: string, done: fs.NoParamCallback) => {
    order.push('rename');
    rename(from, to, done);
  }) as typeof fs.rename;
  handleMethods.sync = async function watched(this: unknown) {
    order.push('folder flush');
    await sync.call(this as { sync: () => Promise<void> });
  };
  // Loaded only now: the library takes its functions from node:fs once, when it is loaded.
  const { writeFileAtomically } = await import('../../app/storage/atomic-file.ts');
  await writeFileAtomically(join(folder, 'a.json'), Buffer.from('x'));
  expect(order).toEqual(['file flush begins', 'file flush ends', 'rename', 'folder flush']);
});
