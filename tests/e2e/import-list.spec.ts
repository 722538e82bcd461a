// A purchase list through the running program: chosen, tried out, and its good row taken in.
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
