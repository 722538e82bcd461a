// Working through a programming plan at the desk, by role and name only: one press where that is enough, the form of an attempt elsewhere.
import type { Locator, Page } from '@playwright/test';
import { form, keep, section } from './at-the-desk.ts';
import { expect } from './fixtures.ts';

/** The line of a step in the plan, whatever stands beside its title. */
export function stepLine(page: Page, title: string): Locator {
  return section(page, 'Programming')
    .getByRole('listitem')
    .filter({ has: page.getByText(title, { exact: true }) })
    .filter({ hasNot: page.getByRole('listitem').filter({ has: page.getByText(title, { exact: true }) }) });
}

/** Presses a button of a step: 'Done', 'Do it …', 'Leave out …'. */
export async function pressAt(page: Page, button: string, title: string): Promise<void> {
  await page.getByRole('button', { name: `${button}: ${title}`, exact: true }).click();
}

/** Steps that one press is enough for, one after the other; each is done before the next is pressed. */
export async function doByPress(
  page: Page,
  steps: readonly (readonly [title: string, button?: string])[],
): Promise<void> {
  for (const [title, button = 'Done'] of steps) {
    await pressAt(page, button, title);
    await expect(stepLine(page, title)).toContainText('done');
  }
}

export type Attempt = {
  readonly button?: string;
  readonly route?: string;
  readonly outcome?: 'Worked' | 'Failed' | 'Stopped';
  readonly vin?: string;
  readonly message?: string;
  readonly voltsBefore?: string;
  readonly voltsLowest?: string;
};

/** Opens the form of an attempt and fills it; it is not kept yet. */
export async function fillAttempt(page: Page, title: string, attempt: Attempt): Promise<Locator> {
  await pressAt(page, attempt.button ?? 'Do it …', title);
  const open = form(page, title);
  if (attempt.route) await open.getByRole('radio', { name: attempt.route }).check();
  if (attempt.outcome) await open.getByRole('radio', { name: attempt.outcome, exact: true }).check();
  const texts = {
    'Last eight of the VIN, read from the vehicle *': attempt.vin,
    'What the tool or the vehicle showed': attempt.message,
    'Volts before': attempt.voltsBefore,
    'Volts, lowest': attempt.voltsLowest,
  };
  for (const [label, text] of Object.entries(texts)) if (text) await open.getByLabel(label, { exact: true }).fill(text);
  return open;
}

export async function attemptStep(page: Page, title: string, attempt: Attempt = {}): Promise<void> {
  await keep(await fillAttempt(page, title, attempt), 'Add');
}
