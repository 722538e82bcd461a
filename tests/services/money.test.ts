// The fleet's money on a real folder, by hand, and its tables as files.
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { defaultShop } from '../../app/services/default-shop.ts';
import { openTestDesk, type TestDesk, takeInOf } from '../helpers/open-test-desk.ts';

let desk: TestDesk;
beforeEach(async () => {
  desk = await openTestDesk();
  const change = async (part: object) => {
    const { revision } = await desk.ask('shop:read', {});
    await desk.ask('shop:change', { baseRevision: revision, change: part as never });
  };
  await change({ part: 'rates', value: { ...defaultShop.rates, overheadCentsPerDay: 10_00 } });
  await change({
    part: 'fundingPlans',
    value: [
      {
        id: 'plan-one',
        name: 'Plan',
        advancePpm: 1_000_000,
        ratePpm: 73_000,
        rateChanges: [],
        dayCount: 'actual-365',
        freeDays: 0,
        drawFeeCents: 0,
        curtailments: [{ kind: 'percent-of-original', valuePpm: 100_000, dayMark: 30, every: null }],
        floor: null,
        payoffWorkingDays: null,
      },
    ],
  });
  const one = takeInOf('LW-1001', '1M8GDM9A3KP000009');
  await desk.ask('vehicle:take-in', {
    ...one,
    purchase: { ...one.purchase, priceCents: 1_000_000, fundingPlanId: 'plan-one' },
  });
  await desk.ask('vehicle:take-in', takeInOf('LW-1002', '1M8GDM9A4KP000004'));
});
afterEach(() => desk.discard());

describe('the money of the fleet', () => {
  it('is what each vehicle says of itself, added up', async () => {
    const { overview } = await desk.ask('money:read', {});
    // Both held 16 days at 10.00: 10,000 + 250 + 120 + 160 with 16 days of 2.00 to the lender, and 6,400 + 250 + 120 + 160.
    expect(overview.tiedUpCents).toBe(1_000_000 + 37_000 + 16_000 + 3_200 + 640_000 + 37_000 + 16_000);
    expect(overview.nextDayCents).toBe(12_00 + 10_00);
    expect(overview.owedToLendersCents).toBe(1_000_000);
    expect(overview.due).toHaveLength(1);
    expect(overview.due[0]).toMatchObject({ dueOn: '2026-04-01', cents: 100_000 });
    expect(overview.ageing.map(({ vehicles }) => vehicles)).toEqual([2, 0, 0, 0]);
    expect(overview.all.heldDays).toBe(32);
    expect(overview.measures).toMatchObject({ inStock: 2, sold: 0, daysSupply: null });
    expect(overview.notWeighed).toBe(2);
  });

  it('knows no forecast of the past before anything was sold', async () => {
    const { backTest } = await desk.ask('money:read', {});
    expect(backTest).toMatchObject({ cases: 0, safeMet: 0, medianMissDays: null });
  });

  it('is written as a table into the fleet’s own folder, by a name that is made here', async () => {
    const { fileName } = await desk.ask('money:export', { table: 'due' });
    expect(fileName).toBe('due-2026-03-18.csv');
    const text = await readFile(join(desk.folder, 'fleet', 'exports', fileName), 'utf8');
    expect(text).toBe(
      '\uFEFFDue on,Stock number,Amount,What\r\n2026-04-01,LW-1001,1000,10 % of the original principal\r\n',
    );
    await desk.ask('money:show-folder', {});
    expect(desk.opened.at(-1)).toBe(join(desk.folder, 'fleet', 'exports'));
  });

  it.each(['ageing', 'days-by-cause', 'sold', 'let-go', 'slowest'] as const)(
    'is written as the table %s',
    async (table) => {
      const { fileName } = await desk.ask('money:export', { table });
      const lines = (await readFile(join(desk.folder, 'fleet', 'exports', fileName), 'utf8')).trimEnd().split('\r\n');
      const width = lines[0]?.split(',').length;
      for (const line of lines) expect(line.split(',').length).toBe(width);
    },
  );
});
