// A long ledger: 2,000 vehicles, 60 of them in stock. Scrolled, no part of the lot is ever empty; what is in stock does not wait for the sold.
import path from 'node:path';
import { growFleet } from '../bench/grow-fleet.ts';
import { expect, test } from './fixtures.ts';

const sample = path.join(import.meta.dirname, '..', '..', 'sample-fleet', 'current');

test.use({ fleet: { lay: async (folder: string) => void growFleet(sample, folder, 2000, 60) } });

test('scrolls through 2,000 vehicles without an empty place, by jumps and by the wheel', async ({ program }) => {
  // Drawing is slow where there is no graphics card.
  test.slow();
  const { page } = program;
  await page.getByRole('button', { name: /^sold \d/ }).click();
  await expect(page.getByRole('table')).toHaveAttribute('aria-rowcount', '1941', { timeout: 30_000 });
  // Looked at in the frame in which the new place is drawn, at five heights of the table.
  const empty = await page.evaluate(async () => {
    const scroller = document.querySelector('.lot-scroll');
    if (!(scroller instanceof HTMLElement)) throw new Error('The lot does not scroll.');
    const { top, bottom, left } = scroller.getBoundingClientRect();
    const head = scroller.querySelector('thead')?.getBoundingClientRect().height ?? 0;
    const furthest = scroller.scrollHeight - scroller.clientHeight;
    const places: number[] = [];
    for (let step = 1; step <= 15; step += 1) {
      // Steps of very different lengths, back and forth (multiples of the golden section).
      const to = furthest * ((step * 0.618_034) % 1);
      // As a person's scrolling does, each begins after the table has noticed that the one before has ended.
      await new Promise((resolve) => setTimeout(resolve, 250));
      const isDrawn = new Promise((resolve) => {
        scroller.addEventListener('scroll', () => requestAnimationFrame(resolve), { once: true });
      });
      scroller.scrollTop = to;
      await isDrawn;
      for (const part of [0.05, 0.3, 0.5, 0.7, 0.95]) {
        const at = top + head + (bottom - top - head - 20) * part;
        if (document.elementFromPoint(left + 60, at)?.closest('tr[data-id]') == null) places.push(Math.round(to));
      }
    }
    return { places, furthest };
  });
  expect(empty.furthest).toBeGreaterThan(20_000);
  expect(empty.places).toEqual([]);

  await page.evaluate(async () => {
    const scroller = document.querySelector('.lot-scroll');
    if (!(scroller instanceof HTMLElement)) throw new Error('The lot does not scroll.');
    scroller.scrollTop = 0;
    await new Promise((resolve) => setTimeout(resolve, 500));
    const seen = { frames: 0, empty: 0 };
    Object.assign(window, { seenWhileScrolling: seen });
    const { top, bottom, left } = scroller.getBoundingClientRect();
    const look = () => {
      seen.frames += 1;
      if (document.elementFromPoint(left + 60, (top + bottom) / 2)?.closest('tr[data-id]') == null) seen.empty += 1;
      requestAnimationFrame(look);
    };
    requestAnimationFrame(look);
  });
  const box = await page.locator('.lot-scroll').boundingBox();
  if (box === null) throw new Error('The lot is not there.');
  await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2);
  for (let turn = 0; turn < 15; turn += 1) await page.mouse.wheel(0, 900);
  const seen = await page.evaluate(
    () => Reflect.get(window, 'seenWhileScrolling') as { frames: number; empty: number },
  );
  expect(seen.frames).toBeGreaterThan(5);
  expect(seen.empty).toBe(0);
});

test('opens a vehicle in stock as soon as the lot is there, and forecasts it once the sold ones are read', async ({
  program,
}) => {
  test.slow();
  const { page } = program;
  await page.getByRole('button', { name: /^part \d/ }).click();
  await page.locator('tbody tr[data-id]').first().getByRole('link').first().click();
  await expect(page.getByRole('definition').filter({ hasText: /likely|decided by/ })).toBeVisible({ timeout: 90_000 });
  await expect(page.getByText('worked out when the sold vehicles have been read')).toHaveCount(0);
});
