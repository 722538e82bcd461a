// Codes from the vault through the running program, by keyboard, for the three roles: the manager keeps and sees, the technician sees for a
// step that needs it, sales neither; what is seen is hidden again and stands in the history. The codes are made up.
import { fill, openVehicle, section } from './at-the-desk.ts';
import { giveKey, keepCode, makeVault, press, seeing, typeThrough } from './code-steps.ts';
import { expect, test } from './fixtures.ts';

test.use({ fleet: 'sample' });
const technicianPhrase = 'seven quiet orange doors';
/** Its immobiliser code is asked for by open programming steps. */
const withStep = { stockNumber: 'Q1124', name: 'immobiliser', value: '48213' };
/** No programming step needs the code of its radio. */
const withoutStep = { stockNumber: 'Q1120', name: 'radio', value: '7305' };

test('a code is kept with a reason where it looks unusual, seen for a reason and hidden again', async ({ page }) => {
  test.setTimeout(120_000);
  await makeVault(page);
  await page.getByRole('link', { name: 'Lot', exact: true }).press('Enter');
  await openVehicle(page, withStep.stockNumber);
  const codes = section(page, 'Codes');
  await press(codes.getByRole('button', { name: /^Keep the immobiliser/ }));
  await typeThrough(page.getByLabel(/^The code/), ['QX-7719-VOLE']);
  const why = page.getByLabel('Why it is kept as it is');
  await expect(why).toBeVisible();
  await typeThrough(why, ['as the letter says']);
  await expect(page.getByRole('dialog')).toHaveCount(0);
  const { button, dialog } = seeing(page, withStep.name);
  await press(button);
  await typeThrough(dialog.getByLabel(/^What it is needed for/), ['teaching a key']);
  await expect(page.getByText('QX-7719-VOLE')).toBeVisible();
  await page.evaluate(() => window.dispatchEvent(new Event('blur')));
  await expect(page.getByText('QX-7719-VOLE')).toHaveCount(0);
  await expect(page.getByText('The code is hidden again.')).toBeVisible();
});

test('technician and sales: a code for the step that needs it, and no other way to it', async ({ page }) => {
  test.setTimeout(240_000);
  await makeVault(page);
  await giveKey(page, 'Tomas Ferrick', technicianPhrase);
  await keepCode(page, withStep);
  await keepCode(page, withoutStep);
  const desk = page.getByLabel('At the desk');
  const { button, dialog } = seeing(page, withStep.name);
  const shown = page.getByText(withStep.value, { exact: true });
  const requestsOf = (stockNumber: string) =>
    page.evaluate(async (wanted) => {
      const { ask } = window.lotwright;
      const lot = await ask['lot:read']({});
      const id = lot.ok ? lot.value.find((row) => row.identity.stockNumber === wanted)?.id : undefined;
      const open = await ask['vehicle:open']({ id: id ?? '' });
      if (!open.ok) throw new Error(open.error.code);
      const { vehicle } = open.value;
      return vehicle.codeRequests.map((request) => ({ vehicleId: vehicle.id, requestId: request.id }));
    }, stockNumber);
  const places = {
    withStep: await requestsOf(withStep.stockNumber),
    without: await requestsOf(withoutStep.stockNumber),
  };
  /** Asks past the page, as somebody with other means would. */
  const expectRefused = async (asked: typeof places.withStep) => {
    const answers = await page.evaluate(
      (all) =>
        Promise.all(
          all.map((place) =>
            window.lotwright.ask['vault:look']({ ...place, why: 'I want it', step: null, isHandOver: false }),
          ),
        ),
      asked,
    );
    expect(answers.length).toBeGreaterThan(0);
    for (const answer of answers) expect(answer).toMatchObject({ ok: false, error: { code: 'not-allowed' } });
  };

  await test.step('the technician names the step and the reason, and sees it', async () => {
    await desk.selectOption({ label: 'Tomas Ferrick, technician' });
    await page.getByRole('link', { name: 'Lot', exact: true }).press('Enter');
    await openVehicle(page, withStep.stockNumber);
    await press(button);
    await typeThrough(dialog.getByLabel(/^What it is needed for/), ['both keys lost']);
    await expect(dialog.getByRole('alert').first()).toBeVisible();
    await typeThrough(dialog.getByLabel(/^Your pass phrase for codes/), [technicianPhrase]);
    await expect(dialog.getByText('Choose the step that needs the code.')).toBeVisible({ timeout: 60_000 });
    await dialog.getByLabel(/^Step that needs it/).focus();
    await page.keyboard.press('ArrowDown');
    await page.keyboard.press('Tab');
    await page.keyboard.press('Enter');
    await expect(shown).toBeVisible();
  });
  await test.step('after half a minute it is hidden by itself', async () => {
    await expect(dialog.getByText('The code is hidden again.')).toBeVisible({ timeout: 40_000 });
    await expect(shown).toHaveCount(0);
    await page.keyboard.press('Escape');
    await expect(dialog).toHaveCount(0);
  });
  await test.step('it is hidden at once when the window is left', async () => {
    await press(button);
    await fill(dialog, { 'What it is needed for': 'once more' });
    await dialog.getByLabel(/^Step that needs it/).focus();
    await page.keyboard.press('ArrowDown');
    await press(dialog.getByRole('button', { name: 'Show it' }));
    await expect(shown).toBeVisible();
    await page.evaluate(() => window.dispatchEvent(new Event('blur')));
    await expect(shown).toHaveCount(0);
    await page.keyboard.press('Escape');
  });
  await test.step('the looks stand at the request and in the history of the vehicle', async () => {
    await press(section(page, 'Codes').getByRole('button', { name: /^About the immobiliser/ }));
    const about = page.getByRole('dialog', { name: /^What happened with the immobiliser/ });
    const looks = about.getByRole('row').filter({ hasText: 'looked at' });
    await expect(looks).toHaveCount(2);
    await expect(looks.last()).toContainText('Tomas Ferrick');
    await expect(looks.last()).toContainText(/Step \d+, .+\. both keys lost/);
    await page.keyboard.press('Escape');
    await press(page.getByText('What changed', { exact: true }));
    const told = page.getByRole('group').filter({ has: page.getByText('What changed', { exact: true }) });
    await expect(told.getByRole('listitem').filter({ hasText: 'both keys lost' })).toContainText('Tomas Ferrick');
    await expect(page.getByText(withStep.value)).toHaveCount(0);
  });
  await test.step('a vehicle without such a step is refused, on the page and past it', async () => {
    await page.getByRole('link', { name: 'Lot', exact: true }).press('Enter');
    await openVehicle(page, withoutStep.stockNumber);
    const see = seeing(page, withoutStep.name).button;
    await expect(see).toHaveAttribute('aria-disabled', 'true');
    await press(see);
    await expect(page.getByRole('dialog')).toHaveCount(0);
    await expectRefused(places.without);
  });
  await test.step('sales finds no codes, and is refused past the page', async () => {
    await desk.selectOption({ label: 'Casper Windle, sales' });
    await page.getByRole('link', { name: 'Lot', exact: true }).press('Enter');
    await page.getByRole('rowheader').getByRole('link').first().press('Enter');
    await expect(page.getByRole('heading', { level: 1 })).not.toHaveText('Lot');
    await expect(section(page, 'Codes')).toHaveCount(0);
    await expectRefused(places.withStep);
  });
});
