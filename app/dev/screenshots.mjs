// `npm run screenshots`: takes pictures of the program on the sample fleet, and of both sheets. Those of the README go to
// app/dev/pictures, all the others to .cache/pictures. `npm run screenshots -- all` keeps nothing but the latter.
import { execFileSync } from 'node:child_process';
import { copyFileSync, cpSync, mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import process from 'node:process';
import { _electron } from 'playwright';
import { prepareGround } from './ground.mjs';
import { cacheFolder, projectFolder } from './project-paths.mjs';

/** @typedef {import('playwright').Page} Page */

const pictureFolder = path.join(cacheFolder, 'pictures');
const readmeFolder = path.join(import.meta.dirname, 'pictures');
const ofReadme = ['lot-light', 'lot-dark', 'vehicle-light', 'job-sheet', 'readiness-sheet'];
const usual = { width: 1280, height: 800 };
const large = { width: 1920, height: 1080 };

/**
 * @param {Page} page
 * @param {string} name
 */
async function take(page, name) {
  // The clock of this computer is the one thing that is not the sample's: without it the pictures stay the same.
  await page.getByText(/^(Last backup|Saved|No backup yet)/).evaluateAll((elements) => {
    for (const element of elements) element.style.visibility = 'hidden';
  });
  // Nothing is pointed at, so that nothing is drawn as if it were.
  await page.mouse.move(0, 0);
  await page.screenshot({ path: path.join(pictureFolder, `${name}.png`), animations: 'disabled' });
  console.log(name);
}

/**
 * @param {Page} page
 * @param {'Lot' | 'Sheets' | 'Setup'} screen
 */
async function goTo(page, screen) {
  await page.getByRole('navigation', { name: 'Screens' }).getByRole('link', { name: screen, exact: true }).click();
}

/**
 * @param {Page} page
 * @param {'Light' | 'Dark'} theme
 */
async function choose(page, theme) {
  await page.getByLabel('Light or dark').selectOption({ label: theme });
  await page.locator(`html[data-theme="${theme.toLowerCase()}"]`).waitFor();
}

/** Opens the vehicle of the lot that has stood longest at this.
 * @param {Page} page
 * @param {string} standing
 */
async function openStanding(page, standing) {
  await goTo(page, 'Lot');
  const filter = page.getByRole('button', { name: new RegExp(`^${standing} \\d`) });
  await filter.click();
  await page.getByRole('rowheader').getByRole('link').first().click();
  await page.getByRole('region', { name: /^What stands between/ }).waitFor();
}

/** @param {Page} page */
async function takeScreens(page) {
  const lot = page.getByRole('rowheader').first();
  for (const theme of /** @type {const} */ (['Light', 'Dark'])) {
    await choose(page, theme);
    for (const [size, suffix] of /** @type {const} */ ([
      [usual, ''],
      [large, '-large'],
    ])) {
      await page.setViewportSize(size);
      await goTo(page, 'Lot');
      await lot.waitFor();
      await take(page, `lot-${theme.toLowerCase()}${suffix}`);
    }
  }
  for (const theme of /** @type {const} */ (['Dark', 'Light'])) {
    await choose(page, theme);
    const name = theme.toLowerCase();
    await page.setViewportSize(usual);
    await openStanding(page, 'programming');
    await take(page, `vehicle-${name}`);
    await page
      .getByRole('navigation', { name: 'Sections' })
      .getByRole('link', { name: /^Programming/ })
      .click();
    await take(page, `vehicle-programming-${name}`);
    await page.setViewportSize(large);
    await take(page, `vehicle-${name}-large`);
    await page.setViewportSize(usual);
    await goTo(page, 'Lot');
    await page.getByRole('button', { name: 'Show all' }).click();
    await page.getByRole('button', { name: 'Take in a vehicle' }).click();
    await page.getByRole('textbox', { name: 'VIN' }).fill('GV2MD1D66HW000731');
    await take(page, `take-in-${name}`);
    await page.getByRole('button', { name: 'Empty the form' }).click();
    await goTo(page, 'Sheets');
    await page.getByRole('listbox').getByRole('option').first().click();
    await page.getByRole('article').waitFor();
    await take(page, `sheets-${name}`);
    await goTo(page, 'Setup');
    await page.getByRole('form', { name: 'Checklist' }).waitFor();
    await take(page, `setup-${name}`);
  }
}

/**
 * Prints a sheet of the vehicle that has stood longest at this, and makes a picture of its first page.
 * @param {Page} page
 * @param {string} fleet
 * @param {string} standing
 * @param {string} button
 * @param {string} name
 */
async function takeSheet(page, fleet, standing, button, name) {
  await openStanding(page, standing);
  await page.getByRole('button', { name: button, exact: true }).click();
  const written = page
    .getByRole('region', { name: 'Messages' })
    .getByText(new RegExp(`^Written: .*-${name}\\.pdf`))
    .last();
  const fileName = ((await written.textContent()) ?? '').replace(/^Written: (.*)\.$/, '$1');
  const into = path.join(pictureFolder, name);
  execFileSync('pdftoppm', [
    '-png',
    '-r',
    '90',
    '-f',
    '1',
    '-l',
    '1',
    '-singlefile',
    path.join(fleet, 'sheets', fileName),
    into,
  ]);
  console.log(name);
  await goTo(page, 'Lot');
  await page.getByRole('button', { name: 'Show all' }).click();
}

const ground = await prepareGround({ needsPdfTools: true });
const work = mkdtempSync(path.join(tmpdir(), 'lotwright-pictures-'));
try {
  rmSync(pictureFolder, { recursive: true, force: true });
  mkdirSync(pictureFolder, { recursive: true });
  const fleet = path.join(work, 'fleet');
  cpSync(path.join(projectFolder, 'sample-fleet', 'current'), fleet, { recursive: true });
  const app = await _electron.launch({
    executablePath: ground.executablePath,
    args: [...ground.args, '--await-driver', `--user-data-dir=${path.join(work, 'data')}`, `--fleet=${fleet}`],
    env: { .../** @type {Record<string, string>} */ (process.env), ...ground.env },
  });
  try {
    const page = await app.firstWindow();
    await takeScreens(page);
    await takeSheet(page, fleet, 'programming', 'Job sheet', 'job-sheet');
    await takeSheet(page, fleet, 'ready', 'Readiness sheet', 'readiness-sheet');
  } finally {
    await app.close();
  }
  if (!process.argv.includes('all')) {
    mkdirSync(readmeFolder, { recursive: true });
    for (const name of ofReadme)
      copyFileSync(path.join(pictureFolder, `${name}.png`), path.join(readmeFolder, `${name}.png`));
    console.log(`Pictures of the README: ${path.relative(projectFolder, readmeFolder)}`);
  }
  console.log(`All pictures: ${path.relative(projectFolder, pictureFolder)}`);
} finally {
  ground.close();
  rmSync(work, { recursive: true, force: true });
}
