// A day as a person types it, in the form that the shop has chosen; ISO 8601 and the month in letters are understood whatever was chosen.
// What could be meant two ways is not guessed.
import { type Day, isDay } from './day.ts';
import type { DayForm } from './show-day.ts';

const longNames = [
  'january',
  'february',
  'march',
  'april',
  'may',
  'june',
  'july',
  'august',
  'september',
  'october',
  'november',
  'december',
] as const;

/** The number of the month, two digits: 'Mar', 'march' and 'Sept' are months, 'Ma' and 'Marsh' are none. */
function readMonth(word: string): string | null {
  const at = word.length < 3 ? -1 : longNames.findIndex((name) => name.startsWith(word.toLowerCase()));
  return at < 0 ? null : String(at + 1).padStart(2, '0');
}

function dayOf(year: string, month: string, dayOfMonth: string): Day | null {
  // Two digits are a year of this century: nobody buys or expects anything in another one.
  const whole = year.length === 2 ? `20${year}` : year;
  const day = `${whole}-${month.padStart(2, '0')}-${dayOfMonth.padStart(2, '0')}`;
  return isDay(day) ? day : null;
}

/**
 * The day that is meant, or null. Without a year it is one of the year of `today`, as `showShortDay` leaves it out. Days in digits with the
 * year last are read in the form 'dotted' only, and never with slashes: there is no telling which number is the month.
 */
export function readDay(text: string, form: DayForm, today: Day): Day | null {
  const compact = text.trim().replace(/\s+/g, ' ');
  const thisYear = today.slice(0, 4);
  const iso = /^(\d{4})-(\d{1,2})-(\d{1,2})$/.exec(compact) ?? /^(\d{4})(\d\d)(\d\d)$/.exec(compact);
  if (iso) return dayOf(iso[1] ?? '', iso[2] ?? '', iso[3] ?? '');
  const dayFirst = /^(\d{1,2})\.? ?([a-z]+)\.?,?(?: ?(\d{4}|\d\d))?$/i.exec(compact);
  if (dayFirst) return readNamed(dayFirst[2] ?? '', dayFirst[1] ?? '', dayFirst[3] ?? thisYear);
  const monthFirst = /^([a-z]+)\.? ?(\d{1,2})(?:(?:,? |,)(\d{4}|\d\d))?$/i.exec(compact);
  if (monthFirst) return readNamed(monthFirst[1] ?? '', monthFirst[2] ?? '', monthFirst[3] ?? thisYear);
  const dotted = form === 'dotted' ? /^(\d{1,2})\. ?(\d{1,2})(?:\.|\. ?(\d{4}|\d\d))?$/.exec(compact) : null;
  return dotted ? dayOf(dotted[3] ?? thisYear, dotted[2] ?? '', dotted[1] ?? '') : null;
}

function readNamed(word: string, dayOfMonth: string, year: string): Day | null {
  const month = readMonth(word);
  return month === null ? null : dayOf(year, month, dayOfMonth);
}
