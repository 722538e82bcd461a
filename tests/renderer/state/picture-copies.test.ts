// How large the copies of a photograph are; that they are drawn is shown in the running program.
import { describe, expect, it } from 'vitest';
import { fitWithin, makeCopies } from '../../../renderer/state/picture-copies.ts';

describe('a copy', () => {
  it.each([
    [
      { width: 4000, height: 3000 },
      { width: 320, height: 240 },
    ],
    [
      { width: 3000, height: 4000 },
      { width: 240, height: 320 },
    ],
    [
      { width: 320, height: 320 },
      { width: 320, height: 320 },
    ],
    [
      { width: 1001, height: 333 },
      { width: 320, height: 106 },
    ],
  ])('of %j has its longer edge within the bounds, and keeps its proportions', (from, to) => {
    expect(fitWithin(from, 320)).toEqual(to);
  });

  it('is never larger than the picture itself', () => {
    expect(fitWithin({ width: 12, height: 7 }, 320)).toEqual({ width: 12, height: 7 });
  });

  it('is never without a dot, however narrow the picture is', () => {
    expect(fitWithin({ width: 9000, height: 2 }, 320)).toEqual({ width: 320, height: 1 });
  });

  it('is none where the bytes cannot be drawn', async () => {
    expect(await makeCopies(new Blob(['%PDF-1.4']))).toEqual({ small: null, print: null });
  });
});
