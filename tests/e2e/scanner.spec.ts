// A bar code scanner that types, on the running program: vehicles, sheets, what nobody knows, and codes that begin like a command.
import { readdir } from 'node:fs/promises';
import path from 'node:path';
import type { Page } from '@playwright/test';
import { sheetMark } from '../../app/domain/sheets/sheet-mark.ts';
import { goTo, lotRow, openVehicle } from './at-the-desk.ts';
import { expect, type Program, test } from './fixtures.ts';
import { readPrinted } from './printed-sheets.ts';
import { scan } from './scanner.ts';

test.use({ fleet: 'sample' });

const problem = (page: Page) => page.getByRole('region', { name: 'Messages' }).getByRole('alert');

/** Prints the first sheet of a vehicle and gives back the mark at its foot. */
async function printOne(program: Program, stockNumber: string): Promise<string> {
  const { page } = program;
  await openVehicle(page, stockNumber);
  await page.getByRole('button', { name: 'Job sheet', exact: true }).click();
  await expect(page.getByText(/^Written: /).first()).toBeVisible();
  const [fileName = ''] = (await readdir(path.join(program.fleetFolder, 'sheets'))).filter((name) =>
    name.endsWith('.pdf'),
  );
  return (/mark (\w{3} \w{3})/.exec(await readPrinted(program, fileName))?.[1] ?? '').replace(' ', '');
}

test('the VIN and the stock number of a vehicle open it', async ({ page, program }) => {
  const stockNumber = (await page.getByRole('rowheader').getByRole('link').nth(2).textContent()) ?? '';
  await openVehicle(page, stockNumber);
  const vin = (await page.getByTitle('VIN', { exact: true }).textContent())?.replace(/\s/g, '') ?? '';
  expect(vin).toHaveLength(17);
  await goTo(page, 'Waiting');
  await scan(program, vin);
  await expect(page.getByRole('heading', { level: 1 })).toContainText(stockNumber);
  await goTo(page, 'Setup');
  await scan(program, stockNumber);
  await expect(page.getByRole('heading', { level: 1 })).toContainText(stockNumber);
});

test('a VIN that nobody has is offered to be taken in, filled in', async ({ page, program }) => {
  await expect(page.getByRole('rowheader').first()).toBeVisible();
  await scan(program, '1M8GDM9AXKP042788');
  await page.getByRole('region', { name: 'Messages' }).getByRole('button', { name: 'Take it in' }).click();
  await expect(page.getByLabel('VIN', { exact: true })).toHaveValue('1M8GDM9AXKP042788');
  await expect(page.getByLabel('Model year', { exact: true }).first()).not.toHaveValue('');
});

test('the mark of a sheet opens its vehicle and tells which sheet it is', async ({ page, program }) => {
  const stockNumber = (await page.getByRole('rowheader').getByRole('link').nth(1).textContent()) ?? '';
  const mark = await printOne(program, stockNumber);
  expect(mark).toHaveLength(6);
  await goTo(page, 'Money');
  await scan(program, mark);
  await expect(page.getByRole('heading', { level: 1 })).toContainText(stockNumber);
  const said = page.getByText(/^Job sheet, .* Printed .* by .*\. Current: nothing has changed since\.$/).last();
  await expect(said).toContainText(stockNumber);
  await page.getByRole('button', { name: 'Show as it is now' }).click();
  await expect(page.getByRole('article', { name: /^Job sheet/ })).toContainText(stockNumber);

  const unknown = sheetMark({ kind: 'job-sheet', subjectId: 'nobody', revision: 1, printedAt: '2026-01-01T00:00:00Z' });
  await scan(program, unknown);
  await expect(problem(page)).toContainText('No sheet with the mark');
});

test('a code that begins with N takes nothing in; the key itself still does', async ({ page, program }) => {
  await expect(page.getByRole('rowheader').first()).toBeVisible();
  for (const code of ['N-7734', '/7734', '?7734']) {
    await scan(program, code);
    await expect(problem(page).filter({ hasText: `“${code}”` })).toBeVisible();
    await expect(page.getByRole('heading', { level: 1, name: 'Lot' })).toBeVisible();
    await expect(page.getByRole('dialog')).toHaveCount(0);
    await expect(page.getByRole('searchbox')).not.toBeFocused();
  }
  await page.keyboard.press('n');
  await expect(page.getByLabel('VIN', { exact: true })).toBeFocused();
});

test('in Waiting a code that begins with C writes no chase', async ({ page, program }) => {
  await goTo(page, 'Waiting');
  await page.getByRole('table').getByRole('link').first().focus();
  await scan(program, 'C-7734');
  await expect(problem(page)).toContainText('“C-7734”');
  await expect(page.getByRole('dialog')).toHaveCount(0);
  await page.keyboard.press('c');
  await expect(page.getByRole('dialog')).toBeVisible();
});

test('in a field a scan is text', async ({ page, program }) => {
  const row = page.getByRole('rowheader').getByRole('link').nth(2);
  const stockNumber = (await row.textContent()) ?? '';
  await page.getByRole('searchbox').focus();
  await scan(program, stockNumber);
  await expect(page.getByRole('searchbox')).toHaveValue(stockNumber);
  await expect(page.getByRole('heading', { level: 1, name: 'Lot' })).toBeVisible();
  // Enter goes from the search to what it found, as ever.
  await expect(lotRow(page, stockNumber).getByRole('link')).toBeFocused();

  await page.keyboard.press('n');
  const vin = page.getByLabel('VIN', { exact: true });
  await expect(vin).toBeFocused();
  await scan(program, '1M8GDM9AXKP042788');
  await expect(vin).toHaveValue('1M8GDM9AXKP042788');
  await expect(vin).not.toBeFocused();
  await expect(problem(page)).toHaveCount(0);
});
