// Where days lie on a strip.
import { describe, expect, it } from 'vitest';
import { clipSpan, daysBefore, scaleOf, ticksOf } from '../../../renderer/ui/strip-geometry.ts';

const axis = { from: '2026-02-01', to: '2026-02-28' };

describe('the places of days on a strip', () => {
  it('gives every day of the axis the same width, first and last included', () => {
    expect(scaleOf(axis, 280).dayWidth).toBe(10);
  });

  it('lays a run of days from the left edge of its first to the right edge of its last', () => {
    expect(clipSpan(scaleOf(axis, 280), '2026-02-03', 4)).toMatchObject({ x: 20, width: 40, days: 4 });
  });

  it('cuts off what runs out at either side, and leaves out what is not there at all', () => {
    const scale = scaleOf(axis, 280);
    expect(clipSpan(scale, '2026-01-30', 4)).toMatchObject({ x: 0, width: 20, days: 2 });
    expect(clipSpan(scale, '2026-02-27', 9)).toMatchObject({ x: 260, width: 20, days: 2 });
    expect(clipSpan(scale, '2026-01-01', 31)).toBeNull();
    expect(clipSpan(scale, '2026-03-01', 5)).toBeNull();
  });

  it('counts the days before the strip begins, never more than were held', () => {
    expect(daysBefore(axis, '2026-01-20', 30)).toBe(12);
    expect(daysBefore(axis, '2026-01-20', 5)).toBe(5);
    expect(daysBefore(axis, '2026-02-10', 5)).toBe(0);
  });

  it('marks Mondays and the first of each month', () => {
    const ticks = ticksOf({ from: '2026-02-25', to: '2026-03-10' }, 140);
    expect(ticks.filter((tick) => tick.kind === 'month').map((tick) => tick.day)).toEqual(['2026-03-01']);
    expect(ticks.filter((tick) => tick.kind === 'week').map((tick) => tick.day)).toEqual(['2026-03-02', '2026-03-09']);
    expect(ticks.find((tick) => tick.day === '2026-03-01')?.x).toBe(40);
  });
});
