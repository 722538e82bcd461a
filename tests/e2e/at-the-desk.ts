// What a person does and sees at the desk, by role and name only: screens, sections, forms, facts. Holds no expectations of its own
// about a vehicle; those are the tests'.
import type { Locator, Page } from '@playwright/test';
import { expect } from './fixtures.ts';

/** The whole text and nothing else, as a pattern for `hasText`. */
export function exactly(text: string): RegExp {
  return new RegExp(`^${text.replace(/[.*+?^${}()|[\]\\/]/g, '\\$&')}$`);
}

/** The day `days` after this one, as the record writes days. */
export function dayFrom(day: string, days: number): string {
  return new Date(Date.parse(`${day}T00:00:00Z`) + days * 86_400_000).toISOString().slice(0, 10);
}

const months = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];

/** '4 Mar', with the year where it is not the year of `today`: how a day is said on the screen. */
export function saidOn(day: string, today: string): string {
  const short = `${Number(day.slice(8))} ${months[Number(day.slice(5, 7)) - 1]}`;
  return day.slice(0, 4) === today.slice(0, 4) ? short : `${short} ${day.slice(0, 4)}`;
}

/** '4 Mar 2026': how a field shows a day. */
export function wholeDay(day: string): string {
  return `${Number(day.slice(8))} ${months[Number(day.slice(5, 7)) - 1]} ${day.slice(0, 4)}`;
}

/** The day so many days before today (negative) or after it, as the record writes it and as the screen says it. */
export type Calendar = { readonly today: string; on(days: number): string; said(days: number): string };

export function calendarOf(today: string): Calendar {
  return { today, on: (days) => dayFrom(today, days), said: (days) => saidOn(dayFrom(today, days), today) };
}

/** The day that the program takes for today, as its status line says it. */
export async function todayOf(page: Page): Promise<string> {
  const line = page.getByRole('contentinfo').getByText(/^Today is \d{1,2} [A-Z][a-z]{2} \d{4}$/);
  const said = ((await line.textContent()) ?? '').replace('Today is ', '');
  return new Date(`${said} UTC`).toISOString().slice(0, 10);
}

export type Screen = 'Lot' | 'Next jobs' | 'Waiting' | 'Money' | 'Sheets' | 'Setup';

export async function goTo(page: Page, screen: Screen): Promise<void> {
  await page.getByRole('navigation', { name: 'Screens' }).getByRole('link', { name: screen, exact: true }).click();
}

/** A row of the lot, by its stock number. */
export function lotRow(page: Page, stockNumber: string): Locator {
  return page.getByRole('row').filter({ has: page.getByRole('link', { name: new RegExp(`^${stockNumber},`) }) });
}

export async function openVehicle(page: Page, stockNumber: string): Promise<void> {
  await page.getByRole('link', { name: new RegExp(`^${stockNumber},`) }).click();
  await expect(page.getByRole('heading', { level: 1 })).toContainText(stockNumber);
}

/** Somebody else comes to the desk; there is one of each role to choose. */
export async function seat(page: Page, role: 'manager' | 'technician' | 'sales'): Promise<void> {
  const desk = page.getByLabel('At the desk');
  const person = desk.getByRole('option', { name: new RegExp(`, ${role}$`) }).first();
  await desk.selectOption({ label: (await person.textContent()) ?? '' });
  await expect(desk.getByRole('option', { selected: true })).toHaveText(new RegExp(`, ${role}$`));
}

/** A section of the vehicle, whatever number of entries its head counts. */
export function section(page: Page, name: string): Locator {
  return page.getByRole('region', { name: new RegExp(`^${name}( \\d+)?$`) });
}

export function form(page: Page, name: string): Locator {
  return page.getByRole('form', { name, exact: true });
}

/** The value beside a label in a list of facts. */
export function fact(place: Page | Locator, label: string): Locator {
  return place
    .getByRole('term')
    .filter({ hasText: exactly(label) })
    .locator('xpath=following-sibling::dd[1]');
}

/** What one field is to hold: text and days are typed, a list is chosen from, a box is ticked. */
export type Entry = string | boolean;

export async function fill(place: Locator, entries: Readonly<Record<string, Entry>>): Promise<void> {
  for (const [label, value] of Object.entries(entries)) {
    const field = place.getByLabel(label, { exact: true }).or(place.getByLabel(`${label} *`, { exact: true }));
    if (typeof value === 'boolean') await field.setChecked(value);
    else if ((await field.evaluate((element) => element.tagName)) === 'SELECT')
      await field.selectOption({ label: value });
    else await field.fill(value);
  }
}

/** Opens the form of a new entry, fills it, adds it, and waits until it is kept. */
export async function add(page: Page, name: string, entries: Readonly<Record<string, Entry>>): Promise<void> {
  await page.getByRole('button', { name, exact: true }).click();
  await fill(form(page, name), entries);
  await keep(form(page, name), 'Add');
}

/** Presses the button that saves a form, and waits until the form is gone: the program closes it only once it is saved. */
export async function keep(open: Locator, button: 'Add' | 'Save' | 'Record the sale' | 'Accept it'): Promise<void> {
  await open.getByRole('button', { name: button, exact: true }).click();
  await expect(open).toHaveCount(0);
}

/** The status line says that it is saved. */
export async function expectSaved(page: Page): Promise<void> {
  await expect(page.getByRole('contentinfo').getByRole('status').first()).toHaveText(/^Saved \d\d:\d\d:\d\d$/);
}

/** The list of what holds the sale, each line with whose move it is, in the order shown. */
export function gates(page: Page): Locator {
  return page
    .getByRole('region', { name: /^What stands between this vehicle and its sale/ })
    .getByRole('listitem')
    .filter({ has: page.getByRole('button'), hasNot: page.getByRole('list') });
}

export type Figures = {
  readonly spent: string;
  readonly later: string;
  readonly margin?: string;
};

/** Spent, and committed with what is still to come, in the words of the summary. */
export async function expectMoney(page: Page, { spent, later, margin = '–' }: Figures): Promise<void> {
  const summary = page.getByRole('region', { name: 'What it costs' });
  await expect(fact(summary, 'Spent')).toHaveText(spent);
  await expect(fact(summary, 'Committed and to come')).toHaveText(later);
  await expect(fact(summary, 'Margin when finished')).toHaveText(margin);
}
