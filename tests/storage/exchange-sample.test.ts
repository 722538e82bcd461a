// The worked-on copy of the sample is put aside whole and a new one takes its place; where anything fails, all is as it was.
import { mkdir, readdir, rename, rm, symlink, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { copySampleFleet } from '../../app/storage/copy-sample-fleet.ts';
import { prepareSample } from '../../app/storage/exchange-sample.ts';
import { contentsOf, fleetOf, tempFolder, textOf, unwrapped } from './fleet-fixture.ts';

const at = '2026-03-18T09:00:00.000Z';
const putAside = 'sample-fleet-put-aside-2026-03-18T09-00-00';

async function places() {
  const shipped = await fleetOf(['abcd']);
  const parent = await tempFolder();
  const copy = join(parent, 'sample-fleet');
  unwrapped(await copySampleFleet(shipped, copy));
  await writeFile(join(copy, 'vehicles', 'abcd.json'), 'worked on since');
  await mkdir(join(copy, 'backups'));
  return { shipped, parent, copy, before: await contentsOf(copy) };
}

it('puts the old one aside as it is, under day and time, and the new one is as shipped', async () => {
  const { shipped, parent, copy, before } = await places();
  const takePlace = unwrapped(await prepareSample(shipped, copy));
  expect(await contentsOf(copy)).toEqual(before);
  expect(unwrapped(await takePlace(at)).putAside).toBe(join(parent, putAside));
  expect(await contentsOf(join(parent, putAside))).toEqual(before);
  expect(await textOf(copy, 'vehicles/abcd.json')).toBe(await textOf(shipped, 'vehicles/abcd.json'));
  expect((await readdir(parent)).sort()).toEqual(['sample-fleet', putAside]);
});

it('does not replace one that was put aside in the same second', async () => {
  const { shipped, parent, copy } = await places();
  await mkdir(join(parent, putAside));
  const takePlace = unwrapped(await prepareSample(shipped, copy));
  expect(unwrapped(await takePlace(at)).putAside).toBe(join(parent, `${putAside}-2`));
});

it('can be undone, and then nothing of the new one is left', async () => {
  const { shipped, parent, copy, before } = await places();
  const exchanged = unwrapped(await unwrapped(await prepareSample(shipped, copy))(at));
  unwrapped(await exchanged.undo());
  expect(await contentsOf(copy)).toEqual(before);
  expect(await readdir(parent)).toEqual(['sample-fleet']);
});

it('brings the old one back when the new one cannot take its place', async () => {
  const { shipped, parent, copy, before } = await places();
  const takePlace = unwrapped(await prepareSample(shipped, copy));
  const [unfinished = ''] = (await readdir(parent)).filter((name) => name.startsWith('.unfinished-'));
  await rename(join(parent, unfinished), join(parent, 'gone'));
  expect(await takePlace(at)).toMatchObject({ ok: false, error: { code: 'folder-gone' } });
  expect(await contentsOf(copy)).toEqual(before);
  expect((await readdir(parent)).sort()).toEqual(['gone', 'sample-fleet']);
});

it('touches nothing when the new one cannot be made, and clears away what a killed attempt left', async () => {
  const { shipped, parent, copy, before } = await places();
  unwrapped(await prepareSample(shipped, copy));
  await rm(join(shipped, 'shop.json'));
  expect(await prepareSample(shipped, copy)).toMatchObject({ ok: false });
  expect(await contentsOf(copy)).toEqual(before);
  expect(await readdir(parent)).toEqual(['sample-fleet']);
});

it('does not follow a link, which could lead to somebody’s own fleet', async () => {
  const { shipped, parent, copy } = await places();
  await rename(copy, join(parent, 'own'));
  await symlink(join(parent, 'own'), copy);
  expect(await prepareSample(shipped, copy)).toMatchObject({ ok: false });
  expect((await readdir(parent)).sort()).toEqual(['own', 'sample-fleet']);
});
