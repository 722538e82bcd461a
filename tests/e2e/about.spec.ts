// What the program tells about itself: its licences, and a report of a fault in which nothing of anybody stands.
import { readdir, readFile } from 'node:fs/promises';
import os from 'node:os';
import path from 'node:path';
import { add, expectSaved, openVehicle } from './at-the-desk.ts';
import { expectAccessible } from './axe.ts';
import { expect, test } from './fixtures.ts';

test('the About box names versions, packages and their licence texts, and is reached by key', async ({ page }) => {
  await page.getByRole('row').first().waitFor();
  await page.keyboard.press('F1');
  const about = page.getByRole('dialog', { name: 'About Lotwright' });
  await expect(about).toContainText(/Electron \d+/);
  for (const name of ['react', 'zod', 'pdfkit', 'papaparse', 'date-holidays', 'Source Sans 3'])
    await expect(about.getByText(new RegExp(`^${name} `)).first()).toBeVisible();
  await about.getByText(/^date-holidays \d/).click();
  await expect(about).toContainText('CC BY-SA 3.0');
  await about.getByText(/^Source Sans 3 /).click();
  await expect(about).toContainText('SIL OPEN FONT LICENSE');
  await expectAccessible(page, 'About box');
  await page.keyboard.press('Escape');
  await expect(about).toHaveCount(0);
  await page.keyboard.press('?');
  await page.getByRole('dialog', { name: 'Keys' }).getByRole('button', { name: 'About Lotwright' }).click();
  await expect(about).toBeVisible();
});

test('a report of a session holds no VIN, no amount and no name, and goes onto the clipboard', async ({
  page,
  program,
}) => {
  const first = page.getByRole('row').getByRole('link').first();
  const stockNumber = /[^\s,]+/.exec((await first.textContent()) ?? '')?.[0] ?? '';
  await openVehicle(page, stockNumber);
  await add(page, 'Add note', { Note: 'Radio code 7391 for Torvald, 4321.09' });
  await expectSaved(page);
  await page.keyboard.press('Shift+F1');
  const dialog = page.getByRole('dialog', { name: 'Report of a fault' });
  const field = dialog.getByRole('textbox', { name: 'The report' });
  await expect(field).toHaveValue(/vehicle:change done/);
  await expect(field).toHaveValue(/Vehicles: \d+/);
  await dialog.getByRole('button', { name: 'Copy the report' }).click();
  await expect(page.getByText('The report is on the clipboard.').first()).toBeVisible();
  const copied = await program.app.evaluate(({ clipboard }) => clipboard.readText());
  expect(copied).toBe(await field.inputValue());

  const log = await readFile(path.join(program.dataFolder, 'lotwright.log'), 'utf8');
  const folder = path.join(program.fleetFolder, 'vehicles');
  const records = await Promise.all((await readdir(folder)).map((name) => readFile(path.join(folder, name), 'utf8')));
  const vins = records.flatMap((record) =>
    [...record.matchAll(/"vin":\s*"([^"]{5,})"/g)].map((found) => found[1] ?? ''),
  );
  const amounts = records.flatMap((record) =>
    [...record.matchAll(/Cents":\s*(\d{5,})/g)].map((found) => found[1] ?? ''),
  );
  expect(vins.length).toBeGreaterThan(10);
  expect(amounts.length).toBeGreaterThan(10);
  for (const text of [copied, log]) {
    for (const secret of [...vins, ...amounts, '7391', '4321.09', 'Torvald', program.dataFolder, program.fleetFolder])
      expect(text).not.toContain(secret);
    if (os.userInfo().username !== 'root') expect(text).not.toContain(os.userInfo().username);
  }
});
