// Keeps forecasts and the turnaround history they rest on. One change forecasts one vehicle; everything else stays until the day, the
// settings or the past itself changes.
import type { Shop } from '../domain/fleet/shop.ts';
import { judgeReadiness } from '../domain/readiness/gates.ts';
import { type Day, daysBetween } from '../domain/shared/day.ts';
import { type Forecast, forecastReady } from '../domain/time/forecast.ts';
import { type OpenPlan, planOpenWork } from '../domain/time/open-plan.ts';
import { openWork } from '../domain/time/open-work.ts';
import { seededRandom, seedOf } from '../domain/time/seeded-random.ts';
import { medianOf, type TurnaroundHistory, turnaroundHistory } from '../domain/time/turnaround.ts';
import { type TurnaroundCase, turnaroundCases } from '../domain/time/turnaround-cases.ts';
import type { Vehicle } from '../domain/vehicle/vehicle.ts';

type Terms = Pick<Shop, 'checklist' | 'calendar' | 'turnaround'> & { readonly codeKinds?: Shop['codeKinds'] };
type Past = { readonly cases: readonly TurnaroundCase[]; readonly daysToSell: number | null };
export type OwnDaysToSell = { readonly days: number; readonly cases: number };

function isSame(a: Terms, b: Terms): boolean {
  const isSameTime = a.calendar === b.calendar && a.turnaround === b.turnaround;
  return isSameTime && a.checklist === b.checklist && a.codeKinds === b.codeKinds;
}

export class ForecastCache {
  readonly #pasts = new WeakMap<Vehicle, Past & { readonly terms: Terms }>();
  readonly #forecasts = new WeakMap<
    Vehicle,
    { readonly forecast: Forecast | null; readonly today: Day; readonly terms: Terms }
  >();
  #history: {
    readonly of: TurnaroundHistory;
    readonly sells: OwnDaysToSell | null;
    readonly terms: Terms;
    readonly today: Day;
    readonly records: Map<string, Vehicle>;
  } | null = null;
  readonly #vehicles: () => Iterable<Vehicle>;

  /** `vehicles`: every record of the fleet, sold ones included. Called only when the history is made anew. */
  constructor(vehicles: () => Iterable<Vehicle>) {
    this.#vehicles = vehicles;
  }

  #pastOf(vehicle: Vehicle, terms: Terms): Past {
    const kept = this.#pasts.get(vehicle);
    if (kept && isSame(kept.terms, terms)) return kept;
    const { readyOn } = judgeReadiness(vehicle, terms.checklist);
    const soldOn = vehicle.sale?.soldOn ?? null;
    const past = {
      cases: turnaroundCases(vehicle, terms.checklist, terms.calendar),
      daysToSell: soldOn !== null && readyOn !== null && readyOn <= soldOn ? daysBetween(readyOn, soldOn) : null,
      terms,
    };
    this.#pasts.set(vehicle, past);
    return past;
  }

  #historyOf(terms: Terms, today: Day) {
    const kept = this.#history;
    if (kept && kept.today === today && isSame(kept.terms, terms)) return kept;
    const records = new Map([...this.#vehicles()].map((vehicle) => [vehicle.id, vehicle]));
    const pasts = [...records.values()].map((vehicle) => this.#pastOf(vehicle, terms));
    const sells = pasts.flatMap(({ daysToSell }) => daysToSell ?? []).sort((a, b) => a - b);
    const fresh = {
      of: turnaroundHistory(pasts.flatMap(({ cases }) => cases)),
      sells: sells.length === 0 ? null : { days: medianOf(sells), cases: sells.length },
      terms,
      today,
      records,
    };
    this.#history = fresh;
    return fresh;
  }

  /** Takes one vehicle's own past out beforehand, so that making the history is short. */
  warm(vehicle: Vehicle, shop: Terms): void {
    this.#pastOf(vehicle, shop);
  }

  history(shop: Terms, today: Day): TurnaroundHistory {
    return this.#historyOf(shop, today).of;
  }

  /** From ready to sold: the middle one of the shop's own sales; null before the first. */
  daysToSell(shop: Terms, today: Day): OwnDaysToSell | null {
    return this.#historyOf(shop, today).sells;
  }

  /** Another fleet is open. */
  forget(): void {
    this.#history = null;
  }

  /**
   * A record was replaced. A forecast of today asks only cases that ended before today, so work finished today leaves the history as it
   * is; a correction of the past makes it anew the next time it is asked.
   */
  noteChange(id: string, now: Vehicle | null): void {
    const kept = this.#history;
    const before = kept?.records.get(id) ?? null;
    if (!kept || before === now) return;
    const pastOf = (vehicle: Vehicle | null) => {
      if (vehicle === null) return '';
      const { cases, daysToSell } = this.#pastOf(vehicle, kept.terms);
      return JSON.stringify([cases.filter(({ endedOn }) => endedOn < kept.today), daysToSell]);
    };
    if (pastOf(before) !== pastOf(now)) this.#history = null;
    else if (now !== null) kept.records.set(id, now);
  }

  /** The forecast if it is known already; undefined when it was not made yet. */
  known(vehicle: Vehicle, shop: Terms, today: Day): Forecast | null | undefined {
    if (vehicle.sale !== null) return null;
    const kept = this.#forecasts.get(vehicle);
    return kept && kept.today === today && isSame(kept.terms, shop) ? kept.forecast : undefined;
  }

  forecast(vehicle: Vehicle, shop: Terms, today: Day): Forecast | null {
    const known = this.known(vehicle, shop, today);
    if (known !== undefined) return known;
    const forecast = this.forecastOf(vehicle, shop, today);
    this.#forecasts.set(vehicle, { forecast, today, terms: shop });
    return forecast;
  }

  #openOf(vehicle: Vehicle, shop: Terms, today: Day) {
    const { checklist, calendar, turnaround: settings, codeKinds } = shop;
    const items = openWork(vehicle, checklist, { today, settings, calendar, codeKinds });
    return { items, context: { history: this.history(shop, today), settings, calendar, today } };
  }

  /** Without keeping it: for a record that may never be. The same vehicle always draws the same numbers. */
  forecastOf(vehicle: Vehicle, shop: Terms, today: Day): Forecast | null {
    const { items, context } = this.#openOf(vehicle, shop, today);
    return forecastReady(items, context, { random: seededRandom(seedOf(vehicle.id)) });
  }

  /** The open work of one vehicle as one course with its critical path, for whoever looks at it; null when sold or nothing is open. */
  openPlan(vehicle: Vehicle, shop: Terms, today: Day): OpenPlan | null {
    if (vehicle.sale !== null) return null;
    const { items, context } = this.#openOf(vehicle, shop, today);
    return planOpenWork(items, context);
  }
}
