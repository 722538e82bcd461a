// Tables as CSV files: the rows in view, without what the role may not see, and nothing that runs as a formula.
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { Table } from '../../app/contract/table-channels.ts';
import { openTestDesk, type TestDesk, takeInOf, testPeople } from '../helpers/open-test-desk.ts';

let desk: TestDesk;
let id: string;

beforeEach(async () => {
  desk = await openTestDesk();
  const { revision } = await desk.ask('shop:read', {});
  await desk.ask('shop:change', { baseRevision: revision, change: { part: 'people', value: [...testPeople] } });
  const given = takeInOf('=LW-1', '1M8GDM9A3KP000009');
  const taken = await desk.ask('vehicle:take-in', { ...given, identity: { ...given.identity, colour: '+slate' } });
  id = taken.view.vehicle.id;
  await desk.ask('vehicle:change', {
    id,
    baseRevision: taken.view.revision,
    change: {
      kind: 'put',
      list: 'parts',
      item: {
        id: 'part-one',
        neededOn: '2026-03-05',
        what: '@pump, large',
        partNumber: 'P-1',
        supplier: 'Clearview',
        faultId: null,
        quantity: 2,
        priceCents: 12_345,
        coreChargeCents: 0,
        orderedOn: '2026-03-06',
        expectedOn: null,
        receivedOn: null,
        fittedOn: null,
        returnedOn: null,
        coreReturnedOn: null,
        chases: [],
        note: '',
      },
    },
  });
});
afterEach(() => desk.discard());

async function written(table: Table): Promise<string> {
  const { fileName } = await desk.ask('table:export', table);
  expect(fileName).toMatch(/^[a-z]+[A-Za-z0-9-]*-2026-03-18\.csv$/);
  return readFile(join(desk.folder, 'fleet', 'exports', fileName), 'utf8');
}
const at = (personId: string) => desk.ask('desk:set-person', { personId });

describe('a table', () => {
  it('of the Lot holds the money for the manager alone, and text that would run is disarmed', async () => {
    const whole = await written({ table: 'lot', ids: [id, 'vehicle-unknown'] });
    expect(whole).toContain("'=LW-1,1M8GDM9A3KP000009,2017,Merrowick,Mallow,'+slate");
    expect(whole.split('\r\n')[0]).toContain('Margin expected');
    expect(whole).toContain('10995');
    await at('tech-one');
    const ofWorkshop = await written({ table: 'lot', ids: [id] });
    expect(ofWorkshop).toContain("'=LW-1");
    expect(ofWorkshop).not.toMatch(/Margin|Spent|10995|6400/);
    await at('sales-one');
    expect((await written({ table: 'lot', ids: [id] })).split('\r\n')).toHaveLength(2);
  });

  it('of the entries of a vehicle is in the order of their days', async () => {
    const whole = await written({ table: 'ledger', id });
    const days = whole
      .split('\r\n')
      .slice(1, -1)
      .map((line) => line.slice(0, 10));
    expect(days).toEqual([...days].sort());
    expect(whole).toContain('2026-03-06,Part,"\'@pump, large",Clearview,2,246.9');
    await at('tech-one');
    expect(await written({ table: 'ledger', id })).not.toMatch(/Amount|6400|246/);
  });

  it('of parts has prices for who sees part prices', async () => {
    expect(await written({ table: 'parts', id })).toContain('123.45');
    await at('tech-one');
    expect(await written({ table: 'parts', id })).toContain('123.45');
    await at('sales-one');
    expect((await desk.refused('table:export', { table: 'parts', id })).code).toBe('not-allowed');
  });

  it('of next jobs names no amount to a technician', async () => {
    expect((await written({ table: 'next-jobs' })).split('\r\n')[0]).toContain('Loss a day');
    await at('tech-one');
    expect((await written({ table: 'next-jobs' })).split('\r\n')[0]).not.toContain('Loss a day');
  });
});
