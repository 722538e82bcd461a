// Nothing that was acknowledged is lost when the program's process is killed, whatever it was doing at that moment.
import { readdir } from 'node:fs/promises';
import path from 'node:path';
import { makeShop, makeVehicle } from '../helpers/vehicle-maker.ts';
import { expectSaved, fill, form, goTo, keep, openVehicle, section } from './at-the-desk.ts';
import { type Acknowledged, saveWithoutEnd, vehiclesOnDisk } from './endless-saves.ts';
import { expect, test } from './fixtures.ts';
import { records } from './lay-records.ts';

const ids = ['kept-1', 'kept-2', 'kept-3', 'kept-4', 'kept-5', 'kept-6'];
const fleet = ids.map((id, index) =>
  makeVehicle('2026-02-16', {
    id,
    identity: { stockNumber: `K-${index + 1}`, vin: '', vinReason: 'plate not read yet' },
  }),
);

test.use({
  fleet: records(makeShop(), fleet),
  // Chromium says so when its browser process is killed under it.
  expectedErrors: [/^page: its process crashed$/],
});

test('a change that the status line calls saved is there after the process was killed', async ({ page, program }) => {
  await openVehicle(page, 'K-1');
  await page.getByRole('button', { name: 'Add note', exact: true }).click();
  await fill(form(page, 'Add note'), { Note: 'Written just before the power went.' });
  await keep(form(page, 'Add note'), 'Add');
  await expectSaved(page);
  await program.kill();
  await program.start();
  await openVehicle(program.page, 'K-1');
  await expect(section(program.page, 'Notes')).toContainText('Written just before the power went.');
  await expect(program.page.getByText(/could not be read/)).toHaveCount(0);
});

test('a setting that the status line calls saved is there after the process was killed', async ({ page, program }) => {
  await goTo(page, 'Setup');
  await fill(form(page, 'Dealer'), { Name: 'Yard after the storm' });
  await page.getByRole('button', { name: 'Save Dealer' }).click();
  await expectSaved(page);
  await program.kill();
  await program.start();
  await goTo(program.page, 'Setup');
  await expect(form(program.page, 'Dealer').getByLabel('Name *')).toHaveValue('Yard after the storm');
});

test('whatever was acknowledged in a burst of saves is there after the process was killed in it', async ({
  program,
}) => {
  test.setTimeout(180_000);
  const told: Acknowledged[] = [];
  // After so many acknowledgements the process is killed: while the first files are written, and in full flow.
  for (const [round, killAfter] of [1, 2, 7, 20, 45].entries()) {
    const before = told.length;
    let killing: Promise<void> | null = null;
    await program.page.exposeFunction('acknowledged', (one: Acknowledged) => {
      told.push(one);
      if (told.length - before >= killAfter) killing ??= program.kill();
    });
    // Ends with the process; how, is not of interest.
    await saveWithoutEnd(program, { ids, round, padding: 'Words. '.repeat(40) }).catch(() => undefined);
    expect(killing, 'the burst ended before the process was killed').not.toBeNull();
    await killing;
    const kept = await vehiclesOnDisk(program);
    expect([...kept.keys()].sort()).toEqual([...ids].sort());
    for (const { id, noteId, revision } of told) {
      const record = kept.get(id);
      expect(record?.data.notes.map((note) => note.id)).toContain(noteId);
      expect(record?.revision ?? 0).toBeGreaterThanOrEqual(revision);
    }
    await program.start();
    await expect(program.page.getByRole('heading', { level: 1, name: 'Lot' })).toBeVisible();
    await expect(program.page.getByText(/could not be read/)).toHaveCount(0);
  }
  // Nothing half written is left lying about once the program has started again.
  const names = await readdir(path.join(program.fleetFolder, 'vehicles'));
  expect(names.filter((name) => !name.endsWith('.json'))).toEqual([]);
  for (const id of ids) {
    const stockNumber = `K-${ids.indexOf(id) + 1}`;
    await openVehicle(program.page, stockNumber);
    // The head of the table is a row too.
    const count = told.filter((one) => one.id === id).length;
    expect(await section(program.page, 'Notes').getByRole('row').count()).toBeGreaterThan(count);
    await program.page.keyboard.press('Escape');
  }
});

test('a save based on an older state is refused, and a screen loses nothing of what is typed on it', async ({
  page,
}) => {
  await openVehicle(page, 'K-2');
  await page.getByRole('button', { name: 'Add note', exact: true }).click();
  await fill(form(page, 'Add note'), { Note: 'Typed on this screen.' });
  // Saved meanwhile with the same revision that this screen has.
  await page.evaluate(async () => {
    const open = await window.lotwright.ask['vehicle:open']({ id: 'kept-2' });
    if (!open.ok) throw new Error(open.error.code);
    const item = { id: 'note-meanwhile', on: open.value.today, text: 'Saved meanwhile.' };
    const change = { kind: 'put', list: 'notes', item } as const;
    await window.lotwright.ask['vehicle:change']({ id: 'kept-2', baseRevision: open.value.revision, change });
    const again = await window.lotwright.ask['vehicle:change']({
      id: 'kept-2',
      baseRevision: open.value.revision,
      change: { ...change, item: { ...item, id: 'note-stale' } },
    });
    if (again.ok || again.error.code !== 'stale-revision') throw new Error('A stale save was taken.');
  });
  await keep(form(page, 'Add note'), 'Add');
  await expect(section(page, 'Notes')).toContainText('Typed on this screen.');
  await expect(section(page, 'Notes')).toContainText('Saved meanwhile.');
});
