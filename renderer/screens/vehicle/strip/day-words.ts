// One day of the strip in a sentence, for the line under it and for a screen reader. Pure.
import type { VehicleView } from '../../../../app/contract/views.ts';
import type { NamedKinds } from '../../../../app/domain/codes/code-name.ts';
import { sumCents } from '../../../../app/domain/shared/cents.ts';
import type { Day } from '../../../../app/domain/shared/day.ts';
import { stripText } from '../../../text/vehicle.ts';
import { dayOnStrip } from './day-on-strip.ts';
import { waitOnDay } from './wait-on-day.ts';

type Shown = Pick<VehicleView, 'held' | 'today' | 'costs' | 'vehicle' | 'forecast'>;

function readyWords({ forecast }: Shown, day: Day): string {
  if (forecast === null || day < forecast.likelyOn) return '';
  if (day === forecast.likelyOn) return stripText.ready.likely;
  if (day === forecast.safeOn) return stripText.ready.safe;
  return day < forecast.safeOn ? stripText.ready.between : stripText.ready.beyond;
}

function futureWords({ held, today, forecast }: Shown, day: Day): string {
  const { standing, expectedOn } = held.now;
  const words = stripText.future(day, today);
  if (forecast !== null && day >= forecast.likelyOn) return words;
  if (expectedOn === null || day > expectedOn) return `${words}${stripText.futureOpen}`;
  return `${words}${day === expectedOn ? stripText.futureExpectedEnd(standing) : stripText.futureExpected(standing)}`;
}

function marginWords(breakEvenOn: Day | null, day: Day): string {
  if (breakEvenOn === null) return '';
  if (day === breakEvenOn) return stripText.lastDayOfMargin;
  return day > breakEvenOn ? stripText.marginUsedUp : '';
}

export function dayWords(shown: Shown, day: Day, kinds?: NamedKinds): string {
  const { held, today, vehicle, costs } = shown;
  const soldOn = vehicle.sale?.soldOn ?? null;
  const on = dayOnStrip(held, { boughtOn: vehicle.purchase.boughtOn, today, soldOn }, day);
  const margin = marginWords(costs?.breakEvenOn ?? null, day);
  const dueCents = sumCents((costs?.payments ?? []).filter(({ dueOn }) => dueOn === day).map(({ cents }) => cents));
  const due = dueCents === 0 ? '' : stripText.payment(dueCents);
  const waitWords = (what: string) => {
    const wait = waitOnDay(vehicle, what, day, kinds);
    return wait === null ? '' : stripText.wait(wait, today);
  };
  switch (on.kind) {
    case 'before':
      return stripText.before(day, today);
    case 'sold':
      return stripText.sold(day, today);
    case 'today':
      return `${stripText.today(held.now.standing, held.now.what, day)}${waitWords(held.now.what)}${due}${margin}`;
    case 'future':
      return `${futureWords(shown, day)}${readyWords(shown, day)}${due}${margin}`;
    case 'held':
      return `${stripText.held(on.stretch.cause, on.stretch.what, day, on.nth, on.stretch.days, today)}${waitWords(on.stretch.what)}${due}${margin}`;
  }
}
