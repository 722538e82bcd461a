// The strip of one vehicle: from when to when it is drawn, and what it says of a day when it is read with the arrow keys.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { addDays, daysBetween } from '../../../../app/domain/shared/day.ts';
import type { Stretch } from '../../../../app/domain/time/held-days.ts';
import { dayOnStrip, moveDay } from '../../../../renderer/screens/vehicle/strip/day-on-strip.ts';
import { stripAxis } from '../../../../renderer/screens/vehicle/strip/strip-axis.ts';

const bare = {
  boughtOn: '2026-01-10',
  today: '2026-03-04',
  soldOn: null,
  expectedOn: null,
  breakEvenOn: null,
  safeOn: null,
};

describe('the axis of the strip', () => {
  it('begins on the day of purchase and leaves a week of future', () => {
    expect(stripAxis(bare)).toEqual({ from: '2026-01-10', to: '2026-03-11' });
  });

  it('reaches past a promise, but not past one that is more than half a year away', () => {
    expect(stripAxis({ ...bare, expectedOn: '2026-04-20' }).to).toBe('2026-04-22');
    expect(stripAxis({ ...bare, expectedOn: '2027-12-01' }).to).toBe('2026-03-11');
  });

  it('shows the break-even day while the past keeps half of the strip', () => {
    expect(stripAxis({ ...bare, breakEvenOn: '2026-04-10' }).to).toBe('2026-04-12');
    expect(stripAxis({ ...bare, breakEvenOn: '2026-09-01' }).to).toBe('2026-03-11');
  });

  it('ends soon after the sale of a sold vehicle, whatever was once expected', () => {
    const sold = { ...bare, soldOn: '2026-02-20', expectedOn: '2026-04-20', breakEvenOn: '2026-04-10' };
    expect(stripAxis(sold).to).toBe('2026-02-22');
  });

  it('is never shorter than three weeks, for a vehicle bought today', () => {
    const { from, to } = stripAxis({ ...bare, boughtOn: '2026-03-04' });
    expect(daysBetween(from, to)).toBe(21);
  });
});

const stretches: readonly Stretch[] = [
  { cause: 'transit', from: '2026-02-01', days: 3, what: 'Auction' },
  { cause: 'work', from: '2026-02-04', days: 1, what: 'scan' },
  { cause: 'part', from: '2026-02-05', days: 20, what: 'Body module from Northgate' },
];
const when = { boughtOn: '2026-02-01', today: '2026-02-25', soldOn: null };

describe('a day on the strip', () => {
  it('says its cause and the how many-eth day of it it is', () => {
    expect(dayOnStrip({ stretches }, when, '2026-02-07')).toEqual({ kind: 'held', stretch: stretches[2], nth: 3 });
    expect(dayOnStrip({ stretches }, when, '2026-02-24')).toMatchObject({ kind: 'held', nth: 20 });
  });

  it('tells today, the future, the time before the purchase and the time after the sale apart', () => {
    expect(dayOnStrip({ stretches }, when, '2026-02-25')).toEqual({ kind: 'today' });
    expect(dayOnStrip({ stretches }, when, '2026-03-01')).toEqual({ kind: 'future', inDays: 4 });
    expect(dayOnStrip({ stretches }, when, '2026-01-31')).toEqual({ kind: 'before' });
    expect(dayOnStrip({ stretches }, { ...when, soldOn: '2026-02-25' }, '2026-02-25')).toEqual({ kind: 'sold' });
  });
});

describe('moving over the strip', () => {
  const on = { from: '2026-02-01', to: '2026-03-04', today: '2026-02-25', stretches, byStretch: false };

  it('goes a day, a week, or to the ends', () => {
    expect(moveDay('2026-02-10', 'ArrowLeft', on)).toBe('2026-02-09');
    expect(moveDay('2026-02-10', 'ArrowRight', on)).toBe('2026-02-11');
    expect(moveDay('2026-02-10', 'PageDown', on)).toBe('2026-02-17');
    expect(moveDay('2026-02-10', 'Home', on)).toBe('2026-02-01');
    expect(moveDay('2026-02-10', 'End', on)).toBe('2026-03-04');
    expect(moveDay('2026-02-10', 'a', on)).toBeNull();
  });

  it('goes from one change of cause to the next', () => {
    const byStretch = { ...on, byStretch: true };
    expect(moveDay('2026-02-10', 'ArrowLeft', byStretch)).toBe('2026-02-05');
    expect(moveDay('2026-02-05', 'ArrowLeft', byStretch)).toBe('2026-02-04');
    expect(moveDay('2026-02-10', 'ArrowRight', byStretch)).toBe('2026-02-25');
    expect(moveDay('2026-02-25', 'ArrowRight', byStretch)).toBe('2026-03-04');
  });

  it('never leaves the axis', () => {
    const keys = ['ArrowLeft', 'ArrowRight', 'PageUp', 'PageDown', 'Home', 'End'];
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 31 }),
        fc.array(fc.tuple(fc.constantFrom(...keys), fc.boolean()), { maxLength: 40 }),
        (start, presses) => {
          let day = addDays(on.from, start);
          for (const [key, byStretch] of presses) {
            day = moveDay(day, key, { ...on, byStretch }) ?? day;
            expect(day >= on.from && day <= on.to).toBe(true);
          }
        },
      ),
    );
  });
});
