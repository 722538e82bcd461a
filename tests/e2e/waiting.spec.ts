// Waiting in the running program, by keyboard alone: the list, a chase written down and taken back, by provider, the file, and the roles.
import { readFile } from 'node:fs/promises';
import path from 'node:path';
import { expectSaved, goTo, todayOf } from './at-the-desk.ts';
import { expectAccessible } from './axe.ts';
import { expect, test } from './fixtures.ts';

test.use({ fleet: 'sample' });

test('a chase is written down from the list by keyboard, and taken back', async ({ page, program }) => {
  const today = await todayOf(page);
  await page.keyboard.press('Alt+3');
  await expect(page.getByRole('heading', { level: 1, name: 'Waiting' })).toBeVisible();
  const rows = page
    .getByRole('table', { name: /^What was asked for/ })
    .getByRole('rowheader')
    .getByRole('link');
  await expect(rows.first()).toBeVisible();
  await rows.first().focus();
  await page.keyboard.press('ArrowDown');
  await expect(rows.nth(1)).toBeFocused();
  await page.keyboard.press('Home');
  await expect(rows.first()).toBeFocused();
  await expect(page.getByText(/chased 1 time/)).toHaveCount(0);

  await page.keyboard.press('c');
  const dialog = page.getByRole('dialog', { name: /^Chased/ });
  await expect(dialog).toBeVisible();
  await dialog.getByLabel('Now promised for').focus();
  await page.keyboard.type('-30');
  await page.keyboard.press('Tab');
  await dialog.getByLabel('What was said').focus();
  await page.keyboard.type('Left the yard yesterday.');
  await page.keyboard.press('Enter');
  // A promise for the past is refused at its field, and nothing typed is lost.
  await expect(dialog.getByRole('alert')).toContainText('is before the day it was chased');
  await expect(dialog.getByLabel('What was said')).toHaveValue('Left the yard yesterday.');
  await dialog.getByLabel('Now promised for').focus();
  await page.keyboard.type('+2');
  await page.keyboard.press('Enter');
  await expect(dialog).toHaveCount(0);
  await expectSaved(page);
  await expect(page.getByText(/chased 1 time/)).toBeVisible();
  await expect(page.locator(':focus')).toHaveAttribute('href', /^#waiting-/);

  const chased = page.getByRole('row').filter({ hasText: 'chased 1 time' });
  const stockNumber = (await chased.getByRole('link').textContent()) ?? '';
  await expect(page.getByRole('button', { name: /^Undo: .* chased$/ })).toBeVisible();
  await page.keyboard.press('Control+z');
  await expect(page.getByText(/chased 1 time/)).toHaveCount(0);

  await page.getByRole('button', { name: 'Save as CSV' }).press('Enter');
  await expect(page.getByText(`waiting-${today}.csv is in the folder`).first()).toBeVisible();
  const written = await readFile(path.join(program.fleetFolder, 'exports', `waiting-${today}.csv`), 'utf8');
  expect(written).toContain('Share of this wait');
  expect(written).toContain(stockNumber);

  await rows.first().focus();
  await page.keyboard.press('Enter');
  await expect(page.getByRole('heading', { level: 1 })).toContainText(/\w/);
  await expect(page.getByRole('region', { name: /^What stands between/ })).toBeVisible();
});

test('the technician sees days and no money; sales sees none of it', async ({ page }) => {
  const desk = page.getByLabel('At the desk');
  const choose = async (role: string) => {
    const option = desk.getByRole('option', { name: new RegExp(`, ${role}$`) }).first();
    await desk.selectOption({ label: (await option.textContent()) ?? '' });
  };
  await choose('technician');
  await goTo(page, 'Waiting');
  await expect(page.getByRole('columnheader', { name: 'Chase next' })).toBeVisible();
  await expect(page.getByRole('columnheader', { name: 'Another day' })).toHaveCount(0);
  await expect(page.getByRole('main')).not.toContainText(/\d\.\d\d/);
  await choose('sales');
  await expect(page.getByRole('main')).toContainText('This list is for the workshop and the manager.');
});

for (const theme of ['Light', 'Dark'])
  test(`Waiting is accessible, ${theme.toLowerCase()}`, async ({ page }) => {
    await page.getByLabel('Light or dark').selectOption({ label: theme });
    await goTo(page, 'Waiting');
    await expect(page.getByRole('columnheader', { name: 'Chase next' })).toBeVisible();
    await expectAccessible(page, 'waiting by cost');
    await page.getByRole('button', { name: 'By provider' }).click();
    await expectAccessible(page, 'waiting by provider');
    await page
      .getByRole('button', { name: /^Chase: / })
      .first()
      .click();
    await expect(page.getByRole('dialog', { name: /^Chased/ })).toBeVisible();
    await expectAccessible(page, 'writing down a chase');
  });
