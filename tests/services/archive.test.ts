// The fleet saved as one file from the open desk, and opened again in an empty folder.
import { writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { afterEach, expect, it } from 'vitest';
import { openTestDesk, type TestDesk, takeInOf } from '../helpers/open-test-desk.ts';

let desk: TestDesk;
afterEach(() => desk.discard());

it('a fleet goes through one file into a folder of its own, and the first one stays', async () => {
  desk = await openTestDesk();
  const taken = await desk.ask('vehicle:take-in', takeInOf('LW-1', '1M8GDM9A3KP000009'));
  await desk.ask('lot:read', {});
  expect(await desk.ask('archive:write', { withKeys: false, withAttachments: true })).toMatchObject({
    vehicles: 1,
    missing: [],
  });
  await desk.ask('vehicle:withdraw', { id: taken.view.vehicle.id, baseRevision: taken.view.revision });
  expect((await desk.ask('archive:open', {})).isOpened).toBe(false);
  desk.setChosenFolder(join(desk.folder, 'second'));
  expect((await desk.ask('archive:open', {})).isOpened).toBe(true);
  expect((await desk.ask('lot:read', {})).map(({ identity }) => identity.stockNumber)).toEqual(['LW-1']);
  expect((await desk.ask('desk:read', {})).undo).toBeNull();
});

it('a file that is no archive is refused before any folder is asked for', async () => {
  desk = await openTestDesk();
  await writeFile(join(desk.folder, 'fleet-2026-03-18.zip'), 'no archive');
  const error = await desk.refused('archive:open', {});
  expect(error.code).toBe('bad-archive');
  expect(error.detail).toMatch(/cut off/);
});
