// How long a wrong try locks, as the try is first shown: by its kind of code, and only where that says so.
import { describe, expect, it } from 'vitest';
import { freshTry, lockedAfter } from '../../../../renderer/screens/vehicle/codes/fresh-life.ts';

describe('a wrong try', () => {
  it('locks for the minutes of its kind, counted from now', () => {
    expect(lockedAfter({ lockOutMinutes: 90 }, '2026-03-18T23:00:00.000Z')).toBe('2026-03-19T00:30:00.000Z');
  });

  it('says nothing where the kind does not know, or is not known', () => {
    expect(lockedAfter({ lockOutMinutes: null }, '2026-03-18T23:00:00.000Z')).toBeNull();
    expect(lockedAfter(null, '2026-03-18T23:00:00.000Z')).toBeNull();
    expect(freshTry('try-0001', { today: '2026-03-18', by: 'ada-1', result: 'wrong' }).lockedUntil).toBeNull();
  });
});
