// Days as they are said on the screen.
import { afterEach, describe, expect, it } from 'vitest';
import { dayFormStore } from '../../../renderer/state/day-form-store.ts';
import { showMoment } from '../../../renderer/text/instant.ts';
import {
  sayDay,
  sayDaysIn,
  sayDistance,
  sayMonth,
  saySince,
  sayWholeDay,
  sayWholeDaysIn,
} from '../../../renderer/text/say-day.ts';

const today = '2026-03-18';

describe('a day', () => {
  it('is said with its year only when that is another one', () => {
    expect(sayDay('2026-03-04', today)).toBe('4 Mar');
    expect(sayDay('2025-12-31', today)).toBe('31 Dec 2025');
  });

  it('is said inside a sentence, and other numbers are left alone', () => {
    expect(sayDaysIn('Part on its way, expected on 2026-03-20', today)).toBe('Part on its way, expected on 20 Mar');
    expect(sayDaysIn('LW-2026-99-01 of 2026-3-4', today)).toBe('LW-2026-99-01 of 2026-3-4');
  });

  it('is said by its distance', () => {
    const said = ['2026-03-18', '2026-03-19', '2026-03-17', '2026-03-22', '2026-03-09'].map((day) =>
      sayDistance(day, today),
    );
    expect(said).toEqual(['today', 'tomorrow', 'yesterday', 'in 4 days', '9 days ago']);
  });

  it('is said as a beginning', () => {
    expect(saySince('2026-03-09', today)).toBe('since 9 Mar, 9 days');
    expect(saySince('2026-03-17', today)).toBe('since 17 Mar, 1 day');
    expect(saySince(today, today)).toBe('since today');
  });
});

describe('the form that the shop has chosen', () => {
  afterEach(() => dayFormStore.set('day-month'));

  it('is the one in which everything that names a day says it', () => {
    dayFormStore.set('month-day');
    expect(sayDay('2026-03-04', today)).toBe('Mar 4');
    expect(sayDay('2025-12-31', today)).toBe('Dec 31, 2025');
    expect(sayWholeDay('2026-03-04')).toBe('Mar 4, 2026');
    expect(sayDaysIn('expected on 2026-03-20', today)).toBe('expected on Mar 20');
    expect(sayWholeDaysIn('expected on 2026-03-20')).toBe('expected on Mar 20, 2026');
    expect(saySince('2026-03-09', today)).toBe('since Mar 9, 9 days');
    expect(showMoment(new Date(2026, 2, 4, 9, 5).toISOString())).toBe('Mar 4, 2026 09:05');
    dayFormStore.set('iso');
    expect(saySince('2026-03-09', today)).toBe('since 2026-03-09, 9 days');
    expect(sayMonth('2026-03')).toBe('2026-03');
  });
});
