// A purchase list through the running program: chosen, tried out, and its good row taken in.
import { readdir } from 'node:fs/promises';
import path from 'node:path';
import { expect, test } from './fixtures.ts';

const list = [
  'Stock;VIN;Marke;Kaufdatum;Preis',
  'ZZ1;;Merrowick;01.03.2026;6.400,50',
  'ZZ2;;Merrowick;02.03.2026;',
].join('\r\n');

test.use({ fleet: 'sample' });

test('a purchase list is taken in where nothing stands against it', async ({ page }) => {
  await page.getByRole('heading', { level: 1, name: 'Lot' }).waitFor();
  await page.keyboard.press('n');
  await page.getByRole('button', { name: /^Take in a purchase list/ }).click();
  const file = { name: 'list.csv', mimeType: 'text/csv', buffer: Buffer.from(list, 'latin1') };
  await page.locator('input[type=file]').setInputFiles(file);
  await expect(page.getByText('columns separated by semicolons')).toBeVisible();
  await page.getByLabel(/^Reason to keep a VIN/).fill('Plate not read yet');
  await expect(page.getByText('1 row can be taken in.').first()).toBeVisible();
  await expect(page.getByText('The price is missing').first()).toBeVisible();
  await page.getByRole('button', { name: 'Take in 1 vehicle' }).click();
  await expect(page.getByText('1 vehicle was taken in.').first()).toBeVisible();
  await page.getByRole('searchbox').fill('ZZ1');
  await expect(page.getByRole('rowheader', { name: /ZZ1/ })).toBeVisible();
});

test('a whole list is taken back by one F9, from inside a field, and brought back by another', async ({
  page,
  program,
}) => {
  const count = 30;
  const rows = Array.from({ length: count }, (_, index) => `ZZ${index + 100};;Merrowick;2026-03-01;6400`);
  const buffer = Buffer.from(['Stock;VIN;Make;Bought;Price', ...rows].join('\n'));
  const files = async () => (await readdir(path.join(program.fleetFolder, 'vehicles'))).length;
  const before = await files();
  await page.getByRole('heading', { level: 1, name: 'Lot' }).waitFor();
  await page.keyboard.press('n');
  await page.getByRole('button', { name: /^Take in a purchase list/ }).click();
  await page.locator('input[type=file]').setInputFiles({ name: 'list.csv', mimeType: 'text/csv', buffer });
  await page.getByLabel(/^Reason to keep a VIN/).fill('Plates not read yet');
  await page.getByRole('button', { name: `Take in ${count} vehicles` }).click();
  await expect(page.getByRole('heading', { level: 1, name: 'Lot' })).toBeVisible();
  const search = page.getByRole('searchbox');
  await search.fill('Merrowick ZZ1');
  const found = page.getByRole('rowheader', { name: /ZZ1/ });
  await expect(found).toHaveCount(count);
  expect(await files()).toBe(before + count);

  await search.focus();
  await page.keyboard.press('F9');
  await expect(found).toHaveCount(0);
  await expect(page.getByText(/^Undone: 30 vehicles taken in from a list/).first()).toBeVisible();
  expect(await files()).toBe(before);
  await expect(search).toHaveValue('Merrowick ZZ1');

  await page.keyboard.press('Shift+F9');
  await expect(found).toHaveCount(count);
  expect(await files()).toBe(before + count);
});
