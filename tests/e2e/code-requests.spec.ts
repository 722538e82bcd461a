// The life of a code request in the running program, by keyboard: refused without proof of ownership, asked, chased, given, tried wrong and
// right, closed; what the technician may note of it; a kind of code that the shop adds.
import { fill, form, goTo, keep, openVehicle, section } from './at-the-desk.ts';
import { expectAccessible } from './axe.ts';
import { expect, test } from './fixtures.ts';

test.use({ fleet: 'sample' });
const stockNumber = 'Q1130';

test('a code request lives from its draft to its closing, by keyboard', async ({ page }) => {
  await openVehicle(page, stockNumber);
  const codes = section(page, 'Codes');
  const press = async (name: string) => {
    const button = codes.getByRole('button', { name, exact: true });
    await button.focus();
    await page.keyboard.press('Enter');
  };
  await test.step('without proof of ownership it is not marked asked, and says why', async () => {
    await press('Add code request');
    const fresh = form(page, 'Add code request');
    await fill(fresh, { Kind: 'Gateway access', Module: 'Diagnostics' });
    await fresh.getByLabel('Module', { exact: true }).press('Enter');
    await expect(fresh).toHaveCount(0);
    await expect(codes).toContainText('proof of ownership first');
    await press('Asked today: Gateway access for Diagnostics');
    const open = form(page, 'Correct: Gateway access for Diagnostics');
    const document = open.getByLabel('Document seen');
    await expect(document).toBeFocused();
    await expect(open.getByRole('alert')).toContainText('Record the proof of ownership before the code is asked for');
    await document.fill('Purchase invoice');
    await fill(open, { 'Asked of': 'maker’s gateway desk', How: 'in a portal', 'Credential used': 'QM-118' });
    await open.getByLabel('Asked of').press('Enter');
    await expect(open).toHaveCount(0);
    await expect(codes).toContainText('asked 18 Mar, no day promised');
    await expect(codes).toContainText(/half in \d+ days?, 80 % in \d+ \(\d+ cases/);
    await expect(codes).toContainText(/chase \d+ \w{3}/);
  });
  await test.step('it is chased, with what was promised', async () => {
    await press('Chased today: Gateway access for Diagnostics');
    const open = form(page, 'Correct: Gateway access for Diagnostics');
    await expect(open.getByLabel('Promised for')).toBeFocused();
    await page.keyboard.type('+3');
    await page.keyboard.press('Enter');
    await expect(open).toHaveCount(0);
    await expect(codes).toContainText('chased 18 Mar, expected 21 Mar');
    await expect(codes).toContainText('chase 23 Mar');
  });
  await test.step('it is given, tried wrong and right, and closed', async () => {
    await press('Given today: Gateway access for Diagnostics');
    const open = form(page, 'Correct: Gateway access for Diagnostics');
    await expect(open.getByLabel('Where the code is kept')).toBeFocused();
    await page.keyboard.press('Escape');
    await expect(open).toHaveCount(0);
    await press('Did not work: Gateway access for Diagnostics');
    await expect(open.getByLabel('Tries left')).toBeFocused();
    await expect(open.getByText('Wrong entries can lock the unit.')).toBeVisible();
    await page.keyboard.type('2');
    await page.keyboard.press('Enter');
    await expect(open).toHaveCount(0);
    await expect(codes).toContainText('does not work, tried 18 Mar, 2 tries left');
    await expect(page.getByText('Does not work: gateway access for Diagnostics').first()).toBeVisible();
    await press('Worked: Gateway access for Diagnostics');
    await expect(codes).toContainText('works, 18 Mar');
    await press('Close: Gateway access for Diagnostics');
    await expect(codes).toContainText('closed 18 Mar');
  });
});

test('the technician notes a chase, and finds nothing else to change', async ({ page }) => {
  await page.getByLabel('At the desk').selectOption({ label: 'Tomas Ferrick, technician' });
  await openVehicle(page, stockNumber);
  const codes = section(page, 'Codes');
  await expect(codes.getByRole('button', { name: 'Add code request' })).toHaveCount(0);
  await expect(codes.getByRole('button', { name: /^(Given|Refused) today/ })).toHaveCount(0);
  await codes.getByRole('button', { name: 'Chased today: Radio code' }).click();
  const open = form(page, 'Correct: Radio code');
  await expect(open.getByLabel('Document seen')).toHaveCount(0);
  await expect(open.getByRole('button', { name: 'Remove', exact: true })).toHaveCount(0);
  await fill(open, { Note: 'They have the letter.' });
  await keep(open, 'Save');
  await expect(codes).toContainText('chased 18 Mar');
});

test('the shop adds a kind of code, and a vehicle can ask for it', async ({ page }) => {
  await goTo(page, 'Setup');
  const kinds = form(page, 'Kinds of codes');
  await kinds.getByRole('button', { name: 'Add a kind' }).click();
  const fresh = kinds.locator('details').last();
  await expect(fresh).toContainText('New kind');
  await fill(fresh, { Name: 'Tow hitch code', Source: 'common practice, no source' });
  await kinds.getByRole('button', { name: 'Save Kinds of codes' }).click();
  await expect(kinds.getByText('not saved yet')).toHaveCount(0);
  await goTo(page, 'Lot');
  await openVehicle(page, stockNumber);
  await section(page, 'Codes').getByRole('button', { name: 'Add code request' }).click();
  await fill(form(page, 'Add code request'), { Kind: 'Tow hitch code', Module: 'Hitch' });
  await keep(form(page, 'Add code request'), 'Add');
  await expect(section(page, 'Codes')).toContainText('Tow hitch code for Hitch');
});

for (const theme of ['Light', 'Dark'] as const)
  test(`the form of a code request is accessible, ${theme.toLowerCase()}`, async ({ page }) => {
    await page.getByLabel('Light or dark').selectOption({ label: theme });
    await openVehicle(page, 'Q1120');
    await section(page, 'Codes').getByRole('button', { name: 'Radio code', exact: true }).click();
    await expect(page.getByRole('group', { name: 'Tried' })).toBeVisible();
    await expectAccessible(page, 'a code request');
  });
