// Light or dark is as it was chosen for this desk, also at the next start; and a first start says what to do first. The window's size
// and place are in window.spec.ts.
import { form, goTo } from './at-the-desk.ts';
import { expect, test } from './fixtures.ts';

test.use({ fleet: 'empty' });

test('light or dark is what was chosen, from the first picture on', async ({ program }) => {
  const html = () => program.page.locator('html');
  for (const theme of ['Dark', 'Light'] as const) {
    await program.page.getByLabel('Light or dark').selectOption({ label: theme });
    await expect(html()).toHaveAttribute('data-theme', theme.toLowerCase());
    await program.close();
    await program.start();
    await expect(html()).toHaveAttribute('data-theme', theme.toLowerCase());
    await expect(program.page.getByLabel('Light or dark').getByRole('option', { selected: true })).toHaveText(theme);
    const background = await program.app.evaluate(({ BrowserWindow }) =>
      BrowserWindow.getAllWindows()[0]?.getBackgroundColor().toLowerCase(),
    );
    const page = await program.page.evaluate(() => getComputedStyle(document.body).backgroundColor);
    expect(rgbOf(background ?? '')).toBe(page);
  }
});

/** '#16191b' as the page says colours. */
function rgbOf(hex: string): string {
  const parts = /^#?(..)(..)(..)$/.exec(hex)?.slice(1) ?? [];
  return `rgb(${parts.map((part) => Number.parseInt(part, 16)).join(', ')})`;
}

test('following the system, the page turns dark with it', async ({ page }) => {
  await page.getByLabel('Light or dark').selectOption({ label: 'As the system' });
  await page.emulateMedia({ colorScheme: 'dark' });
  await expect(page.locator('html')).toHaveAttribute('data-theme', 'dark');
  await page.emulateMedia({ colorScheme: 'light' });
  await expect(page.locator('html')).toHaveAttribute('data-theme', 'light');
});

test('a new fleet says what to do first, on the lot and in Setup', async ({ page, program }) => {
  await expect(page.getByRole('main')).toContainText('This fleet is new.');
  await expect(page.getByRole('button', { name: 'Go to Setup' })).toBeVisible();
  await page.getByRole('button', { name: 'Go to Setup' }).click();
  await expect(page.getByText(/^This fleet is new\. Go through/)).toBeVisible();
  // Once it is set up, the lot asks for the first vehicle.
  await form(page, 'Dealer').getByRole('button', { name: 'Save Dealer' }).click();
  await goTo(page, 'Lot');
  await expect(page.getByRole('main')).toContainText('No vehicle yet. Take the first one in');
  await program.close();
  await program.start();
  await expect(program.page.getByRole('main')).toContainText('No vehicle yet. Take the first one in');
});
