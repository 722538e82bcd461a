// Where days lie on a strip: pure arithmetic from calendar days to pixels and to the ticks of the axis. Draws nothing.
import { type Day, dayFromNumber, dayNumber } from '../../app/domain/shared/day.ts';

/** First and last day shown, both whole. */
export type Axis = { readonly from: Day; readonly to: Day };

export type Scale = {
  readonly firstNumber: number;
  /** One more than the last day's number. */
  readonly endNumber: number;
  readonly dayWidth: number;
  readonly width: number;
};

export function scaleOf(axis: Axis, width: number): Scale {
  const firstNumber = dayNumber(axis.from);
  const endNumber = Math.max(firstNumber + 1, dayNumber(axis.to) + 1);
  return { firstNumber, endNumber, dayWidth: width / (endNumber - firstNumber), width };
}

/** The left edge of the day with this number; may lie outside the strip. */
export function xOf(scale: Scale, number: number): number {
  return (number - scale.firstNumber) * scale.dayWidth;
}

export type Span = { readonly x: number; readonly width: number; readonly firstNumber: number; readonly days: number };

/** The part of `days` days from `from` that the strip shows; null when it shows none of them. */
export function clipSpan(scale: Scale, from: Day, days: number): Span | null {
  const start = dayNumber(from);
  const first = Math.max(start, scale.firstNumber);
  const end = Math.min(start + days, scale.endNumber);
  if (end <= first) return null;
  return { x: xOf(scale, first), width: (end - first) * scale.dayWidth, firstNumber: first, days: end - first };
}

/** How many of the days from `from` lie before the strip begins. */
export function daysBefore(axis: Axis, from: Day, days: number): number {
  return Math.min(days, Math.max(0, dayNumber(axis.from) - dayNumber(from)));
}

export type Tick = { readonly x: number; readonly kind: 'month' | 'week'; readonly day: Day };

const lastTicks = new WeakMap<Axis, { readonly width: number; readonly ticks: readonly Tick[] }>();

/** The first of each month and each Monday on the axis. Worked out once for all strips that share the axis. */
export function ticksOf(axis: Axis, width: number): readonly Tick[] {
  const known = lastTicks.get(axis);
  if (known?.width === width) return known.ticks;
  const ticks = findTicks(axis, width);
  lastTicks.set(axis, { width, ticks });
  return ticks;
}

/** 1970-01-05 was a Monday. */
function findTicks(axis: Axis, width: number): readonly Tick[] {
  const scale = scaleOf(axis, width);
  const ticks: Tick[] = [];
  for (let number = scale.firstNumber; number < scale.endNumber; number += 1) {
    const day = dayFromNumber(number);
    const x = xOf(scale, number);
    if (day.endsWith('-01')) ticks.push({ x, kind: 'month', day });
    if ((number - 4) % 7 === 0) ticks.push({ x, kind: 'week', day });
  }
  return ticks;
}
