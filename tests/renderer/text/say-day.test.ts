// Days as they are said on the screen.
import { describe, expect, it } from 'vitest';
import { sayDay, sayDaysIn, sayDistance, saySince } from '../../../renderer/text/say-day.ts';

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
