// Working time as people type it.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readMinutes, showMinutes } from '../../../../renderer/screens/vehicle/labour/minutes-text.ts';

describe('working time', () => {
  it.each([
    ['90', 90],
    ['90 min', 90],
    ['1:30', 90],
    ['1h30', 90],
    ['1 h 30 min', 90],
    ['2h', 120],
    ['1.5', 90],
    ['1,25 h', 75],
    ['0:05', 5],
  ])('%s is %d minutes', (text, minutes) => {
    expect(readMinutes(text)).toBe(minutes);
  });

  it.each(['', 'an hour', '1:75', '1.234', '-5', '1:2:3'])('%j is no working time', (text) => {
    expect(readMinutes(text)).toBeNull();
  });

  it('is shown so that it reads as the same', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 59_000 }), (minutes) => {
        expect(readMinutes(showMinutes(minutes))).toBe(minutes);
      }),
    );
  });
});
