// Forms of days: how each writes, that none can be taken for another day, and what is understood when a day is typed.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { dayFromNumber, dayNumber } from '../../../app/domain/shared/day.ts';
import { readDay } from '../../../app/domain/shared/read-day.ts';
import {
  type DayForm,
  dayFormSchema,
  showDay,
  showDaysIn,
  showMonth,
  showShortDay,
} from '../../../app/domain/shared/show-day.ts';

const forms = dayFormSchema.options;
const form = fc.constantFrom(...forms);
const day = fc.integer({ min: dayNumber('1900-01-01'), max: dayNumber('2199-12-31') }).map(dayFromNumber);
const today = '2026-03-18';

describe('a day is written', () => {
  it.each<[DayForm, string, string, string]>([
    ['day-month', '4 Mar 2026', '4 Mar', 'Mar 2026'],
    ['month-day', 'Mar 4, 2026', 'Mar 4', 'Mar 2026'],
    ['iso', '2026-03-04', '2026-03-04', '2026-03'],
    ['dotted', '04.03.2026', '04.03.2026', '03.2026'],
  ])('as %s: %s', (chosen, whole, short, month) => {
    expect(showDay('2026-03-04', chosen)).toBe(whole);
    expect(showShortDay('2026-03-04', today, chosen)).toBe(short);
    expect(showMonth('2026-03', chosen)).toBe(month);
    expect(showMonth('2026-03-01', chosen)).toBe(month);
  });

  it.each(forms)('with its year where that is another one than this (%s)', (chosen) => {
    expect(showShortDay('2025-12-31', today, chosen)).toBe(showDay('2025-12-31', chosen));
  });

  it('inside a sentence, and names, numbers and moments are left alone', () => {
    expect(showDaysIn('Ordered 2026-03-04, here (2026-03-10).', 'month-day')).toBe(
      'Ordered Mar 4, 2026, here (Mar 10, 2026).',
    );
    for (const other of [
      'backups/2026-03-04-daily',
      'exports\\lot-2026-03-04.csv',
      'lot 2026-03-04.csv',
      'LW-2026-03-04',
      '2026-03-04T10:00:00.000Z',
      '2026-99-01 and 2026-3-4',
    ])
      expect(showDaysIn(other, 'month-day')).toBe(other);
  });
});

describe('no day is taken for another', () => {
  it('each form reads back to the same day, whole and short', () => {
    fc.assert(
      fc.property(day, day, form, (one, now, chosen) => {
        expect(readDay(showDay(one, chosen), chosen, now)).toBe(one);
        expect(readDay(showShortDay(one, now, chosen), chosen, now)).toBe(one);
      }),
    );
  });

  it('what one form writes is the same day under every other form, or is not read at all', () => {
    fc.assert(
      fc.property(day, form, form, (one, written, chosen) => {
        expect([one, null]).toContain(readDay(showDay(one, written), chosen, today));
      }),
    );
  });

  it('two days are never written alike, in one form or in two', () => {
    fc.assert(
      fc.property(day, day, form, form, (one, other, first, second) => {
        fc.pre(one !== other);
        expect(showDay(one, first)).not.toBe(showDay(other, second));
        expect(showShortDay(one, today, first)).not.toBe(showShortDay(other, today, second));
      }),
    );
  });
});

describe('a day is read', () => {
  it.each([
    ['2026-03-04', '2026-03-04'],
    [' 2026-3-4 ', '2026-03-04'],
    ['20260304', '2026-03-04'],
    ['4 Mar 2026', '2026-03-04'],
    ['4 march', '2026-03-04'],
    ['4mar26', '2026-03-04'],
    ['4. Sept. 2025', '2025-09-04'],
    ['Mar 4, 2026', '2026-03-04'],
    ['March 4 2026', '2026-03-04'],
    ['mar 4', '2026-03-04'],
    ['May 4,2027', '2027-05-04'],
    ['29 Feb 2024', '2024-02-29'],
  ])('whatever form is chosen: %s', (typed, meant) => {
    for (const chosen of forms) expect(readDay(typed, chosen, today)).toBe(meant);
  });

  it.each(['', '4', 'March', '4 Ma', '4 Marsh', '29 Feb 2026', '2026-13-01', '4 Mar 202', '31.4.2026', '4/3/2026'])(
    'never, whatever form is chosen: “%s”',
    (typed) => {
      for (const chosen of forms) expect(readDay(typed, chosen, today)).toBeNull();
    },
  );

  it.each(['4.3.2026', '04.03.26', '4.3.', '4.3'])('between dots only where the shop writes so: %s', (typed) => {
    expect(readDay(typed, 'dotted', today)).toBe('2026-03-04');
    for (const chosen of ['day-month', 'month-day', 'iso'] as const) expect(readDay(typed, chosen, today)).toBeNull();
  });
});
