// A working copy of a sample fleet: records only, and never over something that is there.
import { mkdir, readdir, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { copySampleFleet } from '../../app/storage/copy-sample-fleet.ts';
import { contentsOf, fleetOf, openForTest, tempFolder, textOf } from './fleet-fixture.ts';
import { aShop, aVehicle } from './fleet-records-fixture.ts';

it('copies the records and nothing else, and the copy opens', async () => {
  const from = await fleetOf(['abcd', 'efgh']);
  const before = await contentsOf(from);
  const to = join(await tempFolder(), 'fleets', 'sample');
  expect(await copySampleFleet(from, to)).toEqual({ ok: true, value: 2 });
  expect((await readdir(to)).sort()).toEqual(['shop.json', 'vehicles']);
  expect(await textOf(to, 'vehicles/abcd.json')).toBe(await textOf(from, 'vehicles/abcd.json'));
  const store = await openForTest(to, { createFolder: false });
  expect([store.shop()?.data, store.vehicles().get('efgh')?.data]).toEqual([aShop(), aVehicle('efgh')]);
  expect(await contentsOf(from)).toEqual(before);
});

it('takes the place of an empty folder, but of nothing else', async () => {
  const from = await fleetOf(['abcd']);
  const to = join(await tempFolder(), 'to');
  await mkdir(to);
  expect(await copySampleFleet(from, to)).toMatchObject({ ok: true });
  await writeFile(join(to, 'vehicles', 'abcd.json'), 'worked on since');
  expect(await copySampleFleet(from, to)).toMatchObject({ ok: false });
  expect(await textOf(to, 'vehicles/abcd.json')).toBe('worked on since');
});

it('leaves nothing behind when the sample is not there', async () => {
  const parent = await tempFolder();
  expect(await copySampleFleet(join(parent, 'none'), join(parent, 'to'))).toMatchObject({
    error: { code: 'not-found' },
  });
  const noShop = join(parent, 'no-shop');
  await mkdir(join(noShop, 'vehicles'), { recursive: true });
  expect(await copySampleFleet(noShop, join(parent, 'to'))).toMatchObject({ ok: false });
  expect(await readdir(parent)).toEqual(['no-shop']);
});
