// Nothing serious stands in the way of a person who sees, hears or points otherwise: every screen and its main states under axe, in
// light and in dark, on the sample fleet.
import { truncate } from 'node:fs/promises';
import path from 'node:path';
import type { Page } from '@playwright/test';
import { fill, form, goTo, openVehicle, section } from './at-the-desk.ts';
import { expectAccessible } from './axe.ts';
import { expect, type Program, test } from './fixtures.ts';

const themes = ['Light', 'Dark'] as const;

async function choose(page: Page, theme: (typeof themes)[number]): Promise<void> {
  await page.getByLabel('Light or dark').selectOption({ label: theme });
  await expect(page.locator('html')).toHaveAttribute('data-theme', theme.toLowerCase());
}

/** The first vehicle of the lot that stands at this. */
async function openFirst(page: Page, standing: string): Promise<void> {
  await goTo(page, 'Lot');
  await page.getByRole('button', { name: new RegExp(`^${standing} \\d+$`) }).click();
  const stockNumber = await page.getByRole('rowheader').getByRole('link').first().textContent();
  await openVehicle(page, stockNumber ?? '');
  await expect(page.getByRole('region', { name: /^What stands between/ })).toBeVisible();
}

for (const theme of themes) {
  test.describe(`in ${theme.toLowerCase()}`, () => {
    test.setTimeout(120_000);

    test.describe('a new fleet', () => {
      test.use({ fleet: 'empty' });

      test('says what to do first, and its Setup can be filled in', async ({ page }) => {
        await choose(page, theme);
        await expectAccessible(page, 'the lot of a new fleet');
        await goTo(page, 'Sheets');
        await expectAccessible(page, 'sheets without a vehicle');
        await goTo(page, 'Setup');
        await expect(form(page, 'Dealer')).toBeVisible();
        await fill(form(page, 'Dealer'), { Name: '' });
        await page.getByRole('button', { name: 'Save Dealer' }).click();
        await expect(form(page, 'Dealer').getByRole('alert')).toBeVisible();
        await expectAccessible(page, 'setup with a problem');
      });
    });

    test.describe('the sample fleet', () => {
      test.use({ fleet: 'sample' });

      test('the lot: all of it, one standing, nothing found, the sold', async ({ page }) => {
        await choose(page, theme);
        await expect(page.getByRole('rowheader').first()).toBeVisible();
        await expectAccessible(page, 'the lot');
        await page.getByRole('button', { name: /^part \d/ }).click();
        await expectAccessible(page, 'the lot, one standing');
        await page.getByRole('searchbox').fill('nothing has this name');
        await expect(page.getByText(/^Nothing in this view/)).toBeVisible();
        await expectAccessible(page, 'the lot, nothing found');
        await page.getByRole('searchbox').fill('');
        await page.getByRole('button', { name: 'Show all' }).click();
        await page.getByRole('button', { name: /^sold \d/ }).click();
        await page.getByRole('button', { name: '6 months' }).click();
        await expectAccessible(page, 'the lot, the sold');
      });

      test('a vehicle: as it stands, with its forms open, with a refusal', async ({ page }) => {
        await choose(page, theme);
        await openFirst(page, 'programming');
        await expectAccessible(page, 'a vehicle');
        for (const name of ['Add scan', 'Add fault', 'Add part', 'Add code request', 'Add programming job']) {
          await page.getByRole('button', { name, exact: true }).click();
          await expect(form(page, name)).toBeVisible();
        }
        await page
          .getByRole('button', { name: /^(Do it …|Write down …|Next: .*): / })
          .first()
          .click();
        await page
          .getByRole('button', { name: /^Correct: (Details|Purchase|Targets)/ })
          .first()
          .click();
        await expectAccessible(page, 'a vehicle with open forms');
        await form(page, 'Add fault').getByRole('button', { name: 'Add', exact: true }).click();
        await expect(form(page, 'Add fault').getByRole('alert').first()).toBeVisible();
        await expectAccessible(page, 'a vehicle with a refusal');
      });

      test('a vehicle that is ready, one that is proven, one that is sold', async ({ page }) => {
        await choose(page, theme);
        await openFirst(page, 'ready');
        await section(page, 'Sale').getByRole('button', { name: 'Sell it: Sale' }).click();
        await expectAccessible(page, 'a ready vehicle with its sale');
        await openFirst(page, 'to verify');
        await expectAccessible(page, 'a vehicle to verify');
        await openFirst(page, 'sold');
        await expectAccessible(page, 'a sold vehicle');
      });

      test('next jobs: what can be done, and what waits', async ({ page }) => {
        await choose(page, theme);
        await goTo(page, 'Next jobs');
        await expect(page.getByRole('heading', { name: /^Cannot be done now/ })).toBeVisible();
        await expectAccessible(page, 'next jobs');
      });

      test('taking in: empty, half filled, with problems', async ({ page }) => {
        await choose(page, theme);
        await page.getByRole('button', { name: 'Take in a vehicle' }).click();
        const takeIn = form(page, 'Take a vehicle in');
        await expect(takeIn).toBeVisible();
        await expectAccessible(page, 'taking in');
        await takeIn.getByLabel('VIN', { exact: true }).fill('GV2MD1D66HW00O73');
        await page.keyboard.press('Control+Enter');
        await expect(takeIn.getByRole('alert').first()).toBeVisible();
        await expectAccessible(page, 'taking in with problems');
      });

      test('sheets: both kinds on the screen, and what was written', async ({ page }) => {
        await choose(page, theme);
        await goTo(page, 'Sheets');
        await page
          .getByRole('listbox', { name: /^Vehicles/ })
          .getByRole('option')
          .first()
          .click();
        await expect(page.getByRole('article', { name: /^Job sheet/ })).toBeVisible();
        await expectAccessible(page, 'the job sheet on the screen');
        await page.getByLabel('Sheet', { exact: true }).selectOption({ label: 'Readiness sheet' });
        await expect(page.getByRole('article', { name: /^Readiness sheet/ })).toBeVisible();
        await page.getByRole('button', { name: 'Save as PDF' }).click();
        await expect(page.getByRole('region', { name: 'Written just now' })).toBeVisible();
        await expectAccessible(page, 'the readiness sheet, written');
      });

      test('setup, for a manager and for everybody', async ({ page }) => {
        await choose(page, theme);
        await goTo(page, 'Setup');
        await expect(form(page, 'Checklist')).toBeVisible();
        await expectAccessible(page, 'setup');
        await page.getByRole('button', { name: 'Add a check' }).click();
        await page.getByRole('button', { name: 'Add a person' }).click();
        const rules = form(page, 'Rules of programming');
        await rules.getByRole('button', { name: /^Write the VIN into/ }).click();
        await rules.getByRole('button', { name: /^vin-before-configuration/ }).click();
        await expectAccessible(page, 'setup with new lines, a step and a rule');
        await rules.getByRole('button', { name: 'As text (JSON) …' }).click();
        await expect(page.getByRole('dialog')).toBeVisible();
        await expectAccessible(page, 'the rules as text');
        await page.keyboard.press('Escape');
        const technician = page
          .getByLabel('At the desk')
          .getByRole('option', { name: /, technician$/ })
          .first();
        await page.getByLabel('At the desk').selectOption({ label: (await technician.textContent()) ?? '' });
        await expect(page.getByText(/^Only a manager sees and changes/)).toBeVisible();
        await expectAccessible(page, 'setup for a technician');
      });

      test('the list of keys, and the files that could not be read', async ({ page, program }) => {
        await choose(page, theme);
        await page.keyboard.press('?');
        await expect(page.getByRole('dialog', { name: 'Keys' })).toBeVisible();
        await expectAccessible(page, 'the list of keys');
        await damageOne(program);
        await program.page.getByRole('button', { name: /could not be read$/ }).click();
        await expect(program.page.getByRole('region', { name: /^Files that could not be used/ })).toBeVisible();
        await expectAccessible(program.page, 'the list of damaged files');
      });
    });
  });
}

async function damageOne(program: Program): Promise<void> {
  await expect(program.page.getByText(/^Last backup \d/)).toBeVisible();
  await program.close();
  await truncate(path.join(program.fleetFolder, 'shop.json'), 100);
  await program.start();
}
