// Sheets in the running program: several vehicles and kinds at once, sheets of the whole fleet, cancelling, and finding a sheet by its mark.
import { readdir, readFile } from 'node:fs/promises';
import path from 'node:path';
import { checkSoundness, pageTexts } from '../helpers/read-pdf.ts';
import { goTo } from './at-the-desk.ts';
import { expectAccessible } from './axe.ts';
import { expect, type Program, test } from './fixtures.ts';
import { readPrinted } from './printed-sheets.ts';

test.use({ fleet: 'sample' });

async function printedFiles({ fleetFolder }: Program): Promise<readonly string[]> {
  const names = await readdir(path.join(fleetFolder, 'sheets')).catch(() => []);
  return names.filter((name) => name.endsWith('.pdf'));
}

test('several vehicles are printed in one file, and the choice is remembered', async ({ page, program }) => {
  await goTo(page, 'Sheets');
  await page.getByLabel('Show', { exact: true }).selectOption({ label: 'Waiting for others' });
  await page.getByRole('button', { name: 'Choose all shown' }).click();
  const chosen = Number((await page.getByText(/^\d+ chosen$/).textContent())?.split(' ')[0]);
  expect(chosen).toBeGreaterThan(3);
  await page.getByText('More kinds at once').click();
  await page.getByLabel('Readiness sheet', { exact: true }).check();
  await page.getByLabel('All in one file').check();
  await page.getByRole('button', { name: `Save ${chosen * 2} as PDF` }).click();
  const written = page.getByRole('region', { name: 'Written just now' });
  await expect(written.getByText(`${chosen * 2} sheets`)).toBeVisible();
  const [fileName = '', ...others] = await printedFiles(program);
  expect(others).toEqual([]);
  const bytes = await readFile(path.join(program.fleetFolder, 'sheets', fileName));
  checkSoundness(bytes);
  expect(pageTexts(bytes).filter((text) => text.includes('Page 1 of'))).toHaveLength(chosen * 2);

  await goTo(page, 'Lot');
  await goTo(page, 'Sheets');
  await expect(page.getByText('More kinds at once: 1')).toBeVisible();
});

test('the fleet list is seen with its strips before it is printed', async ({ page, program }) => {
  await goTo(page, 'Sheets');
  await page.getByLabel('Sheet', { exact: true }).selectOption({ label: 'Fleet list' });
  const paper = page.getByRole('article', { name: /^Fleet list/ });
  await expect(paper.getByRole('img', { name: /^Hold strip\. Held \d+ days/ }).first()).toBeVisible();
  await expectAccessible(page, 'the fleet list on the screen');
  await page.getByRole('button', { name: 'Save as PDF' }).click();
  await expect(page.getByRole('region', { name: 'Written just now' })).toBeVisible();
  const [fileName = ''] = await printedFiles(program);
  expect(await readPrinted(program, fileName)).toContain('the longest held first');
});

test('making many sheets can be cancelled; what is there is whole and listed', async ({ page, program }) => {
  await goTo(page, 'Sheets');
  await page.getByLabel('Show', { exact: true }).selectOption({ label: 'All' });
  await page.getByRole('button', { name: 'Choose all shown' }).click();
  await page.getByText('More kinds at once').click();
  await page.getByLabel('Readiness sheet', { exact: true }).check();
  await page.getByRole('button', { name: /^Save \d+ as PDF$/ }).click();
  await page.getByRole('button', { name: 'Cancel', exact: true }).click();
  await expect(page.getByRole('status').filter({ hasText: /^Cancelled\./ })).toBeAttached();
  await expect(page.getByRole('progressbar')).toHaveCount(0);
  const files = await printedFiles(program);
  expect(files.length).toBeLessThan(180);
  for (const fileName of files) {
    checkSoundness(await readFile(path.join(program.fleetFolder, 'sheets', fileName)));
    await expect(page.getByText(fileName, { exact: true })).toBeVisible();
  }
});

test('a mark tells which sheet it is and whether it is still the current one', async ({ page, program }) => {
  await goTo(page, 'Sheets');
  await page
    .getByRole('listbox', { name: /^Vehicles/ })
    .getByRole('option')
    .first()
    .click();
  await page.getByRole('button', { name: 'Save as PDF' }).click();
  await expect(page.getByRole('region', { name: 'Written just now' })).toBeVisible();
  const [fileName = ''] = await printedFiles(program);
  const mark = /mark (\w{3} \w{3})/.exec(await readPrinted(program, fileName))?.[1] ?? '';
  const field = page.getByRole('textbox', { name: 'Mark on a sheet' });
  const lookup = page.getByRole('region', { name: 'Mark on a sheet' });
  await field.fill(mark.toLowerCase());
  await field.press('Enter');
  await expect(lookup.getByText('Current: nothing has changed since.')).toBeVisible();
  await expect(lookup.getByText(/^Job sheet, Q\d+/)).toBeVisible();
  await field.fill(`${mark.slice(0, 6)}${mark.endsWith('2') ? '3' : '2'}`);
  await field.press('Enter');
  await expect(lookup.getByRole('alert')).toContainText('does not fit');
});

test('sales is offered the list and no parts and no money', async ({ page }) => {
  const people = page.getByLabel('At the desk');
  const salesperson = people.getByRole('option', { name: /, sales$/ }).first();
  await salesperson.waitFor({ state: 'attached' });
  const label = (await salesperson.textContent()) ?? '';
  await people.selectOption({ label });
  await goTo(page, 'Sheets');
  const options = await page.getByLabel('Sheet', { exact: true }).getByRole('option').allTextContents();
  expect(options).toContain('Fleet list');
  expect(options).not.toContain('Parts and cores');
  expect(options).not.toContain('Ageing and money');
  const refused = await page.evaluate(() =>
    window.lotwright.ask['sheet:make']({ kinds: ['money-summary'], vehicleIds: [], to: 'folder', isJoint: false }),
  );
  expect(refused).toMatchObject({ ok: false, error: { code: 'not-allowed' } });
});
