// The first ten minutes: the program opens the invented sample, what was tried out is thrown away, and a fleet of one's own is begun in an
// empty folder, from where the sample can be looked at again.
import { mkdir, readdir, readFile } from 'node:fs/promises';
import path from 'node:path';
import { add, expectSaved, form, goTo, openVehicle, section } from './at-the-desk.ts';
import { expectAccessible } from './axe.ts';
import { expect, type Program, test } from './fixtures.ts';

test.use({ fleet: 'first-start' });

const note = 'Tried out on the sample.';

/** From now on the system's dialog for folders answers with this one. */
async function answerFolderDialogs({ app }: Program, folder: string): Promise<void> {
  await app.evaluate(({ dialog }, chosen) => {
    const answer = async () => ({ canceled: false, filePaths: [chosen] });
    Object.assign(dialog, { showOpenDialog: answer });
  }, folder);
}

async function firstStockNumber({ page }: Program): Promise<string> {
  const name = (await page.getByRole('row').getByRole('link').first().textContent()) ?? '';
  return /\S+/.exec(name)?.[0]?.replace(/,$/, '') ?? '';
}

test('what was changed in the sample is thrown away, and lies in the folder that the program names', async ({
  program,
}) => {
  const { page, dataFolder } = program;
  const line = page.getByRole('complementary', { name: 'About the invented sample' });
  await expect(line).toContainText('This fleet is invented.');
  const stockNumber = await firstStockNumber(program);
  await openVehicle(page, stockNumber);
  await expect(line).toHaveCount(0);
  await add(page, 'Add note', { Note: note });
  await expectSaved(page);
  await goTo(page, 'Lot');

  // Thought better of it: nothing happens. By keyboard.
  const throwAway = line.getByRole('button', { name: 'Throw away what was changed here…' });
  await throwAway.focus();
  await throwAway.press('Enter');
  const question = page.getByRole('dialog', { name: 'Throw away what was changed here?' });
  await expect(question).toContainText('Nothing is deleted.');
  await expectAccessible(page, 'throwing away');
  await page.keyboard.press('Escape');
  await expect(question).toHaveCount(0);
  await expect(throwAway).toBeFocused();

  await throwAway.press('Enter');
  await question.getByRole('button', { name: 'Throw it away' }).click();
  const done = page.getByRole('dialog', { name: 'A new copy of the sample is open' });
  await expect(done).toBeVisible();
  const [name = ''] = (await readdir(dataFolder)).filter((one) => one.includes('put-aside'));
  expect(name).toMatch(/^sample-fleet-put-aside-\d{4}-\d\d-\d\dT\d\d-\d\d-\d\d$/);
  await expect(done).toContainText(path.join(dataFolder, name));
  await done.getByRole('button', { name: 'Close' }).click();

  await openVehicle(page, stockNumber);
  await expect(section(page, 'Notes')).not.toContainText(note);
  await expect(page.getByRole('button', { name: 'Undo', exact: true })).toHaveAttribute('aria-disabled', 'true');
  const records = async (folder: string) => {
    const place = path.join(dataFolder, folder, 'vehicles');
    return (await Promise.all((await readdir(place)).map((file) => readFile(path.join(place, file), 'utf8')))).join();
  };
  expect(await records(name)).toContain(note);
  expect(await records('sample-fleet')).not.toContain(note);
  // And it is the one that is there from now on.
  await program.close();
  await program.start();
  await openVehicle(program.page, stockNumber);
  await expect(section(program.page, 'Notes')).not.toContainText(note);
});

test('a fleet of one’s own is begun in an empty folder, and the sample is a look away', async ({ program }) => {
  const { page, dataFolder } = program;
  const own = path.join(path.dirname(dataFolder), 'Millrace fleet');
  await mkdir(own);
  const line = page.getByRole('complementary', { name: 'About the invented sample' });

  // A folder with other files is not taken.
  await answerFolderDialogs(program, dataFolder);
  await line.getByRole('button', { name: 'Begin your own fleet…' }).click();
  await expect(page.getByRole('alert')).toContainText('That folder holds other files and no fleet.');
  await page.getByRole('alert').getByRole('button', { name: 'Close' }).click();

  await answerFolderDialogs(program, own);
  await line.getByRole('button', { name: 'Begin your own fleet…' }).click();
  await expect(page.getByRole('main')).toContainText('This fleet is new.');
  await expect(line).toHaveCount(0);
  await page.getByRole('button', { name: 'Go to Setup' }).click();
  await form(page, 'Dealer').getByRole('button', { name: 'Save Dealer' }).click();
  await expectSaved(page);

  const fleets = page.getByRole('region', { name: 'Other fleets, and the sample' });
  await fleets.getByRole('button', { name: 'Look at the invented sample' }).press('Enter');
  await expect(page.getByText('Invented sample', { exact: true })).toBeVisible();
  await expect(page.getByRole('row').nth(2)).toBeVisible();
  await goTo(page, 'Setup');
  await expect(fleets.getByRole('button', { name: 'Throw away what was changed here…' })).toBeVisible();
  await fleets.getByRole('button', { name: 'Back to the fleet “Millrace fleet”' }).click();
  await expect(page.getByRole('main')).toContainText('No vehicle yet. Take the first one in');

  // The next start opens one's own, also where the sample was looked at last.
  await goTo(page, 'Setup');
  await fleets.getByRole('button', { name: 'Look at the invented sample' }).click();
  await expect(line).toBeVisible();
  await line.getByRole('button', { name: 'Hide this line' }).click();
  await expect(line).toHaveCount(0);
  await program.close();
  await program.start();
  await expect(program.page.getByRole('main')).toContainText('No vehicle yet. Take the first one in');
});
