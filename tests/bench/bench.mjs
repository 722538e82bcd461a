// `npm run bench`: start to usable lot, one saved change, a keystroke in the search, Money read anew, memory, at several fleet sizes in one
// run; then the whole fleet reckoned outside the window, with the share of each part, one save beside other ways of keeping a fleet, and one
// sheet and two hundred of each kind.
// A size is a number of vehicles, three in ten of them in stock as in the sample, or vehicles:in-stock: 20000:60 is a long ledger.
// Prints what was measured and the ratios between sizes; asserts nothing, because times on shared machines are noisy.
import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import process from 'node:process';
import { _electron } from 'playwright';
import { prepareGround } from '../../app/dev/ground.mjs';
import { growFleet } from './grow-fleet.ts';

const asked = process.argv.slice(2).filter((size) => /^[1-9]\d*(:[1-9]\d*)?$/.test(size));
const sizes = asked.length > 0 ? asked : ['24', '2000', '2000:60', '20000:60'];
const rounds = 3;
const savesInARound = 20;
const sample = path.join(import.meta.dirname, '..', '..', 'sample-fleet', 'current');

/** @param {number[]} values */
function median(values) {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.floor(sorted.length / 2)] ?? Number.NaN;
}

/**
 * @param {Awaited<ReturnType<typeof prepareGround>>} ground
 * @param {{folder: string, firstId: string, firstStockNumber: string}} fleet
 */
async function oneRound(ground, fleet) {
  const data = mkdtempSync(path.join(tmpdir(), 'lotwright-bench-data-'));
  const began = performance.now();
  const app = await _electron.launch({
    executablePath: ground.executablePath,
    args: [...ground.args, '--await-driver', `--user-data-dir=${data}`, `--fleet=${fleet.folder}`],
    env: { ...process.env, ...ground.env },
  });
  const page = await app.firstWindow();
  const windowMs = performance.now() - began;
  await page.getByRole('searchbox').waitFor();
  await page.locator('tbody tr[aria-rowindex]').first().waitFor();
  const usableMs = performance.now() - began;
  // Saves one after the other through the page's own bridge, as a person's changes go.
  const saveMs = await page.evaluate(
    async ([id, count]) => {
      const times = [];
      for (let index = 0; index < count; index += 1) {
        const view = await window.lotwright.ask['vehicle:open']({ id });
        const note = { id: `bench-${Date.now().toString(36)}-${index}x`, on: view.value.today, text: 'Measured.' };
        const start = performance.now();
        const answer = await window.lotwright.ask['vehicle:change']({
          id,
          baseRevision: view.value.revision,
          change: { kind: 'put', list: 'notes', item: note },
        });
        times.push(performance.now() - start);
        if (!answer.ok) throw new Error(JSON.stringify(answer.error));
      }
      return times;
    },
    [fleet.firstId, savesInARound],
  );
  const searchMs = await page.evaluate(async (stockNumber) => {
    const box = document.querySelector('input[type="search"]');
    const setValue = Object.getOwnPropertyDescriptor(HTMLInputElement.prototype, 'value').set;
    const times = [];
    for (let length = 1; length <= stockNumber.length; length += 1) {
      const start = performance.now();
      setValue.call(box, stockNumber.slice(0, length));
      box.dispatchEvent(new Event('input', { bubbles: true }));
      // Two frames: the first is asked for with the change in place, the second begins when it has been drawn.
      await new Promise((resolve) => requestAnimationFrame(() => requestAnimationFrame(resolve)));
      times.push(performance.now() - start);
    }
    return times;
  }, fleet.firstStockNumber);
  // The first answer waits for forecasts that are not made yet; the second is what a change costs while Money is shown.
  const moneyMs = await page.evaluate(async () => {
    const times = [];
    for (let index = 0; index < 4; index += 1) {
      const start = performance.now();
      const answer = await window.lotwright.ask['money:read']({});
      times.push(performance.now() - start);
      if (!answer.ok) throw new Error(JSON.stringify(answer.error));
    }
    return times;
  });
  const metrics = await app.evaluate(({ app: electron }) =>
    electron.getAppMetrics().reduce((sum, one) => sum + one.memory.workingSetSize, 0),
  );
  await app.close();
  rmSync(data, { recursive: true, force: true });
  return {
    windowMs,
    usableMs,
    saveMs: median(saveMs),
    searchMs: median(searchMs),
    moneyFirstMs: moneyMs[0] ?? Number.NaN,
    moneyMs: median(moneyMs.slice(1)),
    memoryMb: metrics / 1024,
  };
}

const ground = await prepareGround();
const work = mkdtempSync(path.join(tmpdir(), 'lotwright-bench-'));
try {
  const results = [];
  const fleets = sizes.map((size) => {
    const folder = path.join(work, `fleet-${size.replace(':', '-')}`);
    const [count = 0, inStock = null] = size.split(':').map(Number);
    return { size, folder, ...growFleet(sample, folder, count, inStock) };
  });
  // Rounds take turns over the sizes, so that a slow minute of the machine touches all of them.
  for (let round = 0; round < rounds; round += 1) {
    for (const fleet of fleets) results.push({ size: fleet.size, ...(await oneRound(ground, fleet)) });
  }
  const names = /** @type {const} */ ([
    'windowMs',
    'usableMs',
    'saveMs',
    'searchMs',
    'moneyFirstMs',
    'moneyMs',
    'memoryMb',
  ]);
  const table = sizes.map((size) => {
    const ofSize = results.filter((result) => result.size === size);
    return { size, ...Object.fromEntries(names.map((name) => [name, median(ofSize.map((result) => result[name]))])) };
  });
  console.log(`\nMedians of ${rounds} rounds (${savesInARound} saves in each):`);
  console.log(
    'vehicles | first window ms | lot usable ms | lot after window ms | one save ms | keystroke to second frame ms | Money first ms | Money again ms | memory MB',
  );
  for (const row of table) {
    const cells = [
      row.size,
      row.windowMs,
      row.usableMs,
      row.usableMs - row.windowMs,
      row.saveMs,
      row.searchMs,
      row.moneyFirstMs,
      row.moneyMs,
      row.memoryMb,
    ];
    console.log(cells.map((cell, index) => (index === 0 ? String(cell) : cell.toFixed(1))).join(' | '));
  }
  const small = table[0];
  for (const row of table.slice(1)) {
    const ratios = names.map((name) => `${name} ${(row[name] / small[name]).toFixed(2)}`).join(', ');
    console.log(`ratio ${row.size} to ${small.size}: ${ratios}`);
  }
  const run = (script, folders) =>
    execFileSync(process.execPath, ['--import', 'tsx', path.join(import.meta.dirname, script), ...folders], {
      stdio: 'inherit',
    });
  for (const { folder } of fleets) run('reckoning.ts', [folder]);
  run(
    'keeping.ts',
    fleets.map(({ folder }) => folder),
  );
  const ofSheets = path.join(work, 'fleet-of-sheets');
  growFleet(sample, ofSheets, 200);
  run('sheets.ts', [ofSheets]);
} finally {
  ground.close();
  rmSync(work, { recursive: true, force: true });
}
