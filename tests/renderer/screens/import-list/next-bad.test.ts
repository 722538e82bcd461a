// Jumping to the rows of a list that have something against them.
import { describe, expect, it } from 'vitest';
import { nextBad } from '../../../../renderer/screens/import-list/next-bad.ts';

const rows = [0, 1, 2, 3, 4].map((row) => ({ problems: row === 1 || row === 3 ? ['The price is missing.'] : [] }));

describe('the next row with something against it', () => {
  it('is found forwards and backwards, around the ends', () => {
    expect([0, 1, 2, 3, 4].map((from) => nextBad(rows, from, 1))).toEqual([1, 3, 3, 1, 1]);
    expect([0, 1, 2, 3, 4].map((from) => nextBad(rows, from, -1))).toEqual([3, 3, 1, 1, 3]);
  });
  it('is the same one where there is no other, and none where there is none', () => {
    expect(nextBad(rows.slice(0, 3), 1, 1)).toBe(1);
    expect(nextBad(rows.slice(0, 1), 0, 1)).toBeNull();
    expect(nextBad([], 0, -1)).toBeNull();
  });
});
