// A photograph that has gone from the fleet folder: told on Safety copies without naming it to everybody, looked at, put back from the
// store beside the backups. And the archive that carries photographs or leaves them out.
import { readdir, rm } from 'node:fs/promises';
import path from 'node:path';
import { makeShop, makeVehicle } from '../helpers/vehicle-maker.ts';
import { goTo, lotRow } from './at-the-desk.ts';
import { expectAccessible } from './axe.ts';
import { expect, test } from './fixtures.ts';
import { records } from './lay-records.ts';

const fleet = [
  makeVehicle('2026-02-16', { id: 'kept-one', identity: { stockNumber: 'B-1', vin: '', vinReason: 'not read yet' } }),
];
test.use({ fleet: records(makeShop(), fleet) });

test('a document that has gone is told, looked at and put back; the archive says how much it would add', async ({
  program,
}) => {
  await expect(program.page.getByText(/^Last backup \d/)).toBeVisible();
  const added = await program.page.evaluate(async () => {
    const { ask } = window.lotwright;
    const opened = await ask['vehicle:open']({ id: 'kept-one' });
    if (!opened.ok) return opened.error.code;
    const bytes = new TextEncoder().encode(`%PDF-1.4\n${'invented '.repeat(1000)}\n%%EOF\n`);
    const { revision, today } = opened.value;
    const text = { name: 'report of the auction.pdf', caption: 'Condition report', on: today };
    const file = { bytes, small: null, print: null, ...text };
    const answer = await ask['attachment:add']({ id: 'kept-one', baseRevision: revision, ...file });
    return answer.ok ? 'added' : answer.error.code;
  });
  expect(added).toBe('added');
  await program.page.getByRole('contentinfo').getByRole('button', { name: 'Safety copies' }).click();
  await program.page.getByRole('button', { name: 'Make a backup now' }).click();
  await expect(program.page.getByText('A backup was made and read back.').first()).toBeVisible();
  await program.close();
  const folder = path.join(program.fleetFolder, 'attachments', 'kept-one');
  const [name = ''] = await readdir(folder);
  await rm(path.join(folder, name));

  await program.start();
  const { page } = program;
  await expect(lotRow(page, 'B-1')).toBeVisible();
  await page.getByRole('contentinfo').getByRole('button', { name: 'Safety copies' }).click();
  const troubles = page.getByRole('region', { name: /^Files that could not be used/ });
  await expect(troubles).toContainText('1 photograph or document of B-1 is not in the fleet folder');
  await expect(troubles).not.toContainText('report of the auction');
  await expectAccessible(page, 'safety copies');
  await troubles.getByRole('button', { name: /^Look at the copy of/ }).click();
  const copy = page.getByRole('dialog');
  await expect(copy).toContainText('report of the auction.pdf');
  await expect(copy).toContainText('What has gone or is damaged comes back as it was written.');
  await copy.getByRole('button', { name: 'Put this copy back' }).click();
  await expect(troubles).toContainText('Every file of the fleet reads as it was written.');
  expect(await readdir(folder)).toEqual([name]);

  await goTo(page, 'Setup');
  const archive = page.getByRole('region', { name: 'The whole fleet as one file' });
  await expect(archive.getByLabel('With 1 photograph or document')).toBeChecked();
  await archive.scrollIntoViewIfNeeded();
  await expectAccessible(page, 'setup');
});
