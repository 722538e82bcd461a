// Taking in a purchase list on a real folder: read, tried, taken in, taken back as one act.
import { rename, rm } from 'node:fs/promises';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { ListLook } from '../../app/contract/list-import-channels.ts';
import type { ListReading } from '../../app/domain/import/try-list.ts';
import { readList } from '../../app/services/read-list.ts';
import { openTestDesk, type TestDesk, takeInOf } from '../helpers/open-test-desk.ts';

const list = [
  'Stock;VIN;Marke;Kaufdatum;Preis;Lane',
  'A1;1M8GDM9A3KP000009;Merrowick;01.03.2026;6.400,50;7',
  'A2;;Merrowick;02.03.2026;"5.000,00";8',
  'A3;1M8GDM9AXKP000010;"Merrowick;Works";16.03.2026;;9',
].join('\r\n');

let desk: TestDesk;
beforeEach(async () => {
  desk = await openTestDesk();
});
afterEach(() => desk.discard());

function readingOf(look: ListLook, changes: Partial<ListReading> = {}): ListReading {
  const { match, decimalForms, dayForms } = look;
  return {
    match,
    decimalForms,
    dayForms,
    odometerUnit: 'mi',
    boughtOn: null,
    vinReason: '',
    numbersStock: true,
    ...changes,
  };
}

describe('a list', () => {
  it.each([
    ['a,b\n1,2\n', ','],
    ['sep=;\r\na;b\r\n1,5;2\r\n', ';'],
    ['a\tb\n1\t2\n', '\t'],
    ['a;b\n"1;\n5";2,5\n', ';'],
    ['a,b\n"1;2;3",4\n', ','],
  ])('%j is separated by %j', (text, separator) => {
    const read = readList(text);
    expect(read.ok && [read.value.separator, read.value.headers, read.value.rows.length]).toEqual([
      separator,
      ['a', 'b'],
      1,
    ]);
  });

  it.each([
    ['', 'no rows'],
    ['a,b', 'no rows'],
    ['a,b\n"1,2', 'never closed'],
  ])('%j is refused with a sentence', async (text, sentence) => {
    const error = await desk.refused('list:look', { text });
    expect(error).toMatchObject({ code: 'bad-list' });
    expect(error.detail).toContain(sentence);
  });

  it('is looked at, tried, and taken in where it is good; the columns are remembered', async () => {
    const look = await desk.ask('list:look', { text: list });
    expect(look).toMatchObject({
      separator: ';',
      rowCount: 3,
      match: ['stockNumber', 'vin', 'make', 'boughtOn', 'price', null],
      isRemembered: false,
    });
    expect([look.decimalForms[4], look.dayForms[3]]).toEqual(['comma', 'day-first']);
    const match = look.match.map((fact, at) => (at === 5 ? ('location' as const) : fact));
    const reading = readingOf(look, { match });
    const tried = await desk.ask('list:try', { text: list, reading });
    expect(tried.map(({ problems }) => problems.length)).toEqual([0, 1, 1]);
    const answer = await desk.ask('list:take-in', { text: list, reading, rows: [0, 1] });
    expect(answer.taken.map(({ stockNumber }) => stockNumber)).toEqual(['A1']);
    expect(answer.left).toEqual([{ row: 1, stockNumber: 'A2', sentence: tried[1]?.problems[0] }]);
    const { vehicle } = await desk.ask('vehicle:open', { id: answer.taken[0]?.id ?? '' });
    expect(vehicle).toMatchObject({
      identity: { make: 'Merrowick', location: '7' },
      purchase: { priceCents: 640_050, boughtOn: '2026-03-01' },
    });
    expect(await desk.ask('list:look', { text: list })).toMatchObject({ isRemembered: true, match });
  });

  it('taken in is one act: one undo takes all of it back, one redo brings it back, and what was there before stays', async () => {
    await desk.ask('vehicle:take-in', takeInOf('LW-1', '1M8GDM9A1KP000008'));
    const look = await desk.ask('list:look', { text: list });
    const reading = readingOf(look, { vinReason: 'Plate not read yet' });
    const { taken, desk: after } = await desk.ask('list:take-in', { text: list, reading, rows: [0, 1, 2] });
    expect(taken).toHaveLength(2);
    expect(after.undo).toBe('2 vehicles taken in from a list');
    await desk.ask('edit:undo', {});
    expect((await desk.ask('lot:read', {})).map(({ identity }) => identity.stockNumber)).toEqual(['LW-1']);
    await desk.ask('edit:redo', {});
    expect(await desk.ask('lot:read', {})).toHaveLength(3);
    expect((await desk.ask('desk:read', {})).undo).toBe('2 vehicles taken in from a list');
  });

  it('that cannot be written says so for every row, leaves no act behind, and can be taken in afterwards', async () => {
    await desk.ask('vehicle:take-in', takeInOf('LW-1', '1M8GDM9A1KP000008'));
    const reading = readingOf(await desk.ask('list:look', { text: list }), { vinReason: 'Plate not read yet' });
    const fleet = join(desk.folder, 'fleet');
    await rename(fleet, `${fleet}-gone`);
    const answer = await desk.ask('list:take-in', { text: list, reading, rows: [0, 1] });
    expect(answer.taken).toEqual([]);
    expect(answer.left.map(({ stockNumber }) => stockNumber)).toEqual(['A1', 'A2']);
    for (const { sentence } of answer.left) expect(sentence).toMatch(/\.$/);
    expect(answer.desk.undo).not.toContain('from a list');
    await rm(fleet, { recursive: true, force: true });
    await rename(`${fleet}-gone`, fleet);
    expect((await desk.ask('list:take-in', { text: list, reading, rows: [0, 1] })).taken).toHaveLength(2);
  });

  it('of two thousand rows is tried in a moment', async () => {
    const rows = Array.from({ length: 2_000 }, (_, at) => `S${at};;Merrowick;01.03.2026;${at},00`);
    const text = ['Stock;VIN;Make;Kaufdatum;Preis', ...rows].join('\n');
    const look = await desk.ask('list:look', { text });
    const began = performance.now();
    const tried = await desk.ask('list:try', { text, reading: readingOf(look, { vinReason: 'No plate yet' }) });
    expect(tried.filter(({ problems }) => problems.length === 0)).toHaveLength(2_000);
    expect(performance.now() - began).toBeLessThan(5_000);
  });
});
