// The Lot and a vehicle worked by keyboard alone: every control is reached, none holds the focus fast, and where it is can be seen.
import type { Page } from '@playwright/test';
import { fact, form, lotRow, section, todayOf, wholeDay } from './at-the-desk.ts';
import { expect, test } from './fixtures.ts';

test.use({ fleet: 'sample' });

type Stop = {
  readonly name: string;
  readonly isMarked: boolean;
  readonly isInView: boolean;
};

/** What has the focus now: its name, whether a line is drawn around it, and whether it lies inside the window. Null: nothing has it. */
async function focusedStop(page: Page): Promise<Stop | null> {
  return page.evaluate(() => {
    const element = document.activeElement;
    if (element === null || element === document.body) return null;
    // The row of a table is marked as a whole.
    const marked = [element, element.closest('tr')].filter((one) => one !== null);
    const isMarked = marked.some((one) => {
      const { outlineStyle, outlineWidth } = getComputedStyle(one);
      return outlineStyle !== 'none' && Number.parseFloat(outlineWidth) >= 1;
    });
    const { left, top, right, bottom } = element.getBoundingClientRect();
    const labels = element instanceof HTMLInputElement || element instanceof HTMLSelectElement ? element.labels : null;
    const name = element.getAttribute('aria-label') ?? labels?.[0]?.textContent ?? element.textContent ?? '';
    return {
      name: `${element.tagName.toLowerCase()} ${name.trim().slice(0, 80)}`,
      isMarked,
      isInView: bottom > 0 && right > 0 && top < innerHeight && left < innerWidth && right > left && bottom > top,
    };
  });
}

/** Tabs once around the window from wherever the focus is; every stop is marked and in view. */
async function tabAround(page: Page): Promise<readonly string[]> {
  const names: string[] = [];
  const unmarked: string[] = [];
  let first: string | null = null;
  for (let count = 0; count < 600; count += 1) {
    await page.keyboard.press('Tab');
    const stop = await focusedStop(page);
    // Out of the page and in again at its beginning.
    if (stop === null) continue;
    if (stop.name === first && names.length > 3) break;
    first ??= stop.name;
    names.push(stop.name);
    if (!stop.isMarked || !stop.isInView) unmarked.push(`${stop.name}${stop.isInView ? '' : ' (out of view)'}`);
  }
  expect(unmarked, 'stops whose focus cannot be seen').toEqual([]);
  expect(names.length, 'the way around comes to an end').toBeLessThan(600);
  return names;
}

test('every control of the lot is reached by Tab and shows the focus', async ({ page }) => {
  test.setTimeout(120_000);
  await expect(page.getByRole('rowheader').first()).toBeVisible();
  const names = await tabAround(page);
  const wanted = [
    'a Lot',
    'a Setup',
    'select At the desk',
    'input Search the lot',
    'button Take in a vehicle',
    'button Held days',
  ];
  for (const name of wanted) expect(names.join('\n')).toContain(name);
  // The rows are one stop; the arrow keys move in them.
  const rows = names.filter((name) => /^a \S+, \d{4} /.test(name));
  expect(rows).toHaveLength(1);
});

test('every control of a vehicle is reached by Tab and shows the focus', async ({ page }) => {
  test.setTimeout(120_000);
  await expect(page.getByRole('rowheader').first()).toBeVisible();
  await page.keyboard.press('/');
  await expect(page.getByRole('searchbox')).toBeFocused();
  await page.keyboard.press('Enter');
  await page.keyboard.press('Enter');
  await expect(page.getByRole('region', { name: /^What stands between/ })).toBeVisible();
  const names = await tabAround(page);
  const wanted = [
    'Add scan',
    'Add fault',
    'Add part',
    'Add code request',
    'Add programming job',
    'Book work',
    'Add sublet work',
    'Add cost',
    'Add note',
  ];
  for (const name of [...wanted, 'Job sheet', 'Readiness sheet']) expect(names).toContain(`button ${name}`);
  const buttons = page.getByRole('main').getByRole('button');
  const unreached = [];
  for (const button of await buttons.all()) {
    const name = (await button.getAttribute('aria-label')) ?? (await button.textContent()) ?? '';
    if (!names.includes(`button ${name.trim().slice(0, 80)}`)) unreached.push(name);
  }
  expect(unreached).toEqual([]);
});

test('a vehicle is found, opened, changed and left again without the mouse', async ({ page }) => {
  await expect(page.getByRole('rowheader').first()).toBeVisible();
  await page.keyboard.press('/');
  await expect(page.getByRole('searchbox')).toBeFocused();
  await page.keyboard.press('Enter');
  const links = page.getByRole('rowheader').getByRole('link');
  await expect(links.nth(0)).toBeFocused();
  await page.keyboard.press('ArrowDown');
  await page.keyboard.press('ArrowDown');
  await expect(links.nth(2)).toBeFocused();
  await page.keyboard.press('End');
  await expect(links.last()).toBeFocused();
  await page.keyboard.press('Home');
  await page.keyboard.press('ArrowDown');
  await expect(links.nth(1)).toBeFocused();
  const stockNumber = (await links.nth(1).textContent()) ?? '';
  await page.keyboard.press('Enter');
  await expect(page.getByRole('heading', { level: 1 })).toContainText(stockNumber);

  await page.getByRole('button', { name: 'Add note', exact: true }).focus();
  await page.keyboard.press('Enter');
  const note = form(page, 'Add note');
  await expect(note.getByLabel(/^Note/)).toBeFocused();
  await page.keyboard.type('Written without the mouse.');
  await page.keyboard.press('Control+Enter');
  await expect(section(page, 'Notes')).toContainText('Written without the mouse.');
  // The focus is where the next one begins.
  await expect(page.getByRole('button', { name: 'Add note', exact: true })).toBeFocused();

  // Esc leaves a form as it was, then the vehicle; the cursor is on its row again.
  await page.keyboard.press('Enter');
  await page.keyboard.press('Escape');
  await expect(note).toHaveCount(0);
  await page.keyboard.press('Escape');
  await expect(lotRow(page, stockNumber).getByRole('link')).toBeFocused();

  await page.keyboard.press('Alt+6');
  await expect(page.getByRole('heading', { level: 1, name: 'Setup' })).toBeVisible();
  await page.keyboard.press('Alt+5');
  await expect(page.getByRole('listbox', { name: /^Vehicles/ })).toBeVisible();
  await page.keyboard.press('Alt+1');
  await expect(page.getByRole('heading', { level: 1, name: 'Lot' })).toBeVisible();
});

test('what stands between a vehicle and its sale leads to where it is dealt with', async ({ page }) => {
  await page.getByRole('button', { name: /^to decide \d/ }).click();
  const toDecide = page.getByRole('row').filter({ hasText: 'Decide: ' });
  await toDecide.getByRole('link').first().click();
  const gates = page.getByRole('region', { name: /^What stands between/ });
  const decide = gates.getByRole('button', { name: /^Decide: / }).first();
  const what = ((await decide.textContent()) ?? '').replace('Decide: ', '');
  await decide.focus();
  await page.keyboard.press('Enter');
  const fault = form(page, `Correct: ${what}`);
  await expect(fault).toBeVisible();
  await expect(fault.locator(':focus')).toHaveCount(1);
  await expect(fault).toBeInViewport();
});

test('days are typed as they are spoken: today, three days ago, in five days', async ({ page }) => {
  const today = await todayOf(page);
  await page.keyboard.press('n');
  await expect(page.getByRole('textbox', { name: 'VIN' })).toBeFocused();
  const boughtOn = page.getByLabel('Bought on');
  for (const [typed, days] of [
    ['-3', -3],
    ['t', 0],
    ['-12', -12],
  ] as const) {
    await boughtOn.focus();
    await page.keyboard.type(typed);
    await page.keyboard.press('Tab');
    const day = new Date(Date.parse(`${today}T00:00:00Z`) + days * 86_400_000).toISOString().slice(0, 10);
    await expect(boughtOn).toHaveValue(wholeDay(day));
    await expect(page.getByLabel('Bought from')).toBeFocused();
  }
  await expect(fact(page, 'Days held')).toHaveCount(0);
});
