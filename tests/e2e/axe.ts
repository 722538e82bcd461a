// Runs axe over what the window shows and fails on what is serious or worse. The script is handed over by the debugger, because the
// page's own policy runs no script that is written into it.
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Page } from '@playwright/test';
import type { AxeResults } from 'axe-core';
import { expect } from './fixtures.ts';

const source = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

/** `where` names what is looked at, for the message. */
export async function expectAccessible(page: Page, where: string): Promise<void> {
  await page.evaluate(source);
  const { violations, passes } = await page.evaluate(
    () => (window as unknown as { axe: { run(): Promise<AxeResults> } }).axe.run() as Promise<AxeResults>,
  );
  expect(passes.length, `${where}: axe looked at something`).toBeGreaterThan(10);
  const found = violations
    .filter(({ impact }) => impact === 'serious' || impact === 'critical')
    .flatMap(({ id, help, nodes }) =>
      nodes.map(({ target, failureSummary }) => `${id}: ${help}\n  ${target.join(' ')}\n  ${failureSummary}`),
    );
  expect(found, where).toEqual([]);
}
