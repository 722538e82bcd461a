// Who is at the desk decides what is shown: a technician sees no money but that of parts, sales only what can be shown to a buyer and
// no cost. On the sample fleet; what must not be seen is taken from its files.
import { readdir, readFile } from 'node:fs/promises';
import path from 'node:path';
import type { Page } from '@playwright/test';
import type { Vehicle } from '../../app/domain/vehicle/vehicle.ts';
import { amountsIn } from '../helpers/sheet-text.ts';
import { fact, goTo, openVehicle, seat, section } from './at-the-desk.ts';
import { expect, type Program, test } from './fixtures.ts';
import { readPrinted } from './printed-sheets.ts';

test.use({ fleet: 'sample' });

async function vehiclesOf({ fleetFolder }: Program): Promise<readonly Vehicle[]> {
  const folder = path.join(fleetFolder, 'vehicles');
  const names = await readdir(folder);
  const files = await Promise.all(names.map((name) => readFile(path.join(folder, name), 'utf8')));
  return files.map((text) => (JSON.parse(text) as { data: Vehicle }).data);
}

/** Everything the page says in any way: text, tips, labels, and what stands in its fields. */
async function saidBy(page: Page): Promise<string> {
  return page.evaluate(() => {
    const said: string[] = [];
    const texts = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
    while (texts.nextNode()) said.push(texts.currentNode.nodeValue ?? '');
    for (const element of document.querySelectorAll('*')) {
      for (const { value } of element.attributes) said.push(value);
      if (element instanceof HTMLInputElement || element instanceof HTMLTextAreaElement) said.push(element.value);
    }
    return said.join('\n');
  });
}

/** Amounts of this vehicle that only a manager may see; small ones are left out, since any number may look like them. */
function hiddenAmounts({ purchase, targets, sublets, otherCosts, codeRequests, sale }: Vehicle): readonly number[] {
  const amounts = [
    ...[purchase.priceCents, purchase.feesCents, purchase.transportCents],
    ...[targets.askingCents, targets.budgetCents, targets.tradeValueCents, targets.marginFloorCents],
    ...sublets.flatMap((sublet) => [sublet.quotedCents, sublet.invoicedCents]),
    ...otherCosts.map((cost) => cost.amountCents),
    ...codeRequests.map((request) => request.feeCents),
    sale?.priceCents ?? null,
  ];
  return amounts.filter((cents) => cents !== null).filter((cents) => cents >= 100_000);
}

async function stockNumbersShown(page: Page): Promise<readonly string[]> {
  const links = page.getByRole('rowheader').getByRole('link');
  await expect(links.first()).toBeVisible();
  return links.allTextContents();
}

function vehicleWith(vehicles: readonly Vehicle[], stockNumber: string): Vehicle {
  const vehicle = vehicles.find((one) => one.identity.stockNumber === stockNumber);
  if (vehicle === undefined) throw new Error(`${stockNumber} is not in the folder.`);
  return vehicle;
}

/** What the lot shows a manager under Spent, Margin left and Margin at end; amounts below 1,000 could be any number. */
async function amountsOfLot(page: Page): Promise<readonly string[]> {
  return page.getByRole('cell', { name: /^−?\d{1,3},\d{3}$/ }).allTextContents();
}

const moneyWords = /\b(spent|margin|purchase price|budget|trade value|interest|tied up)\b/i;

test('a technician sees no money on the lot, on a vehicle and on the job sheet', async ({ page, program }) => {
  test.setTimeout(120_000);
  const vehicles = await vehiclesOf(program);
  await expect(page.getByRole('columnheader', { name: 'Spent' })).toBeVisible();
  const stockNumbers = await stockNumbersShown(page);
  const reckoned = await amountsOfLot(page);
  expect(reckoned.length).toBeGreaterThan(20);
  expect(await saidBy(page)).toMatch(moneyWords);
  // What is looked for below is there for a manager.
  for (const stockNumber of stockNumbers.slice(0, 2)) {
    await openVehicle(page, stockNumber);
    await expect(page.getByRole('region', { name: 'What it costs' })).toBeVisible();
    const amounts = hiddenAmounts(vehicleWith(vehicles, stockNumber));
    expect(amountsIn(await saidBy(page), amounts), stockNumber).not.toEqual([]);
    await goTo(page, 'Lot');
  }

  await seat(page, 'technician');
  await expect(page.getByRole('columnheader', { name: 'Spent' })).toHaveCount(0);
  const lot = await saidBy(page);
  expect(lot).not.toMatch(moneyWords);
  for (const amount of reckoned) expect(lot.split(/\s/), amount).not.toContain(amount);
  await expect(page.getByRole('button', { name: 'Take in a vehicle' })).toHaveAttribute('aria-disabled', 'true');

  for (const stockNumber of stockNumbers.slice(0, 6)) {
    const vehicle = vehicleWith(vehicles, stockNumber);
    await openVehicle(page, stockNumber);
    await expect(page.getByRole('region', { name: /^What stands between/ })).toBeVisible();
    await expect(page.getByRole('region', { name: 'What it costs' })).toHaveCount(0);
    await expect(section(page, 'Targets and money')).toHaveCount(0);
    await expect(section(page, 'Other costs')).toHaveCount(0);
    const said = await saidBy(page);
    expect(said, stockNumber).not.toMatch(moneyWords);
    expect(amountsIn(said, hiddenAmounts(vehicle)), stockNumber).toEqual([]);
    await page.getByRole('button', { name: 'Job sheet', exact: true }).click();
    await expect(page.getByRole('status').filter({ hasText: `Written: ${stockNumber}-job-sheet.pdf.` })).toBeAttached();
    const printed = await readPrinted(program, `${stockNumber}-job-sheet.pdf`);
    expect(printed).toContain(vehicle.identity.vin.slice(-8));
    expect(amountsIn(printed, hiddenAmounts(vehicle)), stockNumber).toEqual([]);
    await goTo(page, 'Lot');
  }
});

test('what a technician may not see or do is refused by the program, not by hiding it', async ({ page, program }) => {
  const [vehicle] = (await vehiclesOf(program)).filter((one) => one.sale === null && one.faults.length > 0);
  if (vehicle === undefined) throw new Error('The sample has no open vehicle with a fault.');
  await seat(page, 'technician');
  const answers = await page.evaluate(async (id) => {
    const { ask } = window.lotwright;
    const open = await ask['vehicle:open']({ id });
    if (!open.ok) throw new Error(open.error.code);
    const { revision, today, vehicle: seen } = open.value;
    const change = (what: Parameters<(typeof ask)['vehicle:change']>[0]['change']) =>
      ask['vehicle:change']({ id, baseRevision: revision, change: what });
    return {
      costs: open.value.costs,
      price: seen.purchase.priceCents,
      asking: seen.targets.askingCents,
      setPrice: await change({ kind: 'set', section: 'purchase', value: { ...seen.purchase, priceCents: 1 } }),
      addCost: await change({
        kind: 'put',
        list: 'otherCosts',
        item: { id: 'cost-by-technician', spentOn: today, what: 'x', amountCents: 1 },
      }),
      shop: await ask['shop:read']({}),
    };
  }, vehicle.id);
  expect(answers).toMatchObject({
    costs: null,
    price: 0,
    asking: null,
    setPrice: { ok: false, error: { code: 'not-allowed' } },
    addCost: { ok: false, error: { code: 'not-allowed' } },
    shop: { ok: false, error: { code: 'not-allowed' } },
  });
});

test('sales sees only what is proven, its price, and neither cost nor code', async ({ page, program }) => {
  const vehicles = await vehiclesOf(program);
  const standing = async (name: string) => {
    await page.getByRole('button', { name: new RegExp(`^${name} \\d+$`) }).click();
    const shown = await stockNumbersShown(page);
    await page.getByRole('button', { name: 'Show all' }).click();
    return shown;
  };
  const provenByNow = [...(await standing('ready')), ...(await standing('to present'))];
  const notProven: string[] = [];
  for (const name of [
    'in transit',
    'to inspect',
    'to decide',
    'part',
    'code',
    'programming',
    'sublet',
    'to verify',
    'idle',
  ]) {
    notProven.push(...(await standing(name)));
  }
  await seat(page, 'sales');
  await expect(page.getByRole('columnheader', { name: 'Spent' })).toHaveCount(0);
  const shown = await stockNumbersShown(page);
  for (const stockNumber of provenByNow) expect(shown).toContain(stockNumber);
  for (const stockNumber of notProven) expect(shown).not.toContain(stockNumber);

  for (const stockNumber of shown) {
    const vehicle = vehicleWith(vehicles, stockNumber);
    await openVehicle(page, stockNumber);
    await expect(page.getByRole('region', { name: /^What stands between/ })).toBeVisible();
    await expect(section(page, 'Codes')).toHaveCount(0);
    await expect(page.getByRole('button', { name: 'Job sheet', exact: true })).toHaveCount(0);
    const said = await saidBy(page);
    const asking = vehicle.targets.askingCents;
    expect(
      amountsIn(
        said,
        hiddenAmounts(vehicle).filter((cents) => cents !== asking),
      ),
      stockNumber,
    ).toEqual([]);
    const partPrices = vehicle.parts.flatMap((part) => (part.priceCents === null ? [] : [part.priceCents]));
    expect(
      amountsIn(
        said,
        partPrices.filter((cents) => cents >= 10_000),
      ),
      stockNumber,
    ).toEqual([]);
    if (asking !== null) await expect(fact(page, 'Asking price')).toHaveText(/^\d{1,3}(,\d{3})*\.\d\d$/);
    await goTo(page, 'Lot');
  }

  const hidden = vehicles.find((one) => notProven.includes(one.identity.stockNumber));
  const answers = await page.evaluate(async (id) => {
    const { ask } = window.lotwright;
    return {
      open: await ask['vehicle:open']({ id }),
      preview: await ask['sheet:preview']({ kind: 'readiness-sheet', id }),
      jobSheet: await ask['sheet:print']({ kind: 'job-sheet', vehicleIds: [id] }),
      undo: await ask['edit:undo']({}),
    };
  }, hidden?.id ?? '');
  expect(answers).toMatchObject({
    open: { ok: false, error: { code: 'not-found' } },
    preview: { ok: false, error: { code: 'not-found' } },
    jobSheet: { ok: false, error: { code: 'not-allowed' } },
    undo: { ok: false, error: { code: 'not-allowed' } },
  });
});

test('who was at the desk is at it again after a restart', async ({ page, program }) => {
  await seat(page, 'sales');
  await program.close();
  await program.start();
  await expect(program.page.getByLabel('At the desk').getByRole('option', { selected: true })).toHaveText(/, sales$/);
  await expect(program.page.getByRole('columnheader', { name: 'Spent' })).toHaveCount(0);
});
