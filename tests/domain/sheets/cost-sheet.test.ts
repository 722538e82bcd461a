// The manager's cost sheet against the reckoning it comes from: every line, every sum, the margin, the days.
import { describe, expect, it } from 'vitest';
import type { FundingPlan } from '../../../app/domain/money/funding-plan.ts';
import { showCents } from '../../../app/domain/shared/cents.ts';
import { costEntries } from '../../../app/domain/sheets/cost-entries.ts';
import { costSheet } from '../../../app/domain/sheets/cost-sheet.ts';
import { type Sheet, type SheetBlock, sheetSchema } from '../../../app/domain/sheets/sheet.ts';
import type { Vehicle } from '../../../app/domain/vehicle/vehicle.ts';
import {
  examplePrinting,
  exampleShop,
  exampleToday,
  exampleVehicle,
  readyVehicle,
  reckonExample,
} from '../../helpers/sheet-example.ts';
import { sheetText } from '../../helpers/sheet-text.ts';

const plan: FundingPlan = {
  id: 'plan-one',
  name: 'Yard Finance',
  advancePpm: 900_000,
  ratePpm: 84_000,
  rateChanges: [],
  dayCount: 'actual-360',
  freeDays: 5,
  drawFeeCents: 8500,
  curtailments: [{ kind: 'percent-of-original', valuePpm: 100_000, dayMark: 10, every: { count: 30, unit: 'days' } }],
  floor: null,
  payoffWorkingDays: 3,
};
const shop = {
  ...exampleShop,
  fundingPlans: [plan],
  saleTax: { kind: 'on-margin', rate: { numerator: 20, denominator: 100 }, rounding: 'nearest' },
} as const satisfies typeof exampleShop;
const funded = (vehicle: Vehicle): Vehicle => ({
  ...vehicle,
  purchase: { ...vehicle.purchase, fundingPlanId: 'plan-one' },
});
const open = funded(exampleVehicle);
const sold: Vehicle = {
  ...funded(readyVehicle),
  sale: { soldOn: '2026-04-20', priceCents: 1_391_100, buyer: 'A. Buyer', paidOffOn: null },
};
const soldToday = '2026-04-26';

function sheetOf(vehicle: Vehicle, today = exampleToday): Sheet {
  return costSheet(vehicle, reckonExample(vehicle, today, shop), shop, examplePrinting);
}

function tableRows(sheet: Sheet, caption: string): readonly (readonly string[])[] {
  const table = sheet.blocks.find(
    (block): block is Extract<SheetBlock, { kind: 'table' }> =>
      block.kind === 'table' && block.caption.startsWith(caption),
  );
  return table?.rows.map((row) => row.map((cell) => cell.text)) ?? [];
}

describe.each([
  ['open', open, exampleToday],
  ['sold', sold, soldToday],
])('the cost sheet of a vehicle that is %s', (_, vehicle, today) => {
  const sheet = sheetOf(vehicle, today);
  const { costs, held } = reckonExample(vehicle, today, shop);

  it('is a sheet by its schema', () => {
    expect(sheetSchema.safeParse(sheet).error?.issues).toBeUndefined();
  });

  it('has exactly the lines of the reckoning, to the cent and by state', () => {
    const key = (line: { group: string; state: string; cents: number }) => `${line.group} ${line.state} ${line.cents}`;
    expect(costEntries(vehicle, shop, costs, today).map(key).sort()).toEqual(costs.lines.map(key).sort());
  });

  it('ends in the sums of the reckoning', () => {
    expect(tableRows(sheet, 'Every line').at(-1)?.slice(4)).toEqual([
      showCents(costs.spentCents),
      showCents(costs.committedCents),
      showCents(costs.toComeCents),
    ]);
    expect(tableRows(sheet, 'What holding').at(-1)?.[2]).toBe(showCents(costs.holdingCents));
  });

  it('charges every day held once', () => {
    const rows = tableRows(sheet, 'Days by');
    const days = rows.slice(0, -1).reduce((sum, row) => sum + Number(row[1]), 0);
    expect(days).toBe(held.heldDays);
    expect(rows.at(-1)?.[1]).toBe(`${held.heldDays}`);
    const strip = sheet.blocks.find((block) => block.kind === 'hold-strip');
    expect(strip?.kind === 'hold-strip' && strip.axis.from).toBe(vehicle.purchase.boughtOn);
  });

  it('names the day and who it concerns for each line that has them', () => {
    const rows = tableRows(sheet, 'Every line');
    expect(rows[0]).toEqual(['Purchase', '2 Mar 2026', 'Purchase price', 'Harrow Cross auction', '9,137.00', '', '']);
    const labour = rows.find((row) => row[2] === 'Old module out, read on the bench');
    expect(labour?.[1]).toBe('17 Mar 2026');
    expect(labour?.[3]).toBe('Tomáš Dvořáček · 1\u00a0h\u00a015\u00a0min');
  });

  it('says that it is for the manager only', () => {
    expect(sheet.footer).toContain('for the manager only');
  });
});

describe('the margin on the cost sheet', () => {
  it('is planned from asking price, budget and tax, and is before holding', () => {
    const rows = tableRows(sheetOf(open), 'The margin');
    // 14,273.00 − 9,739.00 − 1,371.00 − (14,273.00 − 9,137.00) / 6
    expect(rows.at(-1)?.[1]).toBe('2,307.00');
    expect(rows.find((row) => row[0] === 'Tax on the margin')?.[1]).toBe('856.00');
    expect(rows.find((row) => row[0] === 'Holding')?.[1]).toBe('–');
  });

  it('that was made comes from the sale', () => {
    const rows = tableRows(sheetOf(sold, soldToday), 'The margin');
    const { costs } = reckonExample(sold, soldToday, shop);
    expect(rows[0]).toEqual(['Selling price', '14,273.00', '13,911.00', '\u2212362.00']);
    expect(rows.at(-1)?.[2]).toBe(showCents(costs.marginExpectedCents ?? Number.NaN));
  });

  it('is not planned without a budget, and the sheet says so', () => {
    const none = { ...open, targets: { ...open.targets, budgetCents: null } };
    expect(tableRows(sheetOf(none), 'The margin').at(-1)?.[1]).toBe('–');
    expect(sheetText(sheetOf(none))).toContain('No budget is set');
  });
});

describe('holding and cores on the cost sheet', () => {
  it('show nights, balances and payments of the funding plan', () => {
    const sheet = sheetOf(sold, soldToday);
    expect(tableRows(sheet, 'Nights').map((row) => row.slice(2))).toEqual([
      ['0', '8,223.30', 'free'],
      ['5', '8,223.30', '8.4 %'],
      ['30', '7,400.97', '8.4 %'],
      ['9', '6,578.64', '8.4 %'],
    ]);
    expect(tableRows(sheet, 'Payments').map((row) => row[3])).toEqual(['7,400.97', '6,578.64']);
  });

  it('tell an old unit that is owed from one that has gone back', () => {
    expect(tableRows(sheetOf(open), 'Core charges')[0]?.[3]).toBe('to be returned');
    expect(tableRows(sheetOf(sold, soldToday), 'Core charges')[0]?.[3]).toBe('returned 23 Mar 2026');
  });
});
