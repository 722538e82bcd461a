// Photographs and documents of a vehicle in the running program: chosen, dropped and pasted, refused with the reason, described, printed,
// taken off and back, and seen by those for whom they are.
import { readdir, readFile } from 'node:fs/promises';
import path from 'node:path';
import type { Vehicle } from '../../app/domain/vehicle/vehicle.ts';
import { hashOf } from '../helpers/example-pictures.ts';
import { PdfObjects } from '../helpers/pdf-objects.ts';
import { expectSaved, goTo, openVehicle, seat } from './at-the-desk.ts';
import {
  attachmentsOf,
  choose,
  describeFile,
  document,
  drag,
  expectAdded,
  heic,
  paste,
  photograph,
} from './attachment-steps.ts';
import { expectAccessible } from './axe.ts';
import { expect, type Program, test } from './fixtures.ts';
import { readPrinted } from './printed-sheets.ts';

test.use({ fleet: 'sample' });

/** In work, so that every role but sales has it in the lot. */
const stockNumber = 'Q1129';
const vehicleId = 'sample-q1129';

async function kept({ fleetFolder }: Program): Promise<Vehicle['attachments']> {
  const text = await readFile(path.join(fleetFolder, 'vehicles', `${vehicleId}.json`), 'utf8');
  return (JSON.parse(text) as { data: Vehicle }).data.attachments;
}

async function filesOf({ fleetFolder }: Program): Promise<readonly string[]> {
  return readdir(path.join(fleetFolder, 'attachments', vehicleId)).catch(() => []);
}

test('what is chosen is kept as it is, and what cannot be kept is named with its reason', async ({ page, program }) => {
  await openVehicle(page, stockNumber);
  const place = attachmentsOf(page);
  await expect(place.getByText(/^Nothing here yet\. Drop photographs or PDF documents anywhere/)).toBeVisible();
  // Noted as it is drawn: a file is through before anybody could look twice.
  await page.evaluate(() => {
    const told: string[] = [];
    const note = () => {
      const now = globalThis.document.querySelector('.adding-now')?.textContent ?? '';
      if (now !== '' && told.at(-1) !== now) told.push(now);
    };
    new MutationObserver(note).observe(globalThis.document.body, {
      subtree: true,
      childList: true,
      characterData: true,
    });
    Object.assign(globalThis, { toldOfAdding: told });
  });
  const door = photograph('IMG_0001.jpg', 180);
  await choose(page, [
    door,
    photograph('IMG_0002.jpg', 90, 6),
    document('inspection.pdf'),
    heic,
    { ...door, name: 'IMG_0001 (1).jpg' },
    { name: 'notes.txt', mimeType: 'text/plain', buffer: Buffer.from('words') },
    { name: 'empty.jpg', mimeType: 'image/jpeg', buffer: Buffer.alloc(0) },
  ]);
  await expectAdded(page, 3);
  await expectSaved(page);
  expect(await page.evaluate(() => (globalThis as unknown as { toldOfAdding: string[] }).toldOfAdding)).toEqual([
    'Adding 1 of 7: IMG_0001.jpg',
    'Adding 2 of 7: IMG_0002.jpg',
    'Adding 3 of 7: inspection.pdf',
    'Adding 4 of 7: IMG_0007.HEIC',
    'Adding 5 of 7: IMG_0001 (1).jpg',
    'Adding 6 of 7: notes.txt',
    'Adding 7 of 7: empty.jpg',
  ]);
  const refused = place.getByRole('alert');
  await expect(refused.getByRole('listitem')).toHaveText([
    /^IMG_0007\.HEIC This is a HEIC picture/,
    /^IMG_0001 \(1\)\.jpg This file is on this vehicle already: IMG_0001\.jpg/,
    /^notes\.txt /,
    /^empty\.jpg The file is empty/,
  ]);
  await expect(place.getByRole('list', { name: 'Photographs' }).getByRole('listitem')).toHaveCount(2);
  await expect(place.getByRole('list', { name: 'Documents' }).getByRole('listitem')).toHaveCount(1);

  // The file is there to the last byte, with a small copy and one for paper; each is named by what is in it.
  const files = await filesOf(program);
  expect(files).toContain(`${hashOf(door.buffer)}.jpg`);
  expect(files).toHaveLength(7);
  for (const name of files)
    expect(hashOf(await readFile(path.join(program.fleetFolder, 'attachments', vehicleId, name)))).toBe(
      name.replace(/\..*$/, ''),
    );
  const [first, second] = await kept(program);
  expect(first).toMatchObject({ name: 'IMG_0001.jpg', widthDots: 800, heightDots: 600, readers: 'workshop' });
  // Held upright: what it is looked at as, not how the sensor lay.
  expect(second).toMatchObject({ widthDots: 600, heightDots: 800 });
  const upright = place.getByRole('button', { name: 'Show large: IMG_0002.jpg' }).locator('img');
  await upright.scrollIntoViewIfNeeded();
  await expect
    .poll(() => upright.evaluate((image: HTMLImageElement) => [image.naturalWidth, image.naturalHeight]))
    .toEqual([240, 320]);

  // Tried again it is refused again; left out it is gone from the list.
  await refused.getByRole('button', { name: 'Try again: IMG_0007.HEIC' }).click();
  await expect(refused.getByRole('listitem')).toHaveCount(4);
  for (const name of ['IMG_0007.HEIC', 'IMG_0001 (1).jpg', 'notes.txt', 'empty.jpg'])
    await refused.getByRole('button', { name: `Leave it out: ${name}` }).click();
  await expect(refused).toHaveCount(0);
});

test('files dropped anywhere on the vehicle are added; dropped elsewhere they change nothing', async ({
  page,
  program,
}) => {
  const address = page.url();
  const folder = program.dataFolder;
  const onLot = await drag(page, folder, [photograph('elsewhere.jpg', 10)]);
  await onLot.drop();
  await expect(page.getByRole('rowheader').first()).toBeVisible();
  expect(page.url()).toBe(address);

  await openVehicle(page, stockNumber);
  const held = await drag(page, folder, [photograph('left.jpg', 120), photograph('right.jpg', 200)]);
  await expect(page.getByText(`Drop to add to ${stockNumber}`)).toBeVisible();
  await held.drop();
  await expect(page.getByText(`Drop to add to ${stockNumber}`)).toHaveCount(0);
  await expectAdded(page, 2);
  expect((await kept(program)).map(({ name }) => name)).toEqual(['left.jpg', 'right.jpg']);
  // The person is taken to where they arrived.
  await expect(attachmentsOf(page)).toBeInViewport();
  expect(page.url()).toBe(address);

  await paste(page, photograph('image.jpg', 30));
  await expect(attachmentsOf(page).getByRole('listitem')).toHaveCount(3);
  expect(await kept(program)).toHaveLength(3);
});

test('a photograph chosen for sheets is on the paper, with its words for whoever cannot see it', async ({
  page,
  program,
}) => {
  await openVehicle(page, stockNumber);
  await choose(page, [photograph('IMG_0001.jpg', 180), photograph('IMG_0002.jpg', 90)]);
  await expectAdded(page, 2);
  const place = attachmentsOf(page);
  // Without words it is not printed, and the form says why.
  await place.getByRole('button', { name: 'Describe: IMG_0001.jpg', exact: true }).click();
  const form = place.getByRole('form', { name: 'Correct: IMG_0001.jpg' });
  await form.getByLabel('Print it on sheets').check();
  await form.getByRole('button', { name: 'Save', exact: true }).click();
  await expect(form.getByText(/^Say what the picture shows/)).toBeVisible();
  await form.getByLabel('What it shows').fill('Scratch on the left door');
  await form.getByRole('button', { name: 'Save', exact: true }).click();
  await expect(form).toHaveCount(0);

  await page.getByRole('button', { name: 'Job sheet', exact: true }).click();
  await expect(page.getByRole('button', { name: 'Open', exact: true })).toBeVisible();
  const printed = async (kind: string) => {
    const name = `${stockNumber}-${kind}.pdf`;
    const file = new PdfObjects(await readFile(path.join(program.fleetFolder, 'sheets', name)));
    return {
      words: await readPrinted(program, name),
      photographs: file.allDictionaries.filter((one) => one['/Subtype'] === '/Image' && one['/Width'] === 800),
      alternates: file.allDictionaries.filter((one) => one['/S'] === '/Figure').map((one) => String(one['/Alt'])),
    };
  };
  const jobSheet = await printed('job-sheet');
  expect(jobSheet.words).toContain('Scratch on the left door');
  expect(jobSheet.photographs).toHaveLength(1);
  expect(jobSheet.alternates.filter((text) => /Photograph of .*Scratch on the left door/.test(text))).toHaveLength(1);

  // For the workshop it is on no sheet that sales hands out, until somebody says that everyone sees it.
  await page.getByRole('button', { name: 'Readiness sheet', exact: true }).click();
  await expect(page.getByText(`${stockNumber}-readiness-sheet.pdf`).first()).toBeAttached();
  expect((await printed('readiness-sheet')).photographs).toEqual([]);
  await describeFile(page, 'Scratch on the left door', { readers: 'Everyone, sales too' });
  await page.getByRole('button', { name: 'Readiness sheet', exact: true }).click();
  await expect.poll(async () => (await printed('readiness-sheet')).photographs.length).toBe(1);

  await page.getByRole('button', { name: 'Sheets …' }).click();
  const paper = page.getByRole('article', { name: new RegExp(stockNumber) });
  await expect(paper.getByRole('img', { name: /^Photograph of .*Scratch on the left door$/ })).toBeVisible();
});

test('one is taken off and comes back; its file stays', async ({ page, program }) => {
  await openVehicle(page, stockNumber);
  await choose(page, [photograph('IMG_0001.jpg', 180)]);
  await expectAdded(page, 1);
  const before = await filesOf(program);
  const place = attachmentsOf(page);
  await place.getByRole('button', { name: 'Describe: IMG_0001.jpg' }).click();
  await place.getByRole('button', { name: 'Remove', exact: true }).click();
  await expect(place.getByText(/^Nothing here yet/)).toBeVisible();
  expect(await kept(program)).toEqual([]);
  expect(await filesOf(program)).toEqual(before);
  await page.getByRole('button', { name: 'Undo', exact: true }).click();
  await expect(place.getByRole('button', { name: 'Show large: IMG_0001.jpg' })).toBeVisible();
  // The addition itself can be taken back as well.
  await page.keyboard.press('Control+z');
  await expect(place.getByText(/^Nothing here yet/)).toBeVisible();
  await page.keyboard.press('Control+Shift+z');
  await expect(place.getByRole('button', { name: 'Show large: IMG_0001.jpg' }).locator('img')).toBeVisible();
});

test('each sees what is for them', async ({ page }) => {
  await goTo(page, 'Lot');
  await page.getByRole('button', { name: /^ready \d+$/ }).click();
  const ready = (await page.getByRole('rowheader').getByRole('link').first().textContent()) ?? '';
  await openVehicle(page, ready);
  await choose(page, [photograph('front.jpg', 180), photograph('under.jpg', 90), document('invoice.pdf')]);
  await expectAdded(page, 3);
  await describeFile(page, 'front.jpg', { caption: 'From the front', readers: 'Everyone, sales too' });
  const place = attachmentsOf(page);
  await expect(place.getByRole('listitem').filter({ hasText: 'invoice.pdf' })).toContainText('manager');

  await seat(page, 'technician');
  await expect(place.getByRole('button', { name: 'Show large: under.jpg' })).toBeVisible();
  await expect(place.getByText('invoice.pdf')).toHaveCount(0);
  await place.getByRole('button', { name: 'Describe: under.jpg' }).click();
  await expect(place.getByLabel('Who sees it').getByRole('option')).toHaveText([
    'Everyone, sales too',
    'Workshop and manager',
  ]);
  await page.keyboard.press('Escape');

  await seat(page, 'sales');
  await expect(place.getByRole('button', { name: 'Show large: From the front' })).toBeVisible();
  await expect(place.getByRole('listitem')).toHaveCount(1);
  await expect(place.getByText(/under\.jpg|invoice\.pdf/)).toHaveCount(0);
  // Sales takes the pictures that sell it: seen by everyone from the start. Documents are for others to add.
  await choose(page, [photograph('side.jpg', 200), document('offer.pdf')]);
  await expect(place.getByText('Sales adds photographs.')).toBeVisible();
  await expect(place.getByRole('button', { name: 'Show large: side.jpg' })).toBeVisible();
  await place.getByRole('button', { name: 'Leave it out' }).click();
  await expect(place.getByText('offer.pdf')).toHaveCount(0);
  await describeFile(page, 'side.jpg', { caption: 'From the side' });
  await expect(place.getByRole('button', { name: 'Take it off' })).toHaveCount(0);
  await place.getByRole('button', { name: 'Show large: From the front' }).click();
  await expect(page.getByRole('dialog').getByRole('img', { name: 'From the front' })).toBeVisible();
});

test('all of it is done by keyboard', async ({ page, program }) => {
  await openVehicle(page, stockNumber);
  const place = attachmentsOf(page);
  const chooser = page.waitForEvent('filechooser');
  await place.getByRole('button', { name: 'Add files …' }).focus();
  await page.keyboard.press('Enter');
  await (await chooser).setFiles([photograph('IMG_0001.jpg', 180), photograph('IMG_0002.jpg', 90)]);
  await expectAdded(page, 2);
  await page.keyboard.press('Tab');
  await expect(place.getByRole('button', { name: 'Show large: IMG_0001.jpg' })).toBeFocused();
  await page.keyboard.press('Enter');
  const dialog = page.getByRole('dialog');
  await expect(dialog.getByRole('img', { name: 'IMG_0001.jpg' })).toBeVisible();
  await page.keyboard.press('ArrowRight');
  await expect(dialog.getByRole('img', { name: 'IMG_0002.jpg' })).toBeVisible();
  await expect(dialog.getByText('2 of 2')).toBeVisible();
  await page.keyboard.press('ArrowRight');
  await page.keyboard.press('ArrowLeft');
  await expect(dialog.getByRole('img', { name: 'IMG_0001.jpg' })).toBeVisible();
  await page.keyboard.press('Escape');
  await expect(place.getByRole('button', { name: 'Show large: IMG_0001.jpg' })).toBeFocused();
  await page.keyboard.press('Tab');
  await page.keyboard.press('Enter');
  await expect(place.getByLabel('What it shows')).toBeFocused();
  await page.keyboard.type('Left door');
  await page.keyboard.press('Enter');
  await expect(place.getByRole('button', { name: 'Correct: Left door' })).toBeFocused();
  expect((await kept(program))[0]?.caption).toBe('Left door');
});

for (const theme of ['Light', 'Dark'])
  test(`nothing stands in anybody's way in ${theme.toLowerCase()}`, async ({ page }) => {
    await page.getByLabel('Light or dark').selectOption({ label: theme });
    await openVehicle(page, stockNumber);
    const place = attachmentsOf(page);
    await expectAccessible(page, 'no photograph yet');
    await choose(page, [photograph('IMG_0001.jpg', 180), document('inspection.pdf'), heic]);
    await expectAdded(page, 2);
    await expect(place.getByRole('alert')).toBeVisible();
    await expectAccessible(page, 'a photograph, a document and a refused file');
    await place.getByRole('button', { name: 'Describe: IMG_0001.jpg' }).click();
    await expectAccessible(page, 'the form of a photograph');
    await page.keyboard.press('Escape');
    await place.getByRole('button', { name: 'Show large: IMG_0001.jpg' }).click();
    await expect(page.getByRole('dialog').getByRole('img')).toBeVisible();
    await expectAccessible(page, 'a photograph shown large');
  });
