// What changed, by keyboard: a change is made and taken back, and the vehicle tells of both with who did it.
import { expectSaved, form } from './at-the-desk.ts';
import { expect, test } from './fixtures.ts';

test.use({ fleet: 'sample' });

test('a change and taking it back are both told, by keyboard', async ({ page }) => {
  await expect(page.getByRole('rowheader').first()).toBeVisible();
  await page.keyboard.press('/');
  await expect(page.getByRole('searchbox')).toBeFocused();
  await page.keyboard.press('Enter');
  await page.keyboard.press('Enter');
  await expect(page.getByRole('region', { name: /^What stands between/ })).toBeVisible();
  const fold = page.getByText('What changed', { exact: true });
  await fold.focus();
  await page.keyboard.press('Enter');
  await expect(page.getByText(/^Nothing has been written down yet/)).toBeVisible();

  await page.getByRole('button', { name: 'Add note', exact: true }).focus();
  await page.keyboard.press('Enter');
  const note = form(page, 'Add note');
  await expect(note.getByLabel(/^Note/)).toBeFocused();
  await page.keyboard.type('Written for the history.');
  await page.keyboard.press('Control+Enter');
  await expectSaved(page);

  const told = page.getByRole('group').filter({ has: fold }).getByRole('list').first();
  const lines = told.locator(':scope > li');
  await expect(lines).toHaveCount(1);
  await expect(lines.first()).toContainText('A note added');
  await expect(lines.first()).toContainText('from nothing to Written for the history.');

  await page.getByRole('button', { name: 'Add note', exact: true }).focus();
  await page.keyboard.press('Control+z');
  await expect(lines).toHaveCount(2);
  await expect(lines.first()).toContainText('Taken back: a note added');
  await expect(lines.first()).toContainText('from Written for the history. to nothing');
});
