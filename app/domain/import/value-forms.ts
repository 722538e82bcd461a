// How a column writes its numbers and days: guessed from all of its values together, shown to the person, then read strictly. Pure.
import { z } from 'zod';
import { type Cents, largestEntryCents } from '../shared/cents.ts';
import { type Day, isDay } from '../shared/day.ts';

export const decimalFormSchema = z.enum(['point', 'comma']);
export type DecimalForm = z.infer<typeof decimalFormSchema>;
export const dayFormSchema = z.enum(['year-first', 'day-first', 'month-first']);
export type DayForm = z.infer<typeof dayFormSchema>;

/** Without spaces, currency signs and letters around it, and with a plain minus. */
function bareNumber(text: string): string {
  return text
    .replace(/[\s\u00a0\u202f'’]/g, '')
    .replace(/^[^\d\-\u2212.,]+|[^\d]+$/g, '')
    .replace('\u2212', '-');
}

/** A comma before one or two last digits, or after a point, speaks for the comma; the other way round for the point. A tie: the point. */
export function guessDecimalForm(values: readonly string[]): DecimalForm {
  let comma = 0;
  let point = 0;
  for (const value of values.map(bareNumber)) {
    if (/,\d{1,2}$/.test(value) || /\.\d{3},/.test(value) || /^-?[1-9]\d{0,2}(\.\d{3})+$/.test(value)) comma += 1;
    if (/\.\d{1,2}$/.test(value) || /,\d{3}\./.test(value) || /^-?[1-9]\d{0,2}(,\d{3})+$/.test(value)) point += 1;
  }
  return comma > point ? 'comma' : 'point';
}

/** The amount in cents; null when the text is no amount in this form, has more than two decimals, or is out of bounds. */
export function readListCents(text: string, form: DecimalForm): Cents | null {
  const bare = bareNumber(text);
  const [thousands, decimal] = form === 'comma' ? ['.', ','] : [',', '.'];
  const pattern =
    form === 'comma' ? /^-?(\d+|\d{1,3}(\.\d{3})+)(,\d{1,2}|,)?$/ : /^-?(\d+|\d{1,3}(,\d{3})+)(\.\d{1,2}|\.)?$/;
  if (!pattern.test(bare)) return null;
  const [whole = '', part = ''] = bare.replace('-', '').replaceAll(thousands, '').split(decimal);
  const cents = Number(`${whole}${part.padEnd(2, '0')}`);
  if (!Number.isSafeInteger(cents) || cents > largestEntryCents) return null;
  return bare.startsWith('-') && cents !== 0 ? -cents : cents;
}

/** A whole number with or without marks at thousands; null for anything else. A fraction that is all zeros is none. */
export function readListWhole(text: string, form: DecimalForm): number | null {
  const cents = readListCents(text, form);
  return cents === null || cents % 100 !== 0 ? null : cents / 100;
}

type Parts = readonly [first: number, second: number, third: number, firstLength: number];

function partsOf(text: string): Parts | null {
  // A time after the day is not looked at.
  const match = /^(\d{1,4})[./\-\s](\d{1,2})[./\-\s](\d{1,4})(?:[T\s,]+\d{1,2}:\d{2}.*)?$/.exec(
    text.trim().replace(/\.\s+/g, '.'),
  );
  if (!match) return null;
  return [Number(match[1]), Number(match[2]), Number(match[3]), match[1]?.length ?? 0];
}

/** The form that reads the most of the values; where several do: year first, then day first unless the market writes the month first. */
export function guessDayForm(values: readonly string[], monthFirst: boolean): DayForm {
  // Points between the parts: the day comes first, wherever the shop is (common practice, no source).
  const isPointed = values.some((value) => /^\d{1,2}\.\s?\d{1,2}\./.test(value.trim()));
  const order: readonly DayForm[] =
    monthFirst && !isPointed ? ['year-first', 'month-first', 'day-first'] : ['year-first', 'day-first', 'month-first'];
  const filled = values.filter((value) => value.trim() !== '');
  let best: DayForm = order[1] ?? 'day-first';
  let most = 0;
  for (const form of order) {
    const read = filled.filter((value) => readListDay(value, form) !== null).length;
    if (read > most) [best, most] = [form, read];
  }
  return best;
}

/** The day, in this form only; null when it is none. Two digits of a year are of this century: lists of purchases are young. */
export function readListDay(text: string, form: DayForm): Day | null {
  const compact = /^(\d{4})(\d{2})(\d{2})$/.exec(text.trim());
  if (compact && form === 'year-first') return existing(Number(compact[1]), Number(compact[2]), Number(compact[3]));
  const parts = partsOf(text);
  if (parts === null) return null;
  const [first, second, third, firstLength] = parts;
  if (form === 'year-first') return firstLength === 4 ? existing(first, second, third) : null;
  if (firstLength > 2) return null;
  const year = third < 100 ? 2000 + third : third;
  return form === 'day-first' ? existing(year, second, first) : existing(year, first, second);
}

function existing(year: number, month: number, day: number): Day | null {
  const text = `${String(year).padStart(4, '0')}-${String(month).padStart(2, '0')}-${String(day).padStart(2, '0')}`;
  return isDay(text) ? text : null;
}
