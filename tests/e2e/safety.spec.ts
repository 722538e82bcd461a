// Safety copies by keyboard: a damaged file is looked at and put back, one vehicle goes back to the morning, and that is taken back.
import { readdir, truncate } from 'node:fs/promises';
import path from 'node:path';
import type { Locator, Page } from '@playwright/test';
import { makeShop, makeVehicle } from '../helpers/vehicle-maker.ts';
import { add, expectSaved, lotRow, openVehicle, section } from './at-the-desk.ts';
import { expectAccessible } from './axe.ts';
import { expect, test } from './fixtures.ts';
import { records } from './lay-records.ts';

const fleet = ['one', 'two'].map((name, index) =>
  makeVehicle('2026-02-16', {
    id: `kept-${name}`,
    identity: { stockNumber: `B-${index + 1}`, model: name, vin: '', vinReason: 'plate not read yet' },
  }),
);
test.use({ fleet: records(makeShop(), fleet) });

async function press(button: Locator): Promise<void> {
  await button.focus();
  await button.press('Enter');
}

async function openSafety(page: Page): Promise<void> {
  await press(page.getByRole('contentinfo').getByRole('button', { name: 'Safety copies' }));
  await expect(page.getByRole('heading', { level: 1, name: 'Safety copies' })).toBeVisible();
}

test('a damaged file is looked at and put back, and one vehicle goes back and forth', async ({ program }) => {
  await expect(program.page.getByText(/^Last backup \d/)).toBeVisible();
  await openVehicle(program.page, 'B-1');
  await add(program.page, 'Add note', { Note: 'Written after the backup.' });
  await expectSaved(program.page);
  await program.close();
  await truncate(path.join(program.fleetFolder, 'vehicles', 'kept-two.json'), 200);
  await program.start();
  const { page } = program;
  await expect(lotRow(page, 'B-1')).toBeVisible();
  await openSafety(page);
  const troubles = page.getByRole('region', { name: /^Files that could not be used/ });
  await expect(troubles).toContainText('The file is cut off: its end is missing. Moved to quarantine/');
  await expectAccessible(page, 'safety copies');

  await press(troubles.getByRole('button', { name: /^Look at the copy of/ }));
  const copy = page.getByRole('dialog', { name: /^Look at the copy of B-2/ });
  await expect(copy).toContainText('There is nothing of it now. It comes back as the copy has it.');
  await press(copy.getByRole('button', { name: 'Put this copy back' }));
  await expect(troubles).toContainText('Every file of the fleet reads as it was written.');

  await press(page.getByRole('button', { name: /^Look into the backup of .*, the day’s own$/ }));
  const backup = page.getByRole('dialog', { name: /^Backup of/ });
  await expect(backup).toContainText('Every file in it was read just now and is as it was written.');
  await expect(backup).toContainText('changes 1 vehicle, brings back 0');
  await press(backup.getByRole('button', { name: /^Look at what changes for B-1/ }));
  await expect(backup.getByRole('row').filter({ hasText: 'Note: text' })).toContainText('Written after the backup.');
  await expectAccessible(page, 'safety copies');
  await press(backup.getByRole('button', { name: 'Put this vehicle back' }));
  await expect(backup).toHaveCount(0);
  await press(page.getByRole('button', { name: 'Take it back again' }));
  await expect(page.getByRole('button', { name: 'Take it back again' })).toHaveCount(0);
  await page.keyboard.press('Escape');
  await openVehicle(page, 'B-1');
  await expect(section(page, 'Notes')).toContainText('Written after the backup.');
});

test('a backup is made by hand and listed', async ({ page }) => {
  await openSafety(page);
  const backups = page.getByRole('region', { name: /^Backups/ });
  await press(backups.getByRole('button', { name: 'Make a backup now' }));
  await expect(backups.getByRole('row').filter({ hasText: 'asked for by a person' })).toContainText('2 vehicles');
  await expect(page.getByRole('region', { name: 'Second folder' })).toContainText('No second folder is chosen.');
});

test('a backup with a damaged file gives back all that is whole, one by one or together, and names the other', async ({
  program,
}) => {
  const { page } = program;
  await openVehicle(page, 'B-1');
  await add(page, 'Add note', { Note: 'Written before the backup.' });
  await expectSaved(page);
  await openSafety(page);
  await press(page.getByRole('button', { name: 'Make a backup now' }));
  await expect(page.getByRole('row').filter({ hasText: 'asked for by a person' })).toBeVisible();
  for (const stockNumber of ['B-1', 'B-2']) {
    await page.keyboard.press('Escape');
    await openVehicle(page, stockNumber);
    await add(page, 'Add note', { Note: 'Written after the backup.' });
    await expectSaved(page);
  }
  const backups = path.join(program.fleetFolder, 'backups');
  const [byHand = ''] = (await readdir(backups)).filter((name) => name.endsWith('by-hand'));
  await truncate(path.join(backups, byHand, 'vehicles', 'kept-two.json'), 200);

  await openSafety(page);
  const lookInto = page.getByRole('button', { name: /^Look into the backup of .*, asked for by a person$/ });
  await press(lookInto);
  const backup = page.getByRole('dialog', { name: /^Backup of/ });
  await expect(backup).toContainText('One file of this backup is not as written and cannot be put back.');
  const bad = backup.getByRole('row').filter({ hasText: 'B-2' });
  await expect(bad).toContainText('The file is cut off: its end is missing.');
  await expect(bad).toContainText('what is there now stays as it is');
  await expectAccessible(page, 'a damaged backup');
  await press(backup.getByRole('button', { name: /^Look at what changes for B-1/ }));
  await press(backup.getByRole('button', { name: 'Put this vehicle back' }));
  await expect(backup).toHaveCount(0);
  await press(page.getByRole('button', { name: 'Take it back again' }));
  await expect(page.getByRole('button', { name: 'Take it back again' })).toHaveCount(0);

  await press(lookInto);
  await press(backup.getByRole('button', { name: 'Put back all that is whole, leave 1 as it is' }));
  await expect(page.getByText(/What is damaged in the backup stayed as it is now\.$/).first()).toBeVisible();
  await page.keyboard.press('Escape');
  await openVehicle(page, 'B-1');
  await expect(section(page, 'Notes')).not.toContainText('Written after the backup.');
  await expect(section(page, 'Notes')).toContainText('Written before the backup.');
  await page.keyboard.press('Escape');
  await openVehicle(page, 'B-2');
  await expect(section(page, 'Notes')).toContainText('Written after the backup.');
});
