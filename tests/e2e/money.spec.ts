// Money, the forecast and finishing against letting go in the running program, with figures worked out by hand from the records.
import { readFile } from 'node:fs/promises';
import path from 'node:path';
import { firstTurnaroundSettings } from '../../app/domain/time/turnaround-settings.ts';
import { makeScan, makeShop, makeVehicle } from '../helpers/vehicle-maker.ts';
import { goTo, openVehicle, section } from './at-the-desk.ts';
import { expectAccessible } from './axe.ts';
import { expect, test } from './fixtures.ts';
import { records } from './lay-records.ts';

/** Lends all at 7.3 % over 365 days: 2.00 a day on 10,000.00, and asks for a tenth after 30 days. */
const plan = {
  id: 'plan-one',
  name: 'Yard plan',
  advancePpm: 1_000_000,
  ratePpm: 73_000,
  rateChanges: [],
  dayCount: 'actual-365' as const,
  freeDays: 0,
  drawFeeCents: 0,
  curtailments: [{ kind: 'percent-of-original' as const, valuePpm: 100_000, dayMark: 30, every: null }],
  floor: null,
  payoffWorkingDays: null,
};
// Scanned, nothing found, paper here: still to be proven (a day) and presented (two).
const funded = makeVehicle('2026-03-02', {
  id: 'funded',
  identity: { stockNumber: 'P-1', make: 'Orvane', model: 'Cantle' },
  purchase: { priceCents: 1_000_000, fundingPlanId: plan.id, paperReceivedOn: '2026-03-03' },
  targets: { askingCents: 1_200_000, tradeValueCents: 990_000 },
  arrival: { arrivedOn: '2026-03-03' },
  scans: [makeScan('2026-03-04')],
});
// Nobody would finish this one: the trade pays nearly what it is asked for.
const hopeless = makeVehicle('2026-01-17', {
  id: 'hopeless',
  identity: { stockNumber: 'P-2', make: 'Tarnholm', model: 'Skerry' },
  purchase: { priceCents: 1_000_000 },
  targets: { askingCents: 1_000_000, tradeValueCents: 999_000 },
});
const shop = {
  ...makeShop({ rates: { overheadCentsPerDay: 1_000 } }),
  fundingPlans: [plan],
  selling: { retailCents: 10_000, tradeCents: 5_000, daysToSell: 5, daysToTrade: 2 },
  turnaround: firstTurnaroundSettings,
  sample: { today: '2026-03-18' },
};

test.use({ fleet: records(shop, [funded, hopeless]) });

test('Money adds the fleet up, says what is due and what should be let go', async ({ page, program }) => {
  await goTo(page, 'Money');
  const today = page.getByRole('region', { name: 'The fleet today' });
  // 10,000 + 16 × 12, and 10,000 + 60 × 10.
  await expect(today).toContainText('20,792.00 in 2 open vehicles');
  await expect(today).toContainText('22.00');
  await expect(today).toContainText('10,000.00');
  await expect(today).toContainText('Too little history to test them');
  await expect(
    page.getByRole('heading', { name: '1,000.00 falls due to lenders by 17 May, all of it on 1 Apr' }),
  ).toBeVisible();
  await expect(page.getByRole('heading', { name: /^1 vehicle should be let go/ })).toBeVisible();
  await page.getByRole('button', { name: 'Save as CSV: Due to lenders' }).click();
  await expect(page.getByText('due-2026-03-18.csv is in the folder').first()).toBeVisible();
  const written = await readFile(path.join(program.fleetFolder, 'exports', 'due-2026-03-18.csv'), 'utf8');
  expect(written).toContain('2026-04-01,P-1,1000,10 % of the original principal\r\n');
  await page.getByRole('button', { name: 'P-2, ' }).first().click();
  await expect(page.getByRole('region', { name: 'Finish or let go' })).toContainText('Let it go');
});

test('a vehicle weighs finishing against letting go, with what each is made of', async ({ page }) => {
  await openVehicle(page, 'P-1');
  const money = section(page, 'Targets and money');
  const weighing = money.getByRole('region', { name: 'Finish or let go' });
  // To the trade in 2 days: 9,900 less 10,192 spent, 24 for two days, 50 for selling.
  await weighing.getByText(/^Sell to the trade now sold/).click();
  const letGo = weighing.getByRole('table', { name: 'Sell to the trade now' });
  await expect(letGo.getByRole('row', { name: /^Spent so far/ })).toContainText('−10,192.00');
  await expect(letGo.getByRole('row', { name: /^Holding for 2 more days/ })).toContainText('−24.00');
  await expect(letGo.getByRole('row', { name: /^Result/ })).toContainText('−366.00');
  await expect(weighing).toContainText('Finish it');
  await expect(money).toContainText('Owed to the lender: 10,000.00; 1,000.00 due 1 Apr');
  await page.getByText('What the forecast is made of').first().click();
  await expect(page.getByRole('table', { name: 'What the forecast is made of' })).toContainText('a setting');
});

test('a price and a cost are tried out, put back, tried again and kept', async ({ page }) => {
  await openVehicle(page, 'P-1');
  const money = section(page, 'Targets and money');
  await money.getByText('Try out').first().click();
  const tried = money.getByRole('table', { name: 'Try out' });
  const margin = tried.getByRole('row', { name: /^Margin when finished/ });
  // 12,000 less 10,192.
  await expect(margin).toContainText('1,808.00');
  await money.getByLabel('Asking price').fill('12,500');
  await money.getByLabel('One more cost').fill('200');
  await money.getByLabel('What for').fill('Towing');
  await expect(margin).toContainText('2,108.00');
  await money.getByRole('button', { name: 'Put back' }).click();
  await expect(margin).not.toContainText('2,108.00');
  await expect(section(page, 'Other costs')).not.toContainText('Towing');
  await money.getByLabel('One more cost').fill('200');
  await money.getByLabel('What for').fill('Towing');
  await expect(margin).toContainText('1,608.00');
  await money.getByRole('button', { name: 'Keep' }).click();
  await expect(section(page, 'Other costs')).toContainText('Towing');
  await expect(margin.getByRole('cell').first()).toHaveText('1,608.00');
});

test('a budget by cost group is set, held against what is spent, and seen in Money', async ({ page }) => {
  await openVehicle(page, 'P-1');
  const money = section(page, 'Targets and money');
  await money.getByRole('button', { name: 'Correct: Targets' }).click();
  await money.getByRole('group', { name: 'Budgets of single groups' }).getByLabel('Other').fill('150');
  await money.getByRole('button', { name: 'Save', exact: true }).click();
  const budgets = money.getByRole('region', { name: 'Budget against cost' });
  await expect(budgets.getByRole('row', { name: /^Other/ })).toContainText('150.00');
  await money.getByText('Try out').first().click();
  await money.getByLabel('One more cost').fill('200');
  const tried = money.getByRole('table', { name: 'Try out' });
  await expect(tried.getByRole('row', { name: /^Budget against cost/ })).toContainText('over by 50.00');
  await money.getByRole('button', { name: 'Keep' }).click();
  await expect(budgets).toContainText('spent and committed come to 200.00, more than the budget of 150.00');
  await goTo(page, 'Money');
  await expect(page.getByRole('heading', { name: /^1 of 1 vehicle with a budget is over it/ })).toBeVisible();
});

test('what is still owed on a sold vehicle is due until it is recorded as paid', async ({ page }) => {
  await openVehicle(page, 'P-1');
  const sale = section(page, 'Sale');
  await sale.getByRole('button', { name: /^Sell it/ }).click();
  await sale.getByLabel('Price').fill('12,000');
  await sale.getByRole('button', { name: 'Record the sale' }).click();
  await expect(sale).toContainText('10,000.00 still owed, due 18 Mar');
  await goTo(page, 'Money');
  await expect(page.getByRole('region', { name: 'The fleet today' })).toContainText(
    '10,000.00 of it on 1 sold vehicle',
  );
  const due = page.getByRole('region', { name: /^10,000.00 falls due to lenders/ });
  await due.getByText('The figures as a table').click();
  await due.getByRole('button', { name: 'P-1, ' }).click();
  await sale.getByRole('button', { name: /^Correct the sale/ }).click();
  await sale.getByLabel('Lender paid on').fill('2026-03-18');
  await sale.getByRole('button', { name: 'Record the sale' }).click();
  await expect(sale).toContainText('paid 18 Mar');
});

test('public holidays are chosen from a list and added to the calendar', async ({ page }) => {
  await goTo(page, 'Setup');
  await page.getByRole('button', { name: 'Choose public holidays …' }).click();
  const dialog = page.getByRole('dialog', { name: 'Public holidays' });
  await dialog.getByLabel('Country').selectOption('GB');
  await dialog.getByLabel('Region').selectOption('ENG');
  await dialog.getByLabel(/25 Dec.*Christmas Day/).check();
  await expectAccessible(page, 'choosing holidays');
  await dialog.getByRole('button', { name: 'Add 1 day' }).click();
  await expect(page.getByRole('textbox', { name: 'Holidays' })).toHaveValue(/25 Dec 2026/);
});

for (const theme of ['light', 'dark'] as const)
  test(`Money is accessible, ${theme}`, async ({ page }) => {
    await page.getByLabel('Light or dark').selectOption(theme);
    await goTo(page, 'Money');
    await expect(page.getByRole('region', { name: 'The fleet today' })).toBeVisible();
    for (const summary of await page.getByText('The figures as a table').all()) await summary.click();
    await expectAccessible(page, 'money');
  });

test.describe('the sample fleet', () => {
  test.use({ fleet: 'sample' });

  test('has forecasts that were tested on its own past, and no Money for a technician', async ({ page }) => {
    await goTo(page, 'Money');
    await expect(page.getByRole('region', { name: 'The fleet today' })).toContainText(
      /Of the dates given with 80 %, \d+ % were met; of those with 50 %, \d+ % \(\d+ cases\)/,
    );
    await page.getByLabel('At the desk').selectOption({ label: 'Tomas Ferrick, technician' });
    await expect(page.getByText('Only a manager sees the money of the fleet')).toBeVisible();
    await expect(page.getByRole('navigation', { name: 'Screens' }).getByRole('link', { name: 'Money' })).toHaveCount(0);
  });
});
