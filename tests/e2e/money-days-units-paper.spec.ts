// Another currency, distance, form of days and paper, set in Setup while the program runs: every screen, every tip and every printed
// sheet follows at once, and nothing is left of what was set before.
import { readdir, readFile } from 'node:fs/promises';
import path from 'node:path';
import type { Page } from '@playwright/test';
import type { DayForm } from '../../app/domain/shared/show-day.ts';
import { placedWords } from '../helpers/read-pdf.ts';
import { expectSaved, fact, form, goTo, keep, section } from './at-the-desk.ts';
import { expectAccessible } from './axe.ts';
import { expect, type Program, test } from './fixtures.ts';
import { printedWords } from './printed-sheets.ts';
import { expectDaysIn, wordsOnPage } from './words-on-page.ts';

test.use({ fleet: 'sample' });

type Shown = { readonly dayForm: string; readonly currency: string; readonly distance: string; readonly paper: string };

const british = { dayForm: 'Mar 4, 2026', currency: 'GBP', distance: 'kilometres', paper: 'A4' };

async function setShop(page: Page, { dayForm, currency, distance, paper }: Shown): Promise<void> {
  await goTo(page, 'Setup');
  const dealer = form(page, 'Dealer');
  await dealer.getByLabel('Currency *').fill(currency);
  await dealer.getByLabel('Distance').selectOption({ label: distance });
  await dealer.getByLabel('Form of days').selectOption({ label: dayForm });
  await dealer.getByLabel('Paper for sheets').selectOption({ label: paper });
  await dealer.getByRole('button', { name: 'Save Dealer' }).click();
  await expectSaved(page);
}

/** What a screen says once it is drawn; never a word about the currency that the sample has. */
async function look(page: Page, form: DayForm, where: string): Promise<string> {
  const words = await wordsOnPage(page);
  expectDaysIn(form, words, where);
  expect
    .soft(
      words.filter((text) => /USD|\$/.test(text)),
      `the sample’s currency: ${where}`,
    )
    .toEqual([]);
  return words.join('\n');
}

async function openFirst(page: Page): Promise<void> {
  await goTo(page, 'Lot');
  await page.getByRole('rowheader').getByRole('link').first().click();
  await expect(section(page, 'Purchase and arrival')).toBeVisible();
}

/** Opens everything on the page that folds. */
async function unfold(page: Page): Promise<void> {
  await page.locator('details').evaluateAll((folds) => {
    for (const fold of folds) fold.setAttribute('open', '');
  });
}

async function eachScreen(page: Page, form: DayForm): Promise<void> {
  await goTo(page, 'Lot');
  await expect(page.getByRole('img', { name: /^Held/ }).first()).toBeVisible();
  await look(page, form, 'Lot');
  await goTo(page, 'Next jobs');
  await expect(page.getByRole('region', { name: /^Cannot be done now/ })).toBeVisible();
  await look(page, form, 'Next jobs');
  await goTo(page, 'Waiting');
  await expect(page.getByRole('rowheader').first()).toBeVisible();
  await look(page, form, 'Waiting');
  await goTo(page, 'Money');
  await expect(page.getByRole('heading', { name: /falls due to lenders by/ })).toBeVisible();
  await look(page, form, 'Money');
  await openFirst(page);
  await unfold(page);
  await look(page, form, 'Vehicle');
  await page.getByRole('contentinfo').getByRole('button', { name: 'Safety copies' }).click();
  await expect(page.getByRole('button', { name: /^Look into the backup of/ }).first()).toBeVisible();
  await look(page, form, 'Safety copies');
}

async function print(
  program: Program,
  kind: string,
  isOfFleet: boolean,
): Promise<{ fileName: string; words: readonly string[] }> {
  const { page } = program;
  const folder = path.join(program.fleetFolder, 'sheets');
  const before = new Set(await readdir(folder).catch(() => []));
  await goTo(page, 'Sheets');
  await page.getByLabel('Sheet', { exact: true }).selectOption({ label: kind });
  if (!isOfFleet)
    await page
      .getByRole('listbox', { name: /^Vehicles/ })
      .getByRole('option')
      .first()
      .click();
  await expect(page.getByRole('article', { name: new RegExp(`^${kind}`) })).toBeVisible();
  await page.getByRole('button', { name: 'Save as PDF' }).click();
  await expect(page.getByRole('region', { name: 'Written just now' })).toBeVisible();
  const files = async () => (await readdir(folder)).filter((name) => name.endsWith('.pdf') && !before.has(name));
  await expect.poll(async () => (await files()).length).toBe(1);
  const fileName = (await files())[0] ?? '';
  return { fileName, words: await printedWords(program, fileName) };
}

test('currency, distance, days and paper change everywhere at once, and are kept', async ({ program }) => {
  const { page } = program;
  await expect(page.getByText(/^Last backup \d/)).toBeVisible();
  await setShop(page, british);
  await expect(page.getByRole('contentinfo')).toContainText(/Today is [A-Z][a-z]{2} \d{1,2}, \d{4}/);

  await test.step('every screen', () => eachScreen(page, 'month-day'));

  await test.step('a change, its history and the fields of the vehicle', async () => {
    await openFirst(page);
    const vehicle = await look(page, 'month-day', 'Vehicle');
    expect(vehicle).toContain('GBP');
    await section(page, 'Purchase and arrival').getByRole('button', { name: 'Correct: Purchase' }).click();
    const purchase = form(page, 'Purchase');
    const paperDue = purchase.getByLabel('Paper expected on');
    await paperDue.fill('2026-07-09');
    await paperDue.blur();
    await expect(paperDue).toHaveValue('Jul 9, 2026');
    await look(page, 'month-day', 'the form of the purchase');
    await keep(purchase, 'Save');
    await page.getByText('What changed', { exact: true }).click();
    await expect(page.getByRole('group').filter({ hasText: 'What changed' })).toContainText('to Jul 9, 2026');
    await look(page, 'month-day', 'What changed');
    await expectAccessible(page, 'a vehicle with another form of days');
  });

  await test.step('a new vehicle is measured in the shop’s unit', async () => {
    await page.keyboard.press('Escape');
    await goTo(page, 'Lot');
    await page.keyboard.press('n');
    await expect(page.getByLabel('Bought on')).toHaveValue(/^[A-Z][a-z]{2} \d{1,2}, \d{4}$/);
    const words = (await look(page, 'month-day', 'Take in')).split('\n');
    expect(words).toContain('km');
    expect(words).not.toContain('mi');
  });

  await test.step('sheets on their paper', async () => {
    for (const [kind, isOfFleet] of [
      ['Cost sheet', false],
      ['Readiness sheet', false],
      ['Ageing and money', true],
      ['Fleet list', true],
    ] as const) {
      const { fileName, words } = await print(program, kind, isOfFleet);
      expectDaysIn('month-day', words, kind);
      await look(page, 'month-day', `${kind} on the screen`);
      expect(words.filter((text) => /USD|\$/.test(text))).toEqual([]);
      if (kind !== 'Readiness sheet') expect(words.join(' ')).toContain('GBP');
      const { pages } = placedWords(await readFile(path.join(program.fleetFolder, 'sheets', fileName)));
      // ISO 216 A4 in points: 210 × 297 mm.
      for (const { width, height } of pages)
        expect([width, height].map(Math.round).sort((a, b) => a - b)).toEqual([595, 842]);
    }
  });

  await test.step('all of it is kept', async () => {
    await program.close();
    await program.start();
    await expect(program.page.getByRole('img', { name: /^Held/ }).first()).toBeVisible();
    await look(program.page, 'month-day', 'Lot after a start');
  });

  await test.step('files for other programs keep ISO days', async () => {
    await goTo(program.page, 'Lot');
    await program.page.getByRole('button', { name: /CSV/ }).click();
    const folder = path.join(program.fleetFolder, 'exports');
    await expect.poll(async () => (await readdir(folder).catch(() => [])).length).toBe(1);
    const [fileName = ''] = await readdir(folder);
    expect(fileName).toMatch(/\d{4}-\d\d-\d\d\.csv$/);
    const table = await readFile(path.join(folder, fileName), 'utf8');
    expect(table).toMatch(/,\d{4}-\d\d-\d\d,/);
    expect(table).not.toMatch(/[A-Z][a-z]{2} \d{1,2}, \d{4}/);
  });
});

test('ISO days and days between dots stand everywhere too, and are typed as they are shown', async ({ page }) => {
  await expect(page.getByText(/^Last backup \d/)).toBeVisible();
  const shown: Shown = { ...british, dayForm: '2026-03-04 (ISO 8601)' };
  await setShop(page, shown);
  await eachScreen(page, 'iso');
  await setShop(page, { ...shown, dayForm: '04.03.2026 (day.month.year)' });
  await eachScreen(page, 'dotted');
  await goTo(page, 'Lot');
  await page.keyboard.press('n');
  const boughtOn = page.getByLabel('Bought on');
  for (const [typed, kept] of [
    ['4.3.2026', '04.03.2026'],
    ['2026-03-05', '05.03.2026'],
    ['6 mar 2026', '06.03.2026'],
  ] as const) {
    await boughtOn.fill(typed);
    await page.keyboard.press('Tab');
    await expect(boughtOn).toHaveValue(kept);
  }
  await boughtOn.focus();
  await page.keyboard.press('ArrowDown');
  await expect(boughtOn).toHaveValue('05.03.2026');
  await boughtOn.fill('3/4/2026');
  await page.keyboard.press('Tab');
  await expect(page.getByRole('alert')).toContainText('This is no day the program can take. Write it like');
});

test('everybody sees how days are written here', async ({ page }) => {
  await page.getByLabel('At the desk').selectOption({ label: await labelOf(page, /, technician$/) });
  await goTo(page, 'Setup');
  await expect(fact(page, 'Form of days')).toHaveText('4 Mar 2026');
});

async function labelOf(page: Page, role: RegExp): Promise<string> {
  const option = page.getByLabel('At the desk').getByRole('option', { name: role }).first();
  await option.waitFor({ state: 'attached' });
  return (await option.textContent()) ?? '';
}
