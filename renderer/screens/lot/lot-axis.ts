// The days the lot's common axis shows. Pure.
import { addDays, type Day } from '../../../app/domain/shared/day.ts';
import type { Axis } from '../../ui/strip-geometry.ts';

export const lotSpans = ['six-weeks', 'three-months', 'six-months'] as const;
export type LotSpan = (typeof lotSpans)[number];

/** Days before today, and after it: enough to see what is expected soon without giving the past away. */
const daysOfSpan: Readonly<Record<LotSpan, { readonly past: number; readonly coming: number }>> = {
  'six-weeks': { past: 42, coming: 21 },
  'three-months': { past: 91, coming: 28 },
  'six-months': { past: 182, coming: 42 },
};

export function lotAxis(span: LotSpan, today: Day): Axis {
  const { past, coming } = daysOfSpan[span];
  return { from: addDays(today, -past), to: addDays(today, coming) };
}
