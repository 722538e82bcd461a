// Every kind of sheet in every form of days: its days stand in the form the shop has chosen, and in no other.
import { describe, expect, it } from 'vitest';
import { type DayForm, dayFormSchema } from '../../../app/domain/shared/show-day.ts';
import type { Sheet } from '../../../app/domain/sheets/sheet.ts';
import { printedExamplesOf } from '../../helpers/printed-examples.ts';
import { exampleShop } from '../../helpers/sheet-example.ts';
import { sheetText } from '../../helpers/sheet-text.ts';

const month = '(?:Jan|Feb|Mar|Apr|May|Jun|Jul|Aug|Sep|Oct|Nov|Dec)';
const looks: Readonly<Record<DayForm, RegExp>> = {
  'day-month': new RegExp(`\\b\\d{1,2} ${month} \\d{4}\\b`, 'g'),
  'month-day': new RegExp(`\\b${month} \\d{1,2}, \\d{4}\\b`, 'g'),
  iso: /\b\d{4}-\d\d-\d\d\b/g,
  dotted: /\b\d\d\.\d\d\.\d{4}\b/g,
};

const examplesIn = (dayForm: DayForm) =>
  printedExamplesOf({ ...exampleShop, dealer: { ...exampleShop.dealer, dayForm } });
/** Where a strip is drawn from: days for the pen, not for a reader. */
const drawnFrom = new Set(['axis', 'stretches', 'boughtOn', 'soldOn', 'likelyOn', 'safeOn', 'breakEvenOn']);
const wordsOf = (sheet: Sheet) => {
  const read = JSON.stringify(sheet.blocks, (key, value) => (drawnFrom.has(key) ? undefined : value));
  return sheetText({ ...sheet, blocks: JSON.parse(read) });
};
const found = (sheet: Sheet, form: DayForm) => wordsOf(sheet).match(looks[form]) ?? [];

const countsOf = (form: DayForm) =>
  examplesIn(form).map(({ name, sheet }) => ({ name, days: found(sheet, form).length }));

describe.each(dayFormSchema.options)('sheets with days as %s', (form) => {
  it.each(examplesIn(form).map(({ name, sheet }) => [name, sheet] as const))('hold no other form: %s', (_, sheet) => {
    for (const other of dayFormSchema.options.filter((one) => one !== form))
      expect(found(sheet, other), `days as ${other}`).toEqual([]);
    expect(sheet.dayForm).toBe(form);
  });

  it('hold as many days as in any other form', () => {
    expect(countsOf(form)).toEqual(countsOf('day-month'));
    expect(countsOf(form).filter(({ days }) => days > 0).length).toBeGreaterThan(6);
  });
});
