// What each screen is for is there on it, and is what its main area is described by; an empty fleet says on each what to do first.
import type { Page } from '@playwright/test';
import { form, goTo, openVehicle, type Screen } from './at-the-desk.ts';
import { expectAccessible } from './axe.ts';
import { expect, test } from './fixtures.ts';

async function choosePerson(page: Page, role: string): Promise<void> {
  const list = page.getByLabel('At the desk');
  const option = list.getByRole('option', { name: new RegExp(`, ${role}$`) }).first();
  await list.selectOption({ label: (await option.textContent()) ?? '' });
}

/** It is read aloud with the main area, and stands there to be read too. */
async function expectPurpose(page: Page, words: RegExp): Promise<void> {
  await expect(page.getByRole('main')).toHaveAccessibleDescription(words);
  await expect(page.getByRole('main').getByText(words)).toBeVisible();
}

test.describe('the sample fleet', () => {
  test('says on each screen what it is for, and to a technician nothing of money', async ({ page }) => {
    const main = page.getByRole('main');
    await expect(main).toHaveAccessibleDescription(/^Every vehicle, where its days went/);
    // On the lot it would cost a row of vehicles: a button opens it.
    const button = main.getByRole('button', { name: 'What this screen is for' });
    const sentence = main.getByText(/^Every vehicle, where its days went/);
    await expect(sentence).toBeHidden();
    await button.press('Enter');
    await expect(button).toHaveAttribute('aria-expanded', 'true');
    await expect(sentence).toBeVisible();
    await expectAccessible(page, 'the lot with its purpose');
    await button.press('Enter');
    await expect(sentence).toBeHidden();

    await goTo(page, 'Next jobs');
    await expectPurpose(page, /^Programming steps and repairs that can be done now/);
    await goTo(page, 'Waiting');
    await expectPurpose(page, /^Every part, code and sublet work/);
    await goTo(page, 'Money');
    await expectPurpose(page, /^What the vehicles tie up/);
    await goTo(page, 'Sheets');
    await expectPurpose(page, /^Paper for the workshop, for sales and for you/);
    await goTo(page, 'Setup');
    await expectPurpose(page, /^What holds for the whole shop/);
    await page.getByRole('contentinfo').getByRole('button', { name: 'Safety copies' }).click();
    await expectPurpose(page, /^The way back when a file is damaged/);
    await page.keyboard.press('n');
    await expectPurpose(page, /^Begins the record of a vehicle/);
    await page.getByRole('button', { name: /^Take in a purchase list/ }).click();
    await expectPurpose(page, /^Takes a purchase list in as one act/);
    await goTo(page, 'Lot');
    await openVehicle(page, 'Q1111');
    await expectPurpose(page, /^All that is known of this vehicle/);

    await goTo(page, 'Lot');
    await choosePerson(page, 'technician');
    await expect(main).toHaveAccessibleDescription(/^Every vehicle and what it waits for/);
    await openVehicle(page, 'Q1111');
    await expectPurpose(page, /^All that the workshop knows/);
    await goTo(page, 'Sheets');
    await expectPurpose(page, /^Paper for the work/);
  });
});

test.describe('an empty fleet', () => {
  test.use({ fleet: 'empty' });

  test('says on each screen what to do first', async ({ page }) => {
    const main = page.getByRole('main');
    const screens: readonly Screen[] = ['Lot', 'Next jobs', 'Waiting', 'Money', 'Sheets'];
    for (const screen of screens) {
      await goTo(page, screen);
      await expect(main).toContainText('This fleet is new.');
      await expect(main.getByRole('button', { name: 'Go to Setup' })).toBeVisible();
    }
    await goTo(page, 'Setup');
    await expect(main).toContainText('This fleet is new. Go through the sections');
    await form(page, 'Dealer').getByRole('button', { name: 'Save Dealer' }).click();
    for (const screen of screens) {
      await goTo(page, screen);
      await expect(main).toContainText('No vehicle yet. Take the first one in');
      await expectAccessible(page, `an empty fleet: ${screen}`);
    }
    await main.getByRole('button', { name: 'Take in a vehicle' }).press('Enter');
    await expect(page.getByRole('heading', { level: 1 })).toHaveText('Take a vehicle in');
  });
});
