// Several sheets at once on a real folder: separate and together, progress, cancelling, where they go, and finding them by their marks.
import { access, readdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { SheetOrder, SheetProgress } from '../../app/contract/sheet-channels.ts';
import { openTestDesk, type TestDesk, takeInOf, testPeople } from '../helpers/open-test-desk.ts';
import { checkSoundness, flatText, pageTexts, pdfFacts, placedWords } from '../helpers/read-pdf.ts';

const vins = ['1M8GDM9A3KP000009', '1M8GDM9A4KP000004', '1M8GDM9A8KP000006'];
let desk: TestDesk;
let ids: string[];

beforeEach(async () => {
  desk = await openTestDesk();
  const shop = await desk.ask('shop:read', {});
  await desk.ask('shop:change', { baseRevision: shop.revision, change: { part: 'people', value: [...testPeople] } });
  ids = [];
  for (const [index, vin] of vins.entries()) {
    const input = takeInOf(`LW-100${index + 1}`, vin);
    const taken = await desk.ask('vehicle:take-in', { ...input, identity: { ...input.identity, vinReason: 'test' } });
    ids.push(taken.view.vehicle.id);
  }
});
afterEach(() => desk.discard());

const order = (more: Partial<SheetOrder> = {}): SheetOrder => ({
  kinds: ['job-sheet'],
  vehicleIds: ids,
  to: 'folder',
  isJoint: false,
  ...more,
});
const sheetsFolder = () => join(desk.folder, 'fleet', 'sheets');
const inFolder = async () => (await readdir(sheetsFolder())).sort();
const read = (fileName: string) => readFile(join(sheetsFolder(), fileName));
const progress = () =>
  desk.emitted.filter(({ name }) => name === 'sheet:progress').map(({ payload }) => payload as SheetProgress);

async function markOf(fileName: string): Promise<string> {
  const mark = /mark (\w{3} \w{3})/.exec(flatText(await read(fileName)))?.[1];
  if (mark === undefined) throw new Error('There is no mark on the sheet.');
  return mark;
}

describe('several sheets', () => {
  it('are a file each, told one by one', async () => {
    const made = await desk.ask('sheet:make', order({ kinds: ['job-sheet', 'readiness-sheet'] }));
    expect(made.end).toBe('done');
    expect(made.files).toHaveLength(6);
    expect(await inFolder()).toEqual([
      'LW-1001-job-sheet.pdf',
      'LW-1001-readiness-sheet.pdf',
      'LW-1002-job-sheet.pdf',
      'LW-1002-readiness-sheet.pdf',
      'LW-1003-job-sheet.pdf',
      'LW-1003-readiness-sheet.pdf',
      'printed.jsonl',
    ]);
    expect(progress().map(({ done }) => done)).toEqual([0, 1, 2, 3, 4, 5, 6]);
    expect(progress()[1]).toEqual({ done: 1, total: 6, now: 'LW-1002' });
  });

  it('are one sound file, each with its own paper and its own count of pages', async () => {
    const made = await desk.ask('sheet:make', order({ kinds: ['job-sheet', 'fleet-list'], isJoint: true }));
    expect(made.files).toMatchObject([{ sheets: 4 }]);
    const bytes = await read(made.files[0]?.fileName ?? '');
    checkSoundness(bytes);
    expect(pdfFacts(bytes).get('Title')).toBe('4 sheets');
    expect(pdfFacts(bytes).get('Tagged')).toBe('yes');
    const pages = pageTexts(bytes);
    expect(pages).toHaveLength(made.files[0]?.pages ?? 0);
    expect(pages.filter((page) => page.includes('Page 1 of'))).toHaveLength(4);
    const sizes = placedWords(bytes).pages;
    expect(sizes[0]?.width).toBeLessThan(sizes[0]?.height ?? 0);
    expect(sizes.at(-1)?.width).toBeGreaterThan(sizes.at(-1)?.height ?? 0);
  });

  it('stop where they are cancelled: what was written is whole and told, the rest is not there', async () => {
    const making = desk.ask('sheet:make', order());
    while (progress().length < 2) await new Promise((resolve) => setImmediate(resolve));
    await desk.ask('sheet:cancel', {});
    const made = await making;
    expect(made.end).toBe('cancelled');
    expect(made.files.length).toBeGreaterThan(0);
    expect(made.files.length).toBeLessThan(3);
    expect((await inFolder()).filter((name) => name !== 'printed.jsonl')).toEqual(
      made.files.map(({ fileName }) => fileName),
    );
    for (const { fileName } of made.files) checkSoundness(await read(fileName));
  });

  it('leave no file at all when one for all is cancelled, and can be made again after it', async () => {
    const making = desk.ask('sheet:make', order({ isJoint: true }));
    await desk.ask('sheet:cancel', {});
    expect(await making).toMatchObject({ end: 'cancelled', files: [] });
    await expect(access(sheetsFolder())).rejects.toThrow();
    expect(await desk.ask('sheet:make', order())).toMatchObject({ end: 'done' });
  });

  it('stop when somebody else sits down', async () => {
    const making = desk.ask('sheet:make', order());
    await desk.ask('desk:set-person', { personId: 'sales-one' });
    expect((await making).end).toBe('cancelled');
  });

  it('are refused while others are being made', async () => {
    const making = desk.ask('sheet:make', order());
    expect((await desk.refused('sheet:make', order())).detail).toContain('already');
    await making;
  });

  it('go where the person says, or nowhere', async () => {
    const one = await desk.ask('sheet:make', order({ vehicleIds: ids.slice(0, 1), to: 'file' }));
    expect(one).toMatchObject({ end: 'done', isInFolder: false });
    expect(await readdir(join(desk.folder, 'chosen'))).toEqual(['LW-1001-job-sheet.pdf']);
    await desk.ask('sheet:make', order({ to: 'file' }));
    expect(await readdir(join(desk.folder, 'chosen'))).toHaveLength(3);
  });

  it('are handed over for printing as one finished file', async () => {
    const made = await desk.ask('sheet:make', order({ to: 'printer' }));
    const fileName = made.files[0]?.fileName ?? '';
    expect(desk.opened).toEqual([`print ${join(sheetsFolder(), fileName)}`]);
    checkSoundness(await read(fileName));
  });

  it('are remembered as what was chosen last', async () => {
    expect(await desk.ask('sheet:choice', {})).toBeNull();
    await desk.ask('sheet:make', order({ kinds: ['fleet-list'], isJoint: true }));
    expect(await desk.ask('sheet:choice', {})).toEqual({ kinds: ['fleet-list'], to: 'folder', isJoint: true });
  });

  it('are refused for a vehicle that is not there', async () => {
    expect((await desk.refused('sheet:make', order({ vehicleIds: ['vehicle-gone'] }))).code).toBe('not-found');
  });
});

describe('a mark', () => {
  it('tells vehicle, kind and who printed it, and whether the record has changed since', async () => {
    await desk.ask('sheet:make', order());
    const mark = await markOf('LW-1001-job-sheet.pdf');
    const [found] = (await desk.ask('sheet:find-mark', { mark })).found;
    expect(found).toMatchObject({ kind: 'job-sheet', vehicleId: ids[0], printedBy: 'Manager', standing: 'current' });
    const view = await desk.ask('vehicle:open', { id: ids[0] ?? '' });
    await desk.ask('vehicle:change', {
      id: ids[0] ?? '',
      baseRevision: view.revision,
      change: { kind: 'set', section: 'arrival', value: { expectedOn: null, arrivedOn: '2026-03-05' } },
    });
    const [later] = (await desk.ask('sheet:find-mark', { mark })).found;
    expect(later).toMatchObject({ standing: 'older', revision: view.revision, nowRevision: view.revision + 1 });
  });

  it('of a fleet sheet is out of date as soon as anything in the fleet changes', async () => {
    await desk.ask('sheet:make', order({ kinds: ['parts-list'], vehicleIds: [] }));
    const mark = await markOf('parts-list-2026-03-18.pdf');
    expect((await desk.ask('sheet:find-mark', { mark })).found).toMatchObject([
      { standing: 'current', isOfToday: true },
    ]);
    desk.setToday('2026-03-19');
    expect((await desk.ask('sheet:find-mark', { mark })).found).toMatchObject([
      { standing: 'current', isOfToday: false },
    ]);
    const view = await desk.ask('vehicle:open', { id: ids[2] ?? '' });
    await desk.ask('vehicle:withdraw', { id: ids[2] ?? '', baseRevision: view.revision });
    expect((await desk.ask('sheet:find-mark', { mark })).found).toMatchObject([{ standing: 'older' }]);
  });

  it('of a vehicle that has left the fleet says so, and tells sales nothing of it', async () => {
    await desk.ask('sheet:make', order({ kinds: ['readiness-sheet'] }));
    const mark = await markOf('LW-1002-readiness-sheet.pdf');
    const view = await desk.ask('vehicle:open', { id: ids[1] ?? '' });
    await desk.ask('vehicle:withdraw', { id: ids[1] ?? '', baseRevision: view.revision });
    expect((await desk.ask('sheet:find-mark', { mark })).found).toMatchObject([{ standing: 'gone' }]);
    await desk.ask('desk:set-person', { personId: 'sales-one' });
    expect((await desk.ask('sheet:find-mark', { mark })).found).toEqual([]);
  });

  it('is noted with no amount of money', async () => {
    await desk.ask('sheet:make', order({ kinds: ['money-summary', 'fleet-list', 'parts-list'], vehicleIds: [] }));
    const register = await readFile(join(sheetsFolder(), 'printed.jsonl'), 'utf8');
    expect(register.trim().split('\n')).toHaveLength(3);
    expect(register).not.toMatch(/cents|price|amount|\d\.\d\d[^\d]/i);
  });

  it('that is none is told from one that is not known', async () => {
    expect((await desk.ask('sheet:find-mark', { mark: 'AAAAAB' })).problem).not.toBe('');
    expect(await desk.ask('sheet:find-mark', { mark: '222222' })).toEqual({ problem: '', found: [] });
  });
});

describe('sheets of the fleet by role', () => {
  it('are for the manager all of them', async () => {
    const kinds = ['parts-list', 'fleet-list', 'money-summary'] as const;
    expect((await desk.ask('sheet:make', order({ kinds: [...kinds], vehicleIds: [] }))).files).toHaveLength(3);
    expect(flatText(await read('money-summary-2026-03-18.pdf'))).toContain('tied up in 3 vehicles');
  });

  it('are for the technician without the money of the vehicles', async () => {
    await desk.ask('desk:set-person', { personId: 'tech-one' });
    expect((await desk.refused('sheet:make', order({ kinds: ['money-summary'], vehicleIds: [] }))).code).toBe(
      'not-allowed',
    );
    expect((await desk.refused('sheet:preview-fleet', { kind: 'money-summary', vehicleIds: [] })).code).toBe(
      'not-allowed',
    );
    await desk.ask('sheet:make', order({ kinds: ['fleet-list'], vehicleIds: [] }));
    const words = flatText(await read('fleet-list-2026-03-18-with-forecasts.pdf'));
    expect(words).toContain('LW-1003');
    expect(words).not.toMatch(/Margin|\d\.\d\d/);
  });

  it('are for sales the list of what they may show, and no parts', async () => {
    await desk.ask('desk:set-person', { personId: 'sales-one' });
    expect((await desk.refused('sheet:make', order({ kinds: ['parts-list'], vehicleIds: [] }))).code).toBe(
      'not-allowed',
    );
    const sheet = await desk.ask('sheet:preview-fleet', { kind: 'fleet-list', vehicleIds: ids });
    expect(JSON.stringify(sheet)).not.toContain('LW-1001');
  });
});
