// What one day of the strip says: which cause it was charged to, why, and where it lies. Pure; the words are in renderer/text.
import { addDays, type Day, daysBetween } from '../../../../app/domain/shared/day.ts';
import type { HeldDays, Stretch } from '../../../../app/domain/time/held-days.ts';

export type DayOnStrip =
  | { readonly kind: 'before' }
  | { readonly kind: 'held'; readonly stretch: Stretch; readonly nth: number }
  | { readonly kind: 'today' }
  | { readonly kind: 'sold' }
  | { readonly kind: 'future'; readonly inDays: number };

/** The stretch a day belongs to; null for a day that is not charged (today with day 0 counting as none, the future). */
export function stretchOn(stretches: readonly Stretch[], day: Day): Stretch | null {
  return stretches.find((stretch) => day >= stretch.from && day < addDays(stretch.from, stretch.days)) ?? null;
}

export function dayOnStrip(
  held: Pick<HeldDays, 'stretches'>,
  { boughtOn, today, soldOn }: { readonly boughtOn: Day; readonly today: Day; readonly soldOn: Day | null },
  day: Day,
): DayOnStrip {
  if (day < boughtOn) return { kind: 'before' };
  if (soldOn !== null && day >= soldOn) return { kind: 'sold' };
  const stretch = stretchOn(held.stretches, day);
  if (stretch !== null) return { kind: 'held', stretch, nth: daysBetween(stretch.from, day) + 1 };
  return day <= today ? { kind: 'today' } : { kind: 'future', inDays: daysBetween(today, day) };
}

/** The day itself, or the end of the axis beyond which it lies. */
export function dayOnAxis(day: Day, { from, to }: { readonly from: Day; readonly to: Day }): Day {
  if (day < from) return from;
  return day > to ? to : day;
}

/** Where an arrow key takes the reading, kept on the axis. Page keys move a week; with `byStretch` to the next change of cause. */
export function moveDay(
  day: Day,
  key: string,
  {
    from,
    to,
    today,
    stretches,
    byStretch,
  }: {
    readonly from: Day;
    readonly to: Day;
    readonly today: Day;
    readonly stretches: readonly Stretch[];
    readonly byStretch: boolean;
  },
): Day | null {
  const onAxis = (moved: Day): Day => dayOnAxis(moved, { from, to });
  const starts = [...stretches.map((stretch) => stretch.from), today].sort();
  switch (key) {
    case 'ArrowLeft':
    case 'ArrowDown':
      return onAxis(byStretch ? (starts.findLast((start) => start < day) ?? from) : addDays(day, -1));
    case 'ArrowRight':
    case 'ArrowUp':
      return onAxis(byStretch ? (starts.find((start) => start > day) ?? to) : addDays(day, 1));
    case 'PageUp':
      return onAxis(addDays(day, -7));
    case 'PageDown':
      return onAxis(addDays(day, 7));
    case 'Home':
      return from;
    case 'End':
      return to;
    default:
      return null;
  }
}
