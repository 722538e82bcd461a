// Everything a page says: its words, tips, names for screen readers, alternatives of pictures, and what its fields hold. Lists of choices
// are left out, because they name what was not chosen.
import type { Page } from '@playwright/test';
import { type DayForm, dayFormSchema } from '../../app/domain/shared/show-day.ts';
import { expect } from './fixtures.ts';

export async function wordsOnPage(page: Page): Promise<readonly string[]> {
  return page.evaluate(() => {
    const found: string[] = [];
    const isLeftOut = (element: Element | null) => element?.closest('option, script, style') !== null;
    const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
    while (walker.nextNode())
      if (!isLeftOut(walker.currentNode.parentElement)) found.push(walker.currentNode.nodeValue ?? '');
    for (const element of document.body.querySelectorAll('*')) {
      if (isLeftOut(element)) continue;
      for (const name of ['title', 'aria-label', 'aria-description', 'placeholder', 'alt'])
        found.push(element.getAttribute(name) ?? '');
      const isField = element instanceof HTMLInputElement || element instanceof HTMLTextAreaElement;
      // The value of the system's calendar is not drawn.
      if (isField && element.type !== 'date' && element.type !== 'checkbox' && element.type !== 'radio')
        found.push(element.value);
    }
    return found.filter((text) => text.trim() !== '');
  });
}

const month = '(?:Jan|Feb|Mar|Apr|May|Jun|Jul|Aug|Sep|Oct|Nov|Dec)';
/** With and without their year; not inside the name of a file or a stock number. */
const looks: Readonly<Record<DayForm, RegExp>> = {
  'day-month': new RegExp(`\\b\\d{1,2} ${month}\\b(?: \\d{4})?`),
  'month-day': new RegExp(`\\b${month} \\d{1,2}\\b(?!\\d)(?:, \\d{4})?`),
  iso: /(?<![\w/\\.-])\d{4}-\d\d-\d\d(?![\w/\\-]|\.\w)/,
  dotted: /\b\d\d\.\d\d\.\d{4}\b/,
};

/** The page tells days in this form, and none in any other. */
export function expectDaysIn(form: DayForm, words: readonly string[], where: string): void {
  const holds = (look: RegExp) => words.filter((text) => look.test(text));
  expect.soft(holds(looks[form]), `days in the form ${form}: ${where}`).not.toEqual([]);
  for (const other of dayFormSchema.options.filter((one) => one !== form))
    expect.soft(holds(looks[other]), `days in the form ${other}: ${where}`).toEqual([]);
}
