// This desk's settings, kept by the real electron-store in real folders (it needs no Electron once it is told where to write).
import { mkdir, readdir, readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { beforeAll, expect, it } from 'vitest';
import {
  type DeskStoreClass,
  defaultDeskSettings,
  loadDeskStoreClass,
  openDeskSettings,
} from '../../app/storage/desk-settings.ts';
import { tempFolder, testClock } from './fleet-fixture.ts';

let StoreClass: DeskStoreClass;
beforeAll(async () => {
  // Outside Electron its package gives a path; this keeps it from looking for (and fetching) the program itself.
  process.env.ELECTRON_OVERRIDE_DIST_PATH = '.';
  StoreClass = await loadDeskStoreClass();
});
const openIn = (folder: string) => openDeskSettings({ folder, clock: testClock(), StoreClass });

it('starts with the usual settings and keeps what is changed', async () => {
  const folder = await tempFolder();
  const first = openIn(folder);
  expect([first.get(), first.notice]).toEqual([defaultDeskSettings, null]);
  const window = { x: -8, y: 20, width: 1200, height: 800, isMaximised: true };
  expect(first.change({ theme: 'dark', window })).toMatchObject({ ok: true });
  const second = openIn(folder);
  expect([second.get(), second.notice]).toEqual([{ ...defaultDeskSettings, theme: 'dark', window }, null]);
});

it('refuses a value that does not hold and keeps the earlier one', async () => {
  const settings = openIn(await tempFolder());
  expect(settings.change({ zoomPercent: 5 })).toMatchObject({ ok: false, error: { code: 'invalid' } });
  expect(settings.get().zoomPercent).toBe(100);
});

it.each([['{"theme": "dark"'], ['[]'], ['null'], ['"dark"'], [''], ['\u0000\u0000\u0000']])(
  'sets a broken file aside (%j), says so, and starts',
  async (broken) => {
    const folder = await tempFolder();
    await writeFile(join(folder, 'desk.json'), broken);
    const settings = openIn(folder);
    expect(settings.get()).toEqual(defaultDeskSettings);
    expect(settings.notice).toContain('desk-broken-');
    const aside = (await readdir(folder)).find((name) => name.startsWith('desk-broken-')) ?? '';
    expect(await readFile(join(folder, aside), 'utf8')).toBe(broken);
    expect(settings.change({ theme: 'light' })).toMatchObject({ ok: true });
    expect(openIn(folder)).toMatchObject({ notice: null });
    expect(openIn(folder).get().theme).toBe('light');
  },
);

it('keeps each setting that holds when one does not, and a copy of the file as it was', async () => {
  const folder = await tempFolder();
  const broken = JSON.stringify({ theme: 'mauve', zoomPercent: 125, lastFleetFolder: '/fleet' });
  await writeFile(join(folder, 'desk.json'), broken);
  const settings = openIn(folder);
  expect(settings.get()).toEqual({ ...defaultDeskSettings, zoomPercent: 125, lastFleetFolder: '/fleet' });
  expect(settings.notice).not.toBeNull();
  const aside = (await readdir(folder)).find((name) => name.startsWith('desk-broken-')) ?? '';
  expect(await readFile(join(folder, aside), 'utf8')).toBe(broken);
});

it('carries along the keys of a newer version', async () => {
  const folder = await tempFolder();
  await writeFile(join(folder, 'desk.json'), JSON.stringify({ theme: 'dark', sound: 'quiet' }));
  const settings = openIn(folder);
  expect(settings.notice).toBeNull();
  settings.change({ theme: 'light' });
  expect(JSON.parse(await readFile(join(folder, 'desk.json'), 'utf8'))).toMatchObject({
    theme: 'light',
    sound: 'quiet',
  });
});

it('starts without its file when that cannot be had, and says that changes do not last', async () => {
  const folder = await tempFolder();
  await mkdir(join(folder, 'desk.json'));
  const settings = openIn(folder);
  expect(settings.get()).toEqual(defaultDeskSettings);
  expect(settings.notice).toContain('cannot be kept');
  expect(settings.change({ theme: 'dark' })).toMatchObject({ ok: false });
  expect(settings.get().theme).toBe('dark');
});
