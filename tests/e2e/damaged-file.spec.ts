// A fleet with something wrong in its folder still opens: damaged files are put aside and put right from the day's backup, files of a
// newer version stay as they are, a second desk may only read.
import { readFile, rm, stat, truncate, writeFile } from 'node:fs/promises';
import { userInfo } from 'node:os';
import path from 'node:path';
import type { Locator, Page } from '@playwright/test';
import { makeShop, makeVehicle } from '../helpers/vehicle-maker.ts';
import { add, expectSaved, goTo, lotRow, openVehicle } from './at-the-desk.ts';
import { expect, launchProgram, type Program, test } from './fixtures.ts';
import { records } from './lay-records.ts';

const fleet = ['whole', 'cut', 'zeroed', 'newer'].map((name, index) =>
  makeVehicle('2026-02-16', {
    id: `kept-${name}`,
    identity: { stockNumber: `D-${index + 1}`, model: name, vin: '', vinReason: 'plate not read yet' },
  }),
);

test.use({ fleet: records(makeShop(), fleet) });

function fileOf({ fleetFolder }: Program, name: string): string {
  return path.join(fleetFolder, 'vehicles', `kept-${name}.json`);
}

/** Does this to the folder while the program is closed; the day's backup has been made before. */
async function whileClosed(program: Program, damage: () => Promise<void>): Promise<void> {
  await expect(program.page.getByText(/^Last backup \d/)).toBeVisible();
  await program.close();
  await damage();
  await program.start();
}

/** From the status line to the list on Safety copies. */
async function openTroubles(page: Page): Promise<Locator> {
  await page.getByRole('button', { name: /could not be read$/ }).click();
  const troubles = page.getByRole('region', { name: /^Files that could not be used/ });
  await expect(troubles).toBeVisible();
  return troubles;
}

/** Looks at what the last good copy changes, then puts it back. */
async function putBack(page: Page, trouble: Locator, effect: string): Promise<void> {
  await trouble.getByRole('button', { name: /^Look at the copy of/ }).click();
  const look = page.getByRole('dialog', { name: /^Look at the copy of/ });
  await expect(look).toContainText(effect);
  await look.getByRole('button', { name: 'Put this copy back' }).click();
  await expect(look).toHaveCount(0);
  await expect(trouble).toHaveCount(0);
}

test('two damaged files do not stop the rest; both come back from the backup of the day', async ({ program }) => {
  await whileClosed(program, async () => {
    await truncate(fileOf(program, 'cut'), 200);
    const { size } = await stat(fileOf(program, 'zeroed'));
    await writeFile(fileOf(program, 'zeroed'), Buffer.alloc(size));
  });
  const { page } = program;
  await expect(lotRow(page, 'D-1')).toBeVisible();
  await expect(lotRow(page, 'D-4')).toBeVisible();
  await expect(lotRow(page, 'D-2')).toHaveCount(0);
  await expect(page.getByRole('button', { name: '2 files could not be read' })).toBeVisible();
  // The rest can be worked on.
  await openVehicle(page, 'D-1');
  await add(page, 'Add note', { Note: 'Written beside two damaged files.' });
  await expectSaved(page);

  const troubles = await openTroubles(page);
  await expect(troubles).toContainText('moved aside unchanged and never deleted');
  const cut = troubles.getByRole('row').filter({ hasText: 'kept-cut.json' });
  await expect(cut).toContainText('The file is cut off: its end is missing.');
  await expect(cut).toContainText(/\d{1,2} [A-Z][a-z]{2} \d{4} \d\d:\d\d/);
  const zeroed = troubles.getByRole('row').filter({ hasText: 'kept-zeroed.json' });
  await expect(zeroed).toContainText('The file holds nothing but zero bytes, as a power cut leaves it.');
  await putBack(page, cut, 'It comes back as the copy has it.');
  await putBack(page, zeroed, 'It comes back as the copy has it.');
  await expect(page.getByRole('button', { name: /could not be read$/ })).toHaveCount(0);

  await goTo(page, 'Lot');
  await openVehicle(page, 'D-2');
  await page.keyboard.press('Escape');
  await openVehicle(page, 'D-3');
  // It is put right in the folder, not on the screen alone.
  await program.close();
  await program.start();
  await expect(lotRow(program.page, 'D-2')).toBeVisible();
  await expect(lotRow(program.page, 'D-3')).toBeVisible();
  await expect(program.page.getByRole('button', { name: /could not be read$/ })).toHaveCount(0);
});

test('a file of a newer version stays as it is, and the person is told', async ({ program }) => {
  let bytes = Buffer.alloc(0);
  await whileClosed(program, async () => {
    const record = JSON.parse(await readFile(fileOf(program, 'newer'), 'utf8'));
    bytes = Buffer.from(
      JSON.stringify({ ...record, version: record.version + 7, data: { ...record.data, later: true } }),
    );
    await writeFile(fileOf(program, 'newer'), bytes);
  });
  const { page } = program;
  await expect(lotRow(page, 'D-1')).toBeVisible();
  await expect(lotRow(page, 'D-4')).toHaveCount(0);
  const newer = (await openTroubles(page)).getByRole('row').filter({ hasText: 'kept-newer.json' });
  await expect(newer).toContainText('This was written by a newer version of the program');
  await expect(newer).toContainText('It has not been touched.');
  await expect(newer.getByRole('button')).toHaveCount(0);
  await page.keyboard.press('Escape');
  // Also after the rest was worked on and the program was closed.
  await openVehicle(page, 'D-1');
  await program.close();
  expect(await readFile(fileOf(program, 'newer'))).toEqual(bytes);
  await program.start();
});

test('settings that cannot be read do not stop the fleet either', async ({ program }) => {
  await whileClosed(program, () => truncate(path.join(program.fleetFolder, 'shop.json'), 40));
  const { page } = program;
  await expect(lotRow(page, 'D-1')).toBeVisible();
  const shop = (await openTroubles(page)).getByRole('row').filter({ hasText: 'shop.json' });
  await putBack(page, shop, 'There is nothing of it now.');
  await goTo(page, 'Setup');
  await expect(page.getByRole('form', { name: 'Dealer' }).getByLabel('Name *')).toHaveValue('Test yard');
});

test('a second desk on the same folder may read it, is told who has it open, and changes nothing', async ({
  program,
}) => {
  await expect(lotRow(program.page, 'D-1')).toBeVisible();
  const dataFolder = `${program.dataFolder}-of-the-second-desk`;
  const second = await launchProgram({ fleetFolder: program.fleetFolder, dataFolder });
  try {
    const { page } = second;
    await expect(lotRow(page, 'D-1')).toBeVisible();
    await expect(page.getByRole('contentinfo')).toContainText(
      `Reading only: This fleet opens for reading only: ${userInfo().username} on `,
    );
    await expect(page.getByRole('contentinfo')).toContainText('Close it there to change it here.');
    const takeIn = page.getByRole('button', { name: 'Take in a vehicle' });
    await expect(takeIn).toHaveAttribute('aria-disabled', 'true');
    await expect(takeIn).toHaveAccessibleDescription(/This fleet opens for reading only/);
    await openVehicle(page, 'D-1');
    await expect(page.getByRole('button', { name: /^(Add|Correct|Book)/ })).toHaveCount(0);
    const answer = await page.evaluate(() =>
      window.lotwright.ask['vehicle:change']({
        id: 'kept-whole',
        baseRevision: 1,
        change: {
          kind: 'put',
          list: 'notes',
          item: { id: 'note-second', on: '2026-02-17', text: 'From the second desk.' },
        },
      }),
    );
    expect(answer).toMatchObject({ ok: false, error: { code: 'read-only' } });
  } finally {
    await second.close();
    await rm(dataFolder, { recursive: true, force: true });
  }
  // It has ended by itself, and without a fault.
  expect(second.errors).toEqual([]);
  // The first desk goes on as before.
  await openVehicle(program.page, 'D-1');
  await expect(program.page.getByRole('button', { name: 'Add note', exact: true })).toBeVisible();
});
