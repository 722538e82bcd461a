// The whole fleet as one file, through the running program: with keys, opened in an empty folder, where the vault opens again. The system's
// own dialogs are answered in the main process; everything else is pressed as a person does.
import { stat } from 'node:fs/promises';
import path from 'node:path';
import { goTo, lotRow, openVehicle, section } from './at-the-desk.ts';
import { keepCode, makeVault, managerPhrase, press, seeing, typeThrough } from './code-steps.ts';
import { expect, type Program, test } from './fixtures.ts';

test.use({ fleet: 'sample' });

const kept = { stockNumber: 'Q1124', name: 'immobiliser', value: '48213' };

/** From now on the system's dialogs give these paths, as if somebody had chosen them. */
async function choose(program: Program, chosen: { save: string; open: string; folder: string }): Promise<void> {
  await program.app.evaluate(({ dialog }, { save, open, folder }) => {
    const isFolder = (options: unknown) => JSON.stringify(options).includes('openDirectory');
    dialog.showSaveDialog = async () => ({ canceled: false, filePath: save });
    dialog.showOpenDialog = async (...given: unknown[]) => ({
      canceled: false,
      filePaths: [isFolder(given.at(-1)) ? folder : open],
    });
  }, chosen);
}

for (const withKeys of [true, false]) {
  test(`an archive ${withKeys ? 'with' : 'without'} keys opens as a fleet of its own`, async ({ page, program }) => {
    test.setTimeout(240_000);
    const file = path.join(program.dataFolder, 'moved.zip');
    const folder = path.join(program.dataFolder, 'moved-fleet');
    await choose(program, { save: file, open: file, folder });
    await makeVault(page);
    await keepCode(page, kept);
    await goTo(page, 'Setup');
    const archive = page.getByRole('region', { name: 'The whole fleet as one file' });
    await archive.getByLabel('With the vault and people’s keys').setChecked(withKeys);
    await press(archive.getByRole('button', { name: 'Save the fleet as one file…' }));
    await expect(page.getByText(/^moved\.zip was written and read back: \d+ vehicles\./).first()).toBeVisible();

    await press(archive.getByRole('button', { name: 'Open an archive as a new fleet…' }));
    await expect(page.getByRole('heading', { level: 1, name: 'Lot' })).toBeVisible();
    await expect(lotRow(page, kept.stockNumber)).toBeVisible();
    const hasVault = await stat(path.join(folder, 'vault.json')).then(
      () => true,
      () => false,
    );
    expect(hasVault).toBe(withKeys);

    await openVehicle(page, kept.stockNumber);
    const { button, dialog } = seeing(page, kept.name);
    if (!withKeys) {
      await expect(section(page, 'Codes')).toBeVisible();
      await expect(button).toHaveCount(0);
      return;
    }
    // Another folder, the same vault: it is locked, and the old pass phrase opens it.
    await press(button);
    await typeThrough(dialog.getByLabel(/^What it is needed for/), ['after the move']);
    await typeThrough(dialog.getByLabel(/^Your pass phrase for codes/), [managerPhrase]);
    await expect(page.getByText(kept.value, { exact: true })).toBeVisible({ timeout: 60_000 });
  });
}
