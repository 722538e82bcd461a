// Public holidays as they are offered: the federal ones of the United States against the rules of the law, reckoned here by themselves,
// and those of England.
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { addDays, type Day, dayNumber } from '../../app/domain/shared/day.ts';
import { openTestDesk, type TestDesk } from '../helpers/open-test-desk.ts';

let desk: TestDesk;
beforeAll(async () => {
  desk = await openTestDesk();
});
afterAll(() => desk.discard());

const offered = async (country: string, region: string | null, year: number) =>
  desk.ask('calendar:suggest-holidays', { country, region, year });
const publicDays = async (country: string, region: string | null, year: number) =>
  (await offered(country, region, year)).filter(({ isPublic }) => isPublic).map(({ day }) => day);

/** ISO number of the weekday: 1970-01-01 was a Thursday. */
const weekday = (day: Day) => ((dayNumber(day) + 3) % 7) + 1;
const dayOf = (year: number, month: number, dayOfMonth: number): Day =>
  `${year}-${String(month).padStart(2, '0')}-${String(dayOfMonth).padStart(2, '0')}`;
const nth = (year: number, month: number, wanted: number, count: number): Day => {
  const first = dayOf(year, month, 1);
  return addDays(first, ((wanted - weekday(first) + 7) % 7) + 7 * (count - 1));
};
const lastMonday = (year: number, month: number): Day => {
  const fifth = nth(year, month, 1, 5);
  return fifth.slice(5, 7) === String(month).padStart(2, '0') ? fifth : addDays(fifth, -7);
};
/** 5 U.S.C. 6103(b): a Saturday is observed on the Friday before; a Sunday on the Monday after by Executive Order 11582. */
const observed = (day: Day): Day =>
  weekday(day) === 6 ? addDays(day, -1) : weekday(day) === 7 ? addDays(day, 1) : day;

/** The days of 5 U.S.C. 6103(a), from memory; the list of 2026 in tests/reference/working-days.test.ts comes from a public data set. */
const federal = (year: number): Day[] =>
  [
    dayOf(year, 1, 1),
    nth(year, 1, 1, 3),
    nth(year, 2, 1, 3),
    lastMonday(year, 5),
    dayOf(year, 6, 19),
    dayOf(year, 7, 4),
    nth(year, 9, 1, 1),
    nth(year, 10, 1, 2),
    dayOf(year, 11, 11),
    nth(year, 11, 4, 4),
    dayOf(year, 12, 25),
    // On a Saturday it is observed in the year before.
    dayOf(year + 1, 1, 1),
  ]
    .map(observed)
    .filter((day) => day.startsWith(String(year)));

describe('holidays of the United States', () => {
  it.each([2024, 2025, 2026, 2027])('of %i are those of the law, each on the day it is observed', async (year) => {
    const days = await publicDays('US', null, year);
    expect(federal(year).filter((day) => !days.includes(day))).toEqual([]);
    const beside = days.filter((day) => !federal(year).includes(day));
    // What is offered on top is the day itself where it is observed on another one.
    expect(beside.filter((day) => weekday(day) < 6)).toEqual([]);
  });
});

describe('bank holidays of England', () => {
  it('of 2024 are these eight', async () => {
    // From memory of the government's published list; the same in the project's own notes on working days.
    expect(await publicDays('GB', 'ENG', 2024)).toEqual([
      '2024-01-01',
      '2024-03-29',
      '2024-04-01',
      '2024-05-06',
      '2024-05-27',
      '2024-08-26',
      '2024-12-25',
      '2024-12-26',
    ]);
  });
});

describe('the places', () => {
  it('are countries by name, and the regions of one', async () => {
    const countries = await desk.ask('calendar:places', { country: null });
    expect(countries.length).toBeGreaterThan(150);
    expect(countries.map(({ name }) => name)).toContain('Germany');
    const regions = await desk.ask('calendar:places', { country: 'DE' });
    expect(regions).toHaveLength(16);
    expect(await desk.ask('calendar:places', { country: 'VA' })).toEqual([]);
  });

  it('that are unknown have no holidays', async () => {
    expect(await offered('ZZ', null, 2026)).toEqual([]);
  });

  it('offer each day once, in order and within the year asked for or its edges', async () => {
    for (const [country, region] of [
      ['DE', 'BY'],
      ['TR', null],
      ['IL', null],
      ['JP', null],
    ] as const) {
      const days = (await offered(country, region, 2026)).map(({ day }) => day);
      expect(days.length).toBeGreaterThan(5);
      expect([...new Set(days)].sort()).toEqual(days);
    }
  });
});
