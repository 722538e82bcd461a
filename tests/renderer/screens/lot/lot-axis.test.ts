// The days under the lot's common axis, and what is summed below it.
import { describe, expect, it } from 'vitest';
import { daysBetween } from '../../../../app/domain/shared/day.ts';
import { lotAxis, lotSpans } from '../../../../renderer/screens/lot/lot-axis.ts';
import { totalsOf } from '../../../../renderer/screens/lot/lot-totals.ts';
import { indexAfterKey } from '../../../../renderer/ui/row-keys.ts';
import { makeRow, today } from './make-row.ts';

describe('the axis of the lot', () => {
  it('shows six weeks before today and a little past it', () => {
    expect(lotAxis('six-weeks', today)).toEqual({ from: '2026-01-21', to: '2026-03-25' });
  });

  it.each(lotSpans)('has today inside for %s', (span) => {
    const { from, to } = lotAxis(span, today);
    expect(daysBetween(from, today)).toBeGreaterThan(40);
    expect(daysBetween(today, to)).toBeGreaterThan(6);
  });
});

describe('the totals of the rows in view', () => {
  it('count the sold and sum only what is still held', () => {
    const rows = [
      makeRow({ spentCents: 700_050, heldDays: 30, idleDays: 12 }),
      makeRow({ spentCents: 100_000, heldDays: 10, idleDays: 1 }),
      makeRow({ standing: 'sold', spentCents: 900_000, heldDays: 80, idleDays: 40 }),
    ];
    expect(totalsOf(rows)).toEqual({ vehicles: 3, tiedUpCents: 800_050, heldDays: 40, idleDays: 13 });
  });

  it('say nothing of money to who does not see it', () => {
    expect(totalsOf([makeRow({ hidesMoney: true })]).tiedUpCents).toBeNull();
  });
});

describe('keys that move the cursor', () => {
  it.each([
    ['ArrowDown', 3, 4],
    ['ArrowDown', 19, 19],
    ['ArrowUp', 0, 0],
    ['PageDown', 3, 13],
    ['PageDown', 15, 19],
    ['PageUp', 4, 0],
    ['Home', 9, 0],
    ['End', 2, 19],
  ])('%s from row %i goes to row %i of 20', (key, from, to) => {
    expect(indexAfterKey(key, from, 20)).toBe(to);
  });

  it('leave other keys alone', () => {
    expect(indexAfterKey('a', 3, 20)).toBeNull();
  });
});
