// From which day to which the strip of one vehicle is drawn: all of the past, and as much of the future as is known and legible.
import { addDays, type Day, daysBetween, laterDay } from '../../../../app/domain/shared/day.ts';

export type StripDays = {
  readonly boughtOn: Day;
  readonly today: Day;
  readonly soldOn: Day | null;
  readonly expectedOn: Day | null;
  readonly breakEvenOn: Day | null;
  /** Ready by then in 80 of 100 runs; shown like a promise. */
  readonly safeOn: Day | null;
};

export type Axis = { readonly from: Day; readonly to: Day };

/** Days of future shown although nothing is known of them, so that today is not the edge. */
const leastFutureDays = 7;
const leastSpanDays = 21;

/**
 * The axis. A promise is always shown, up to half a year ahead; the break-even day only while it does not squeeze the past into less
 * than half the strip (the figures beside the strip name it anyway).
 */
export function stripAxis({ boughtOn, today, soldOn, expectedOn, breakEvenOn, safeOn }: StripDays): Axis {
  const lastKnown = soldOn ?? today;
  const heldDays = Math.max(0, daysBetween(boughtOn, lastKnown));
  let to = addDays(lastKnown, soldOn === null ? leastFutureDays : 2);
  if (soldOn === null) {
    const furthestPromise = addDays(today, 183);
    if (expectedOn !== null && expectedOn <= furthestPromise) to = laterDay(to, addDays(expectedOn, 2));
    if (safeOn !== null && safeOn <= furthestPromise) to = laterDay(to, addDays(safeOn, 2));
    const furthestBreakEven = addDays(today, Math.max(leastSpanDays, heldDays));
    if (breakEvenOn !== null && breakEvenOn <= furthestBreakEven) to = laterDay(to, addDays(breakEvenOn, 2));
  }
  return { from: boughtOn, to: laterDay(to, addDays(boughtOn, leastSpanDays)) };
}
