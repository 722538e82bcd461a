// The vault in Setup and its dialogs under axe, in light and in dark; and that a technician changes their own pass phrase there.
import { form, goTo, openVehicle, section } from './at-the-desk.ts';
import { expectAccessible } from './axe.ts';
import { giveKey, keepCode, makeVault, managerPhrase, press, seeing, typeThrough } from './code-steps.ts';
import { expect, test } from './fixtures.ts';

test.use({ fleet: 'sample' });
const phrase = 'seven quiet orange doors';

for (const theme of ['Light', 'Dark'] as const) {
  test(`the vault and its dialogs, in ${theme.toLowerCase()}`, async ({ page }) => {
    test.setTimeout(180_000);
    await page.getByLabel('Light or dark').selectOption({ label: theme });
    await goTo(page, 'Setup');
    await expect(form(page, 'Make the vault')).toBeVisible();
    await makeVault(page, () => expectAccessible(page, 'the recovery key'));
    await giveKey(page, 'Tomas Ferrick', phrase);
    await expectAccessible(page, 'the open vault in Setup');
    await keepCode(page, { stockNumber: 'Q1124', name: 'immobiliser', value: '48213' }, () =>
      expectAccessible(page, 'keeping a code'),
    );
    const { button, dialog } = seeing(page, 'immobiliser');
    await press(button);
    await expectAccessible(page, 'asking to see a code');
    await typeThrough(dialog.getByLabel(/^What it is needed for/), ['teaching a key']);
    await expect(page.getByText('48213')).toBeVisible();
    await expectAccessible(page, 'a shown code');
    await press(dialog.getByRole('button', { name: 'Hide' }));
    await press(section(page, 'Codes').getByRole('button', { name: /^About the immobiliser/ }));
    await expectAccessible(page, 'what happened with a code');
    await page.keyboard.press('Escape');

    // Removing the request says what becomes of the code, before.
    await press(
      section(page, 'Codes')
        .getByRole('button', { name: /^Immobiliser/ })
        .first(),
    );
    await press(section(page, 'Codes').getByRole('button', { name: 'Remove', exact: true }).last());
    const question = page.getByRole('dialog', { name: /^Remove the request/ });
    await expect(question).toContainText('Undo brings the request back, but not the code.');
    await expectAccessible(page, 'removing a request with a code');
    await page.keyboard.press('Escape');
    await expect(question).toHaveCount(0);
    await goTo(page, 'Setup');
    await press(page.getByRole('button', { name: 'Lock it' }));
    await expectAccessible(page, 'the locked vault in Setup');
    await typeThrough(form(page, 'Open the vault').getByLabel('Pass phrase', { exact: true }), [managerPhrase]);
    await expect(page.getByRole('button', { name: 'Lock it' })).toBeVisible({ timeout: 60_000 });
  });
}

test('a technician changes their own pass phrase in Setup, and it opens the vault', async ({ page }) => {
  test.setTimeout(180_000);
  await makeVault(page);
  await giveKey(page, 'Tomas Ferrick', phrase);
  await keepCode(page, { stockNumber: 'Q1124', name: 'immobiliser', value: '48213' });
  await page.getByLabel('At the desk').selectOption({ label: 'Tomas Ferrick, technician' });
  await goTo(page, 'Setup');
  const change = form(page, 'Change your pass phrase');
  const fresh = 'three green iron bridges';
  await typeThrough(change.getByLabel('Present pass phrase'), [phrase, fresh, fresh]);
  await expect(page.getByText('Your pass phrase was changed. All codes are sealed anew.').last()).toBeVisible({
    timeout: 60_000,
  });
  await goTo(page, 'Lot');
  await openVehicle(page, 'Q1124');
  const { button, dialog } = seeing(page, 'immobiliser');
  await press(button);
  await dialog.getByLabel(/^Step that needs it/).focus();
  await page.keyboard.press('ArrowDown');
  await dialog.getByLabel(/^What it is needed for/).fill('teaching a key');
  await typeThrough(dialog.getByLabel(/^Your pass phrase for codes/), [fresh]);
  await expect(page.getByText('48213')).toBeVisible({ timeout: 60_000 });
});
