// A purchase list through the running program: chosen, tried out, and its good row taken in.
import { readdir } from 'node:fs/promises';
import path from 'node:path';
import { expectAccessible } from './axe.ts';
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

test('five thousand rows are moved through by keys, and what is wrong is jumped to', async ({ page }) => {
  test.setTimeout(120_000);
  const count = 5_000;
  const wrong = [17, 2_600, 4_999];
  const rows = Array.from(
    { length: count },
    (_, index) => `ZZ${index + 1};;Merrowick;2026-03-01;${wrong.includes(index + 1) ? '' : '6400'}`,
  );
  const buffer = Buffer.from(['Stock;VIN;Make;Bought;Price', ...rows].join('\n'));
  await page.getByRole('heading', { level: 1, name: 'Lot' }).waitFor();
  await page.keyboard.press('n');
  await page.getByRole('button', { name: /^Take in a purchase list/ }).click();
  await page.locator('input[type=file]').setInputFiles({ name: 'long.csv', mimeType: 'text/csv', buffer });
  await page.getByLabel(/^Reason to keep a VIN/).fill('Plates not read yet');
  await expect(page.getByText('4997 rows can be taken in.').first()).toBeVisible({ timeout: 30_000 });

  const grid = page.getByRole('grid', { name: /^Rows of the list/ });
  await expect(grid).toHaveAttribute('aria-rowcount', String(count + 1));
  const row = (number: number) => grid.locator(`tr[aria-rowindex="${number + 1}"]`);
  // Only what is near the window is there.
  expect(await grid.getByRole('row').count()).toBeLessThan(120);
  await row(1).focus();
  await page.keyboard.press('End');
  await expect(row(count)).toBeFocused();
  await expect(row(count)).toBeInViewport();
  await page.keyboard.press('Home');
  await expect(row(1)).toBeFocused();
  await page.keyboard.press('ArrowDown');
  await expect(row(2)).toBeFocused();
  await page.keyboard.press('Space');
  await expect(row(2)).toHaveAttribute('aria-selected', 'false');
  await expect(page.getByRole('button', { name: 'Take in 4996 vehicles' })).toBeVisible();
  for (const number of wrong) {
    await page.keyboard.press('Control+ArrowDown');
    await expect(row(number)).toBeFocused();
    await expect(row(number)).toBeInViewport();
    await expect(row(number)).toContainText('The price is missing');
  }
  await page.getByRole('button', { name: 'Previous row with something against it' }).click();
  await expect(row(2_600)).toBeFocused();
  await expectAccessible(page, 'a long purchase list');
});
