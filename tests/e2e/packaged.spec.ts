// The program as it is packed for people: started, worked with, closed, exchanged for a newer one. Its fuses are set as in
// electron-builder.yml but for one: without the inspector's fuse nothing can drive it from outside.
import { execFile } from 'node:child_process';
import { existsSync } from 'node:fs';
import { mkdir, mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { promisify } from 'node:util';
import { _electron, type Page } from '@playwright/test';
import { add, expectSaved, lotRow, openVehicle, section } from './at-the-desk.ts';
import { expect, test } from './fixtures.ts';

const projectFolder = path.join(import.meta.dirname, '..', '..');
const note = 'Spare key lies in the drawer';

test.skip(process.platform !== 'linux' || process.arch !== 'x64', 'The packer of this project packs for Linux x64.');

/** Packs the build that is under test as this version; answers the folder as a person would unpack it. */
async function pack(into: string, version: string): Promise<string> {
  const packer = path.join(projectFolder, 'app', 'dev', 'package.mjs');
  const args = [packer, '--folder-only', '--for-driver', '--into', into, '--version', version];
  await promisify(execFile)(process.execPath, args, { cwd: projectFolder });
  return path.join(into, 'linux-unpacked');
}

/** Starts the packed program as somebody whose settings lie in `home`, works with its window, and closes it. */
async function withPacked(folder: string, home: string, work: (page: Page) => Promise<void>): Promise<void> {
  const app = await _electron.launch({
    executablePath: path.join(folder, 'lotwright'),
    args: ['--await-driver', ...(process.getuid?.() === 0 ? ['--no-sandbox', '--disable-gpu'] : [])],
    env: { ...process.env, XDG_CONFIG_HOME: home, HOME: home } as Record<string, string>,
    timeout: 20_000,
  });
  const child = app.process();
  try {
    expect(await app.evaluate(({ app: running }) => running.isPackaged)).toBe(true);
    await work(await app.firstWindow({ timeout: 20_000 }));
    await app.close();
    expect(child.exitCode, 'status of the program after its window was closed').toBe(0);
  } finally {
    if (child.exitCode === null) child.kill('SIGKILL');
  }
}

test('what was entered in the packed program is there after a restart, after an upgrade and after it was taken off', async () => {
  test.setTimeout(120_000);
  const place = await mkdtemp(path.join(tmpdir(), 'lotwright-packed-'));
  const home = path.join(place, 'home');
  await mkdir(home);
  try {
    const first = await pack(path.join(place, 'first'), '0.1.0');
    let stockNumber = '';
    await withPacked(first, home, async (page) => {
      await expect(page.getByText('Invented sample')).toBeVisible();
      await expect(page.getByText('Version 0.1.0')).toBeVisible();
      const name = (await page.getByRole('row').getByRole('link').first().textContent()) ?? '';
      stockNumber = /\S+/.exec(name)?.[0]?.replace(/,$/, '') ?? '';
      await openVehicle(page, stockNumber);
      await add(page, 'Add note', { Note: note });
      await expectSaved(page);
    });
    const isThere = async (page: Page) => {
      await expect(lotRow(page, stockNumber)).toBeVisible();
      await openVehicle(page, stockNumber);
      await expect(section(page, 'Notes')).toContainText(note);
    };
    await withPacked(first, home, isThere);
    // Taken off, and a newer one put in another place: the person's data is in neither folder.
    await rm(first, { recursive: true });
    expect(existsSync(path.join(home, 'Lotwright', 'sample-fleet', 'vehicles'))).toBe(true);
    const second = await pack(path.join(place, 'second'), '0.1.1');
    await withPacked(second, home, async (page) => {
      await expect(page.getByText('Version 0.1.1')).toBeVisible();
      await isThere(page);
    });
  } finally {
    // The processes of the page go after the program's own.
    await rm(place, { recursive: true, force: true, maxRetries: 20, retryDelay: 100 });
  }
});
