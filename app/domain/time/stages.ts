// At which stage a vehicle stood on each day of the past: judged from the record as it stood then, so that later work never rewrites
// days that have gone by. What a day is charged to is decided in held-days.ts.
import type { NamedKinds } from '../codes/code-name.ts';
import type { Check } from '../fleet/shop.ts';
import { judgeReadiness, type Readiness } from '../readiness/gates.ts';
import { nextItem } from '../readiness/next-item.ts';
import { isWorkOpen, workGates } from '../readiness/work-gates.ts';
import type { Day } from '../shared/day.ts';
import type { Vehicle } from '../vehicle/vehicle.ts';
import { changeDays, recordAsOf } from './record-as-of.ts';

export type Stage = 'working' | 'verify' | 'present' | 'paper' | 'ready';

/** A run of days, up to the next span, on which the gates stood as they stand here. */
export type StageSpan = {
  readonly from: Day;
  readonly stage: Stage;
  /** The next thing to do in it; empty when ready. Worked out when asked for: most days have something else to say. */
  readonly nextText: () => string;
};

function stageOf(readiness: Readiness): Stage {
  if (readiness.isReady) return 'ready';
  if (readiness.workFinishedOn === null) return 'working';
  if (readiness.verifiedOn === null) return 'verify';
  return readiness.presentedOn === null ? 'present' : 'paper';
}

function spanFrom(from: Day, vehicle: Vehicle, checklist: readonly Check[], kinds?: NamedKinds): StageSpan {
  const then = recordAsOf(vehicle, from);
  // On most days the work is open; then its proof need not be judged.
  if (isWorkOpen(then)) {
    const nextText = () => nextItem({ gates: workGates(then, kinds), workFinishedOn: null })?.text ?? '';
    return { from, stage: 'working', nextText };
  }
  const readiness = judgeReadiness(then, checklist, kinds);
  return { from, stage: stageOf(readiness), nextText: () => nextItem(readiness)?.text ?? '' };
}

/** The stages from the day of purchase to `lastDay`, in order and without a gap. */
export function stageSpans(
  vehicle: Vehicle,
  checklist: readonly Check[],
  lastDay: Day,
  kinds?: NamedKinds,
): readonly StageSpan[] {
  const { boughtOn } = vehicle.purchase;
  const days = [boughtOn, ...changeDays(vehicle).filter((day) => day > boughtOn && day <= lastDay)];
  return days.map((from) => spanFrom(from, vehicle, checklist, kinds));
}

/** The span that holds on this day; null before the purchase. */
export function spanOn(spans: readonly StageSpan[], day: Day): StageSpan | null {
  for (let index = spans.length - 1; index >= 0; index -= 1) {
    const span = spans[index];
    if (span && span.from <= day) return span;
  }
  return null;
}
