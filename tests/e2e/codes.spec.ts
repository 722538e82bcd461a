// A code from the vault through the running program: the manager makes the vault and keeps a code, sees it with a reason, and it is hidden
// when the window loses the focus.
import { goTo, openVehicle, section } from './at-the-desk.ts';
import { expect, test } from './fixtures.ts';

test.use({ fleet: 'sample' });
const phrase = 'copper lamp under ferry';

test('a code is kept, seen for a reason and hidden again', async ({ page }) => {
  test.setTimeout(120_000);
  await goTo(page, 'Setup');
  const make = page.getByRole('form', { name: 'Make the vault' });
  await make.getByLabel('Pass phrase', { exact: true }).fill(phrase);
  await make.getByLabel('The same once more').fill(phrase);
  await page.keyboard.press('Enter');
  const told = page.getByRole('dialog', { name: 'Your recovery key' });
  await expect(told.getByText(/^[0-9A-Z]{5}(-[0-9A-Z]{5}){7}$/)).toBeVisible({ timeout: 60_000 });
  await told.getByLabel('I have written it down and compared it').check();
  await told.getByRole('button', { name: 'Done' }).click();
  await goTo(page, 'Lot');
  await page.getByRole('button', { name: /^code \d+$/ }).click();
  const first = page.getByRole('rowheader').getByRole('link').first();
  await openVehicle(page, ((await first.textContent()) ?? '').trim());
  const codes = section(page, 'Codes');
  await codes
    .getByRole('button', { name: /^Keep the / })
    .first()
    .click();
  await page.getByLabel(/^The code/).fill('QX-7719-VOLE');
  await page.keyboard.press('Enter');
  const why = page.getByLabel('Why it is kept as it is');
  if (await why.isVisible().catch(() => false)) {
    await why.fill('as the letter says');
    await page.keyboard.press('Enter');
  }
  await codes
    .getByRole('button', { name: /^See the / })
    .first()
    .click();
  await page.getByLabel(/^What it is needed for/).fill('teaching a key');
  await page.keyboard.press('Enter');
  await expect(page.getByText('QX-7719-VOLE')).toBeVisible();
  await page.evaluate(() => window.dispatchEvent(new Event('blur')));
  await expect(page.getByText('QX-7719-VOLE')).toHaveCount(0);
  await expect(page.getByText('The code is hidden again.')).toBeVisible();
});
