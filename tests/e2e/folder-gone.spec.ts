// The fleet folder goes away while the program runs (a drive is unplugged): the save says so and keeps what was typed, and the same
// form saves once the folder is back.
import { rename } from 'node:fs/promises';
import { makeShop, makeVehicle } from '../helpers/vehicle-maker.ts';
import { expectSaved, fill, form, keep, openVehicle, section } from './at-the-desk.ts';
import { expect, test } from './fixtures.ts';
import { records } from './lay-records.ts';

const fleet = [
  makeVehicle('2026-02-16', {
    id: 'kept-one',
    identity: { stockNumber: 'G-1', vin: '', vinReason: 'plate not read yet' },
  }),
];
test.use({ fleet: records(makeShop(), fleet) });

test('what was typed outlives the folder going away, and is saved when it is back', async ({ page, program }) => {
  await expect(page.getByText(/^Last backup \d/)).toBeVisible();
  await openVehicle(page, 'G-1');
  await page.getByRole('button', { name: 'Add note', exact: true }).click();
  const note = form(page, 'Add note');
  await fill(note, { Note: 'Typed while the drive was away.' });
  const elsewhere = `${program.fleetFolder}-unplugged`;
  await rename(program.fleetFolder, elsewhere);
  await note.getByRole('button', { name: 'Add', exact: true }).click();
  await expect(page.getByText(/The fleet folder cannot be reached, so it was not saved\./).first()).toBeVisible();
  await expect(note.getByLabel(/^Note/)).toHaveValue('Typed while the drive was away.');
  await rename(elsewhere, program.fleetFolder);
  await keep(note, 'Add');
  await expectSaved(page);
  await expect(section(page, 'Notes')).toContainText('Typed while the drive was away.');
});
