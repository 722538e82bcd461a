// What the Lot and a vehicle say of records that lie in the past: days by cause, the strip, the money, the order, the search. The
// fleet names its own today, and every number was worked out by hand from its records.
import { makeDecision, makeFault, makePart, makeScan, makeShop, makeVehicle } from '../helpers/vehicle-maker.ts';
import { expectMoney, fact, lotRow, openVehicle, section, wholeDay } from './at-the-desk.ts';
import { expect, test } from './fixtures.ts';
import { records } from './lay-records.ts';

const boughtOn = '2026-02-16';
const module = 'body control module';
const fault = makeFault('2026-02-23', {
  what: 'lamps dead',
  decision: makeDecision('2026-02-25', { kind: 'replace', estimateMinutes: 60 }),
});

/** Waits for a part that is late. */
const late = makeVehicle(boughtOn, {
  id: 'late',
  identity: { stockNumber: 'P-1', make: 'Orvane', model: 'Cantle', vin: 'GR3CT5D35HW000731', location: 'Row 3' },
  purchase: { priceCents: 1_000_000 },
  targets: { askingCents: 1_200_000 },
  arrival: { arrivedOn: '2026-02-20' },
  scans: [makeScan('2026-02-23')],
  faults: [fault],
  parts: [
    makePart('2026-02-25', { what: module, faultId: fault.id, orderedOn: '2026-02-28', expectedOn: '2026-03-12' }),
  ],
});
/** Forgotten for 90 days, its margin long used up. */
const forgotten = makeVehicle('2025-12-18', {
  id: 'forgotten',
  identity: { stockNumber: 'P-2', make: 'Tarnholm', model: 'Skerry', vin: 'GT1SK2D46HW000731', colour: 'green' },
  purchase: { priceCents: 1_000_000 },
  targets: { askingCents: 1_050_000 },
});
const sold = makeVehicle('2026-01-05', {
  id: 'sold',
  identity: { stockNumber: 'P-3', make: 'Sandrell', model: 'Bight' },
  sale: { soldOn: '2026-02-04', priceCents: 900_000, buyer: 'A. Buyer', paidOffOn: null },
});
// 7.3 % of 10,000.00 is 2.00 a day: with the 10.00 of the lot, a vehicle costs 12.00 a day.
const shop = makeShop({ rates: { fundingRatePpm: 73_000, overheadCentsPerDay: 1_000 } });

test.use({ fleet: records({ ...shop, sample: { today: '2026-03-18' } }, [late, forgotten, sold]) });

test('the lot charges each day to one cause and tells it in words', async ({ page }) => {
  await expect(page.getByRole('contentinfo')).toContainText('Today is 18 Mar 2026');
  // In transit until the 20th; scanned on the 23rd; decided on the 25th; ordered on the 28th, and still not here.
  // What is foreseen for the days to come is said after it.
  const said = (stockNumber: string) => lotRow(page, stockNumber).getByRole('img', { name: /^Held/ });
  await expect(said('P-1')).toHaveAccessibleName(
    new RegExp(
      `^Held 30 days since ${wholeDay(boughtOn)}: in transit 4, to inspect 3, to decide 1, part 18, in work 1, idle 3\\. ` +
        `Now: part, ${module} from Yard, since 28 Feb 2026, expected on 12 Mar 2026\\. Margin used up after 17 Jul 2026\\.`,
    ),
  );
  await expect(said('P-2')).toHaveAccessibleName(
    /^Held 90 days since 18 Dec 2025: to inspect 90\. Now: to inspect, scan on arrival, since 18 Dec 2025\. Margin used up after 28 Jan 2026\./,
  );
  await expect(lotRow(page, 'P-1')).toContainText('6 days late');
  await expect(lotRow(page, 'P-1')).toContainText(`manager Chase Yard: ${module}, promised for 12 Mar`);
});

test('the lot reckons what each vehicle has cost and what is left', async ({ page }) => {
  const cells = (stockNumber: string) => lotRow(page, stockNumber).getByRole('cell');
  // Spent 10,000 + 30 × 12; left of 12,000; at the end less 120.00 for the part and 60.00 for the hour of work.
  await expect(cells('P-1').nth(3)).toHaveText('30');
  await expect(cells('P-1').nth(4)).toHaveText('10,360');
  await expect(cells('P-1').nth(5)).toHaveText('1,640');
  await expect(cells('P-1').nth(6)).toHaveText('1,460');
  // Spent 10,000 + 90 × 12; 580 are lost of 10,500.
  await expect(cells('P-2').nth(4)).toHaveText('11,080');
  await expect(cells('P-2').nth(6)).toHaveText('−580');
  await expect(page.getByText('21,440 USD tied up')).toBeVisible();
  await expect(page.getByText('3 of 120 days held were idle')).toBeVisible();
});

test('the lot begins with what has stood longest and is found by number, VIN, make or model', async ({ page }) => {
  const links = page.getByRole('rowheader').getByRole('link');
  await expect(links).toHaveText(['P-2', 'P-1']);
  const search = page.getByRole('searchbox', { name: 'Search the lot' });
  for (const [typed, found] of [
    ['p-1', 'P-1'],
    ['5hw000731', 'P-1'],
    ['tarn', 'P-2'],
    ['cantle row', 'P-1'],
    ['green', 'P-2'],
  ] as const) {
    await search.fill(typed);
    await expect(links).toHaveText([found]);
  }
  await search.fill('bight');
  await expect(page.getByText('Nothing in this view matches “bight”.')).toBeVisible();
  await page.getByRole('button', { name: '1 more among the sold: Show the sold' }).click();
  await expect(links).toHaveText(['P-3']);
  await search.fill('');
  await page.getByRole('button', { name: 'Show all' }).click();
  await expect(links).toHaveText(['P-2', 'P-1']);
  await page.getByRole('button', { name: 'Held days' }).click();
  await page.getByRole('button', { name: 'Held days' }).click();
  await expect(page.getByRole('columnheader', { name: 'Held days' })).toHaveAttribute('aria-sort', 'ascending');
  await expect(links).toHaveText(['P-1', 'P-2']);
  await page.getByRole('button', { name: /^part/ }).click();
  await expect(links).toHaveText(['P-1']);
});

test('a vehicle’s strip is read day by day with the arrow keys', async ({ page }) => {
  await openVehicle(page, 'P-1');
  const slider = page.getByRole('slider', { name: 'Day of the hold strip' });
  await slider.focus();
  await expect(slider).toHaveAttribute('aria-valuetext', /^18 Mar, today: part, body control module from Yard/);
  await page.keyboard.press('ArrowLeft');
  await expect(slider).toHaveAttribute(
    'aria-valuetext',
    /^17 Mar: part, .*\(day 18 of 18\); ordered on 28 Feb from Yard, promised for 12 Mar, not here yet$/,
  );
  await page.keyboard.press('Control+ArrowLeft');
  await page.keyboard.press('Control+ArrowLeft');
  await expect(slider).toHaveAttribute('aria-valuetext', /^25 Feb: idle, Order: body control module \(day 1 of 3\)/);
  await page.keyboard.press('Home');
  await expect(slider).toHaveAttribute('aria-valuetext', /^16 Feb: in transit, an auction \(day 1 of 4\)/);
});

test('a vehicle says what is spent, committed and to come, and until when its margin lasts', async ({ page }) => {
  await openVehicle(page, 'P-1');
  await expectMoney(page, { spent: '10,360.00', later: '180.00', margin: '1,460.00' });
  await expect(fact(page, 'Days held')).toContainText('3 idle, could be won back');
  // 1,460.00 pay for 121 days of 12.00, from 18 March to 17 July.
  await expect(fact(section(page, 'Targets and money'), 'Margin lasts until')).toHaveText('17 Jul, in 121 days');
  const figures = section(page, 'Targets and money').getByRole('table', { name: 'Figures by group' });
  await expect(figures.getByRole('row', { name: /^Interest/ })).toHaveText(/60\.00/);
  await expect(figures.getByRole('row', { name: /^Lot cost by the day/ })).toHaveText(/300\.00/);
  await expect(figures.getByRole('row', { name: /^Parts/ })).toHaveText(/120\.00/);
  await expect(figures.getByRole('row', { name: /^Total/ })).toContainText('10,540.00');
});
