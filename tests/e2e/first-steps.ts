// The first steps in a new fleet, through the screens alone: Setup is filled in, a vehicle is taken in by keyboard.
import type { Page } from '@playwright/test';
import { expectSaved, fill, form } from './at-the-desk.ts';
import { expect } from './fixtures.ts';
import { countingKeyboard } from './keyboard.ts';

/** Fills in Setup of a new fleet: dealer, rates, and one technician with a rate of her own. */
export async function setUpShop(page: Page): Promise<void> {
  await expect(page.getByText('This fleet is new.')).toBeVisible();
  await page.getByRole('button', { name: 'Go to Setup' }).click();
  const dealer = form(page, 'Dealer');
  await fill(dealer, {
    Name: 'Millrace Motors',
    Telephone: '555 0142',
    Market: 'United States',
    'Notice to the buyer': 'Ask us.',
  });
  await dealer.getByRole('button', { name: 'Save Dealer' }).click();
  await expect(form(page, 'Rates').getByRole('button', { name: 'Save Rates' })).toBeVisible();
  const rates = form(page, 'Rates');
  await fill(rates, {
    'Labour, an hour': '90',
    'Lot cost a day, each vehicle': '12.50',
    'Own money, interest a year': '8',
  });
  await rates.getByRole('button', { name: 'Save Rates' }).click();
  const people = form(page, 'People');
  await people.getByRole('button', { name: 'Add a person' }).click();
  await people.getByLabel('Name of person 2').fill('Tove Lindqvist');
  await people.getByLabel('Own rate of Tove Lindqvist, an hour; empty: the shop’s rate').fill('100');
  await people.getByRole('button', { name: 'Save People' }).click();
  await expectSaved(page);
  await expect(page.getByText('not saved yet')).toHaveCount(0);
}

/** Takes the vehicle in by keyboard alone, as the form is meant to be used; answers how many keys it took. */
export async function takeInByKeyboard(
  page: Page,
  { vin, stockNumber }: { vin: string; stockNumber: string },
): Promise<number> {
  const keys = countingKeyboard(page);
  await keys.press('n');
  await expect(page.getByRole('textbox', { name: 'VIN' })).toBeFocused();
  const typed = async (label: string, text: string) => {
    await expect(page.getByLabel(label, { exact: true })).toBeFocused();
    await keys.type(text);
    await keys.press('Enter');
  };
  await typed('VIN', vin);
  await typed('Stock number *', stockNumber);
  await typed('Model year', '2017');
  await typed('Make', 'Velquist');
  await typed('Model', 'Madrigal');
  await typed('Body', '');
  await typed('Colour', 'grey');
  await typed('Drive', '');
  await typed('Odometer', '84210');
  await typed('Bought on *', '-12');
  await typed('Bought from', 'Riverside auction');
  await typed('Price *', '6200');
  await typed('Fees', '240');
  await typed('Transport', '185');
  await typed('Asking price', '');
  await typed('It is here already', ' ');
  await typed('Arrived on', '-10');
  await typed('Where it stands', 'Row 3');
  await typed('Key tag', '');
  await typed('Paper is called', '');
  await typed('The paper is here', '');
  await typed('Paper expected on', '+2');
  await typed('Keys received', '2');
  await keys.press('Control+Enter');
  await expect(page.getByRole('heading', { level: 1 })).toHaveText(`${stockNumber} 2017 Velquist Madrigal`);
  return keys.count();
}
