// What a person does with the vault, by keyboard: makes it, gives a key, keeps a code, asks to see one. Pass phrases are invented.
import type { Locator, Page } from '@playwright/test';
import { form, goTo, openVehicle, section } from './at-the-desk.ts';
import { expect } from './fixtures.ts';

export const managerPhrase = 'copper lamp under ferry';

/** Puts the focus there as Tab would, and presses Enter. */
export async function press(button: Locator): Promise<void> {
  await button.focus();
  await button.press('Enter');
}

/** Types one text after the other, each in the next field, and Enter at the end. */
export async function typeThrough(first: Locator, texts: readonly string[]): Promise<void> {
  const page = first.page();
  await first.focus();
  for (const [index, text] of texts.entries()) {
    if (index > 0) await page.keyboard.press('Tab');
    await page.keyboard.type(text);
  }
  await page.keyboard.press('Enter');
}

/** The vault is made, and its recovery key written down; `look`: while that is shown. */
export async function makeVault(page: Page, look?: () => Promise<void>): Promise<void> {
  await goTo(page, 'Setup');
  const make = form(page, 'Make the vault');
  await typeThrough(make.getByLabel('Pass phrase', { exact: true }), [managerPhrase, managerPhrase]);
  const told = page.getByRole('dialog', { name: 'Your recovery key' });
  const key = told.getByRole('status', { name: 'Recovery key' });
  await expect(key).toHaveText(/^[0-9A-Z]{5}(-[0-9A-Z]{5}){7}$/, { timeout: 60_000 });
  await look?.();
  await told.getByLabel('I have written it down and compared it').focus();
  await page.keyboard.press('Space');
  await press(told.getByRole('button', { name: 'Done' }));
  await expect(told).toHaveCount(0);
}

/** In Setup, with the vault open: this person gets a key with this pass phrase. */
export async function giveKey(page: Page, name: string, phrase: string): Promise<void> {
  const vault = page.getByRole('region', { name: 'Vault for codes' });
  await vault.getByLabel('Person', { exact: true }).focus();
  await page.keyboard.type(name);
  await expect(vault.getByLabel('Person', { exact: true }).getByRole('option', { selected: true })).toHaveText(name);
  const give = form(page, 'Give somebody a key');
  await typeThrough(give.getByLabel('Pass phrase', { exact: true }), [phrase, phrase]);
  await expect(vault.getByRole('button', { name: `Take the key away from ${name}` })).toBeVisible({ timeout: 60_000 });
}

/** Keeps `value` for the first request of this vehicle whose name begins so; `look`: while the dialog is open. */
export async function keepCode(
  page: Page,
  { stockNumber, name, value }: { readonly stockNumber: string; readonly name: string; readonly value: string },
  look?: () => Promise<void>,
): Promise<void> {
  await goTo(page, 'Lot');
  await openVehicle(page, stockNumber);
  const keep = section(page, 'Codes').getByRole('button', { name: new RegExp(`^Keep the ${name}`, 'i') });
  await press(keep.first());
  const dialog = page.getByRole('dialog', { name: new RegExp(`^Keep the ${name}`, 'i') });
  await look?.();
  await typeThrough(dialog.getByLabel(/^The code/), [value]);
  await expect(dialog).toHaveCount(0);
}

/** The button that asks to see that code, and the dialog behind it. */
export function seeing(page: Page, name: string): { readonly button: Locator; readonly dialog: Locator } {
  return {
    button: section(page, 'Codes').getByRole('button', { name: new RegExp(`^See the ${name}`, 'i') }),
    dialog: page.getByRole('dialog', { name: new RegExp(`^See the ${name}`, 'i') }),
  };
}
