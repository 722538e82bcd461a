// One day of the strip in a sentence, for the line under it and for a screen reader. Pure.
import type { VehicleView } from '../../../../app/contract/views.ts';
import type { Day } from '../../../../app/domain/shared/day.ts';
import { stripText } from '../../../text/vehicle.ts';
import { dayOnStrip } from './day-on-strip.ts';

type Shown = Pick<VehicleView, 'held' | 'today' | 'costs'> & {
  readonly vehicle: { readonly purchase: { readonly boughtOn: Day }; readonly sale: { readonly soldOn: Day } | null };
};

function futureWords({ held, today }: Shown, day: Day): string {
  const { standing, expectedOn } = held.now;
  const words = stripText.future(day, today);
  if (expectedOn === null || day > expectedOn) return `${words}${stripText.futureOpen}`;
  return `${words}${day === expectedOn ? stripText.futureExpectedEnd(standing) : stripText.futureExpected(standing)}`;
}

function marginWords(breakEvenOn: Day | null, day: Day): string {
  if (breakEvenOn === null) return '';
  if (day === breakEvenOn) return stripText.lastDayOfMargin;
  return day > breakEvenOn ? stripText.marginUsedUp : '';
}

export function dayWords(shown: Shown, day: Day): string {
  const { held, today, vehicle, costs } = shown;
  const soldOn = vehicle.sale?.soldOn ?? null;
  const on = dayOnStrip(held, { boughtOn: vehicle.purchase.boughtOn, today, soldOn }, day);
  const margin = marginWords(costs?.breakEvenOn ?? null, day);
  switch (on.kind) {
    case 'before':
      return stripText.before(day, today);
    case 'sold':
      return stripText.sold(day, today);
    case 'today':
      return `${stripText.today(held.now.standing, held.now.what, day)}${margin}`;
    case 'future':
      return `${futureWords(shown, day)}${margin}`;
    case 'held':
      return `${stripText.held(on.stretch.cause, on.stretch.what, day, on.nth, on.stretch.days, today)}${margin}`;
  }
}
