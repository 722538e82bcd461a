// Signing in through the running program, by keyboard: three roles, wrong tries, the locked desk, the quick switch, and what is kept under it.
import type { Page } from '@playwright/test';
import { openVehicle } from './at-the-desk.ts';
import { expectAccessible } from './axe.ts';
import { expect, test } from './fixtures.ts';

const secrets = { manager: 'lantern under copper bridge', technician: '704281', sales: '620594' } as const;
type Role = keyof typeof secrets;

/** Gives one person of each role something to sign in with, and lets the shop want it. Tells their names. */
async function wantSignIn(page: Page): Promise<Readonly<Record<Role, string>>> {
  await expect(page.getByRole('rowheader').first()).toBeVisible();
  return page.evaluate(async (given) => {
    const { ask } = window.lotwright;
    const told = async <Value>(answer: Promise<{ ok: true; value: Value } | { ok: false; error: unknown }>) => {
      const done = await answer;
      if (!done.ok) throw new Error(JSON.stringify(done.error));
      return done.value;
    };
    const { people } = await told(ask['desk:read']({}));
    const of = (role: string) => {
      const person = people.find((one) => one.role === role && one.isActive);
      if (person === undefined) throw new Error(`Nobody is ${role}.`);
      return person;
    };
    const manager = of('manager');
    await told(ask['people:give-secret']({ personId: manager.id, secret: given.manager }));
    await told(ask['people:sign-in']({ personId: manager.id, secret: given.manager }));
    await told(ask['people:give-secret']({ personId: of('technician').id, secret: given.technician }));
    await told(ask['people:give-secret']({ personId: of('sales').id, secret: given.sales }));
    const { revision, shop } = await told(ask['shop:read']({}));
    const value = { ...shop.signIn, wantsSignIn: true };
    await told(ask['shop:change']({ baseRevision: revision, change: { part: 'signIn', value } }));
    // Once more, so that the page is told of all this.
    await told(ask['people:sign-in']({ personId: manager.id, secret: given.manager }));
    return { manager: manager.name, technician: of('technician').name, sales: of('sales').name };
  }, secrets);
}

async function lock(page: Page): Promise<void> {
  await page.keyboard.press('Control+l');
  await expect(page.getByRole('heading', { name: 'This desk is locked' })).toBeVisible();
}

/** With the arrow keys, from whichever name is picked. */
async function pick(page: Page, name: string): Promise<void> {
  const field = page.locator('input[type=password]');
  await expect(field).toBeFocused();
  // While a try is being judged nothing can be typed.
  await expect(field).toBeEditable();
  for (let steps = 0; steps < 12; steps++) {
    if (await page.getByRole('radio', { name: new RegExp(`^${name}`) }).isChecked()) return;
    await page.keyboard.press('ArrowDown');
  }
  throw new Error(`${name} is not in the list of names.`);
}

async function enter(page: Page, name: string, secret: string): Promise<void> {
  await pick(page, name);
  await page.keyboard.type(secret);
  await page.keyboard.press('Enter');
}

test('three roles take turns at one desk by keyboard, and a wrong PIN makes wait', async ({ page, program }) => {
  test.setTimeout(180_000);
  const names = await wantSignIn(page);
  await lock(page);
  // Nothing but the fleet's name, the names and the field can be read now.
  const shown = page.locator('body');
  for (const word of ['Spent', 'Margin left', 'Undo', 'Today is']) {
    await expect(shown.getByText(word, { exact: false }).filter({ visible: true })).toHaveCount(0);
  }
  await expect(page.getByRole('rowheader')).toHaveCount(0);
  await page.keyboard.press('Escape');
  await page.keyboard.press('Escape');
  await page.keyboard.press('Alt+1');
  await expect(page.getByRole('heading', { name: 'This desk is locked' })).toBeVisible();

  for (const colorScheme of ['light', 'dark'] as const) {
    await page.emulateMedia({ colorScheme });
    await expectAccessible(page, `the locked desk, ${colorScheme}`);
  }

  for (const _ of [1, 2]) {
    await enter(page, names.technician, '111222');
    await expect(page.getByRole('alert')).toHaveText('This is not it.');
  }
  await enter(page, names.technician, '111222');
  await expect(page.getByRole('alert')).toHaveText(/^This is not it\. Wait [1-5] seconds? before the next try\.$/);
  await expect(page.getByRole('button', { name: 'Sign in' })).not.toHaveAttribute('aria-disabled', 'true', {
    timeout: 20_000,
  });
  // Locked from the start as well.
  await program.close();
  await program.start();
  const again = program.page;
  await expect(again.getByRole('heading', { name: 'This desk is locked' })).toBeVisible();
  await enter(again, names.technician, secrets.technician);
  await expect(again.getByRole('rowheader').first()).toBeVisible();
  await expect(again.getByRole('columnheader', { name: 'Spent' })).toHaveCount(0);

  // The quick switch: pick a name, type, Enter; Escape leaves everything as it was.
  await again.getByRole('button', { name: 'Switch' }).press('Enter');
  await again.keyboard.press('Escape');
  await expect(again.getByRole('columnheader', { name: 'Vehicle' })).toBeVisible();
  await again.getByRole('button', { name: 'Switch' }).press('Enter');
  await enter(again, names.manager, secrets.manager);
  await expect(again.getByRole('columnheader', { name: 'Spent' })).toBeVisible();

  await lock(again);
  await enter(again, names.sales, secrets.sales);
  await expect(again.getByRole('banner')).toContainText(`${names.sales}, sales`);
  await expect(again.getByRole('columnheader', { name: 'Spent' })).toHaveCount(0);
  await expect(again.getByRole('link', { name: 'Money', exact: true })).toHaveCount(0);
});

test('what was being typed is there again for the same person, and gone for another', async ({ page }) => {
  test.setTimeout(120_000);
  const names = await wantSignIn(page);
  const stockNumber =
    ((await page.getByRole('rowheader').getByRole('link').first().textContent()) ?? '').split(/[\s,]/)[0] ?? '';
  await openVehicle(page, stockNumber);
  await page.getByRole('button', { name: 'Add note', exact: true }).click();
  const note = page.getByRole('form', { name: 'Add note' }).getByRole('textbox').first();
  await note.fill('The left lamp flickers');
  await lock(page);
  await expect(note).toBeHidden();
  await enter(page, names.manager, secrets.manager);
  await expect(note).toHaveValue('The left lamp flickers');
  await lock(page);
  await enter(page, names.technician, secrets.technician);
  await expect(page.getByRole('rowheader').first()).toBeVisible();
  await expect(page.getByText('The left lamp flickers')).toHaveCount(0);
  await openVehicle(page, stockNumber);
  await expect(page.getByRole('form', { name: 'Add note' })).toHaveCount(0);
});

test('a manager lets people sign in, in Setup, and cannot be locked out', async ({ page }) => {
  test.setTimeout(120_000);
  await page.getByRole('link', { name: 'Setup', exact: true }).click();
  const rules = page.getByRole('form', { name: 'Signing in' });
  await expect(rules).toContainText('No manager has a PIN or pass phrase yet.');
  await rules.getByRole('checkbox', { name: 'Everybody signs in before anything is shown' }).check();
  await rules.getByRole('button', { name: 'Save Signing in' }).click();
  await expect(rules.getByRole('alert')).toHaveText(/Give a manager a PIN or pass phrase first/);

  const secretsSection = page.getByRole('region', { name: 'PINs and pass phrases' });
  const manager = secretsSection.getByRole('row').filter({ hasText: 'manager' }).first();
  await manager.getByRole('button', { name: /^Give / }).click();
  const dialog = page.getByRole('dialog', { name: /^Give / });
  await dialog.getByRole('textbox', { name: 'PIN or pass phrase' }).fill('1234');
  await dialog.getByRole('button', { name: 'Keep it' }).click();
  await expect(dialog.getByRole('alert')).toContainText('the first that anybody would try');
  await dialog.getByRole('textbox', { name: 'PIN or pass phrase' }).fill(secrets.manager);
  await dialog.getByLabel('The same once more').fill(secrets.manager);
  await page.keyboard.press('Enter');
  await expect(manager).toContainText('a pass phrase');

  await expectAccessible(page, 'Setup');
  await secretsSection.getByRole('button', { name: 'Sign in' }).click();
  await expectAccessible(page, 'the quick switch');
  await page.keyboard.type(secrets.manager);
  await page.keyboard.press('Enter');
  await page.getByRole('link', { name: /^Setup/ }).click();
  await rules.getByRole('checkbox', { name: 'Everybody signs in before anything is shown' }).check();
  await rules.getByRole('button', { name: 'Save Signing in' }).click();
  await expect(page.getByRole('button', { name: 'Lock', exact: true })).toBeVisible();
  await manager.getByRole('button', { name: /^Take it away/ }).click();
  await page.getByRole('dialog').getByRole('button', { name: 'Take it away' }).click();
  await expect(page.getByRole('alert').filter({ hasText: 'the only manager' })).toBeVisible();
});
