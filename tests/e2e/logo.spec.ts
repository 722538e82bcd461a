// The dealer's logo in the running program: chosen in Setup, seen on the preview of a sheet by every role, and refused where it cannot be drawn.
import type { Page } from '@playwright/test';
import { goTo } from './at-the-desk.ts';
import { expect, test } from './fixtures.ts';

test.use({ fleet: 'sample' });

/** A JPEG as the page's own encoder writes it. */
async function drawnJpeg(page: Page): Promise<Buffer> {
  const base64 = await page.evaluate(async () => {
    const canvas = document.createElement('canvas');
    canvas.width = 240;
    canvas.height = 80;
    const pen = canvas.getContext('2d');
    if (pen === null) throw new Error('Nothing to draw with.');
    pen.fillStyle = '#fff';
    pen.fillRect(0, 0, 240, 80);
    pen.fillStyle = '#005a8c';
    pen.fillRect(20, 20, 200, 40);
    return canvas.toDataURL('image/jpeg', 0.9).split(',')[1] ?? '';
  });
  return Buffer.from(base64, 'base64');
}

/** Its head is whole, with the size; what should be the picture is noise, and its tables are none. */
function undrawable(jpeg: Buffer): Buffer {
  const frame = jpeg.indexOf(Buffer.from([0xff, 0xc0]));
  return Buffer.concat([
    jpeg.subarray(0, 20),
    jpeg.subarray(frame, frame + 19),
    Buffer.alloc(400, 0x5a),
    Buffer.from([0xff, 0xd9]),
  ]);
}

test('is drawn on the preview for every role, and what cannot be drawn is refused', async ({ page }) => {
  const jpeg = await drawnJpeg(page);
  await goTo(page, 'Setup');
  const choose = page.locator('input[type=file][accept*="image/png"]');
  const logo = page.getByRole('img', { name: /^The logo as it is printed/ });
  await choose.setInputFiles({ name: 'logo.jpg', mimeType: 'image/jpeg', buffer: jpeg });
  await expect(logo).toBeVisible();
  await choose.setInputFiles({ name: 'bad.jpg', mimeType: 'image/jpeg', buffer: undrawable(jpeg) });
  await expect(page.getByRole('alert').filter({ hasText: 'This picture cannot be drawn' })).toBeVisible();
  await choose.setInputFiles({ name: 'words.jpg', mimeType: 'image/jpeg', buffer: Buffer.from('no picture') });
  await expect(page.getByRole('alert').filter({ hasText: 'This picture cannot be drawn' })).toBeVisible();
  // The old one stays.
  await expect(logo).toHaveAttribute('src', `data:image/jpeg;base64,${jpeg.toString('base64')}`);

  for (const person of [/, manager$/, /, technician$/, /, sales$/]) {
    const desk = page.getByLabel('At the desk');
    const name = (await desk.getByRole('option').allTextContents()).find((one) => person.test(one)) ?? '';
    await desk.selectOption({ label: name });
    await goTo(page, 'Sheets');
    await page
      .getByRole('listbox', { name: /^Vehicles/ })
      .getByRole('option')
      .first()
      .click();
    const picture = page.getByRole('article').locator('.sheet-head img');
    await expect(picture).toBeVisible();
    expect(await picture.evaluate((drawn) => (drawn as HTMLImageElement).naturalWidth)).toBe(240);
    await goTo(page, 'Lot');
  }
});
