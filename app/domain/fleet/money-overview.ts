// The money of the whole fleet at once: tied up, due, aged, lost to waiting, earned against plan, and what should be let go. Pure.
import { type CashDay, cashCalendar } from '../money/cash-calendar.ts';
import { fundingOf } from '../money/vehicle-holding.ts';
import type { Prospect } from '../money/weigh-vehicle.ts';
import { type Cents, sumCents } from '../shared/cents.ts';
import { addDays, type Day } from '../shared/day.ts';
import type { Identifier } from '../shared/identifier.ts';
import type { GroupSummary } from '../time/turnaround.ts';
import { vehicleTitle } from '../vehicle/identity.ts';
import type { VehicleReckoning } from '../vehicle/reckon.ts';
import type { Vehicle } from '../vehicle/vehicle.ts';
import { type AgedVehicle, ageingOf } from './ageing.ts';
import { type CauseTally, type CauseTallyOfMonth, daysByCause } from './days-by-cause.ts';
import type { Shop } from './shop.ts';
import { type StockMeasures, stockMeasures } from './stock-measures.ts';

export type VehicleName = { readonly id: Identifier; readonly stockNumber: string; readonly title: string };

export type MoneyOverview = {
  readonly today: Day;
  readonly open: number;
  readonly tiedUpCents: Cents;
  readonly owedToLendersCents: Cents;
  readonly nextDayCents: Cents;
  /** Payments on the principal from today through `dueThrough`, if nothing is sold before. */
  readonly due: readonly CashDay[];
  readonly dueThrough: Day;
  readonly ageing: readonly {
    readonly fromDays: number;
    readonly toDays: number | null;
    readonly vehicles: number;
    readonly tiedUpCents: Cents;
  }[];
  readonly months: readonly CauseTallyOfMonth[];
  readonly all: CauseTally;
  /** Of the last `measures.overDays` days. */
  readonly measures: StockMeasures;
  /** Sold in those days, the latest first. `plannedCents`: the margin at the asking price with the costs as they came; null without one. */
  readonly sold: readonly (VehicleName & {
    readonly soldOn: Day;
    readonly madeCents: Cents;
    readonly plannedCents: Cents | null;
    readonly heldDays: number;
  })[];
  /** Letting go is better by this much, the clearest first. */
  readonly letGo: readonly (VehicleName & { readonly betterByCents: Cents })[];
  /** Open vehicles that cannot be weighed, for want of an input. */
  readonly notWeighed: number;
  readonly names: readonly VehicleName[];
  readonly slowest: readonly GroupSummary[];
};

export type OverviewVehicle = {
  readonly vehicle: Vehicle;
  readonly reckoning: VehicleReckoning;
  /** Null for a sold one. */
  readonly prospect: Prospect | null;
};

const measuredDays = 90;
const dueDays = 60;

function nameOf({ id, identity }: Vehicle): VehicleName {
  return { id, stockNumber: identity.stockNumber, title: vehicleTitle(identity) };
}

/**
 * What Money shows, in cents and days. Margin planned is what the target left: asking price less purchase, fees, transport and the
 * reconditioning budget; null where either was not set ("common practice, no source").
 */
export function moneyOverview(
  vehicles: readonly OverviewVehicle[],
  shop: Shop,
  { today, slowest }: { readonly today: Day; readonly slowest: readonly GroupSummary[] },
): MoneyOverview {
  const open = vehicles.filter(({ vehicle }) => vehicle.sale === null);
  const from = addDays(today, -measuredDays);
  const aged = open.map(
    ({ vehicle, reckoning: { held, costs } }): AgedVehicle => ({
      id: vehicle.id,
      heldDays: held.heldDays,
      tiedUpCents: costs.spentCents,
    }),
  );
  const funded = open.flatMap(({ vehicle }) => {
    const funding = fundingOf(vehicle, shop.fundingPlans);
    return funding === null ? [] : [{ vehicleId: vehicle.id, ...funding }];
  });
  const dueThrough = addDays(today, dueDays);
  const due = cashCalendar(funded, { from: today, through: dueThrough });
  const tallies = daysByCause(
    vehicles.map(({ vehicle, reckoning: { held, costs } }) => ({
      boughtOn: vehicle.purchase.boughtOn,
      heldDays: held.heldDays,
      byCause: held.byCause,
      holdingCents: costs.holdingCents,
    })),
  );
  const sold = vehicles.flatMap(({ vehicle, reckoning: { held, costs } }) => {
    const { sale, targets } = vehicle;
    if (sale === null || sale.soldOn <= from || sale.soldOn > today) return [];
    const { askingCents, budgetCents } = targets;
    const isPlanned = askingCents !== null && budgetCents !== null;
    const plannedCents = isPlanned ? askingCents - costs.acquisitionCents - budgetCents : null;
    return [
      {
        ...nameOf(vehicle),
        soldOn: sale.soldOn,
        madeCents: costs.marginExpectedCents ?? 0,
        plannedCents,
        heldDays: held.heldDays,
      },
    ];
  });
  const weighed = open.map(({ vehicle, prospect }) => ({ vehicle, weighed: prospect?.weighed ?? null }));
  const letGo = weighed.flatMap(({ vehicle, weighed: outcome }) =>
    outcome?.ok && outcome.value.verdict === 'let-go'
      ? [{ ...nameOf(vehicle), betterByCents: -outcome.value.advantageCents }]
      : [],
  );
  const named = new Set(due.flatMap(({ payments }) => payments.map(({ vehicleId }) => vehicleId)));
  return {
    today,
    open: open.length,
    tiedUpCents: sumCents(aged.map(({ tiedUpCents }) => tiedUpCents)),
    owedToLendersCents: sumCents(open.map(({ reckoning }) => reckoning.costs.fundingBalanceCents ?? 0)),
    nextDayCents: sumCents(open.map(({ reckoning }) => reckoning.costs.nextDayCents)),
    due,
    dueThrough,
    ageing: ageingOf(aged, shop.ageingBands).map((band) => ({ ...band, vehicles: band.vehicles.length })),
    months: tallies.months.slice(-12),
    all: tallies.all,
    measures: stockMeasures(
      vehicles.map(({ vehicle, reckoning }) => ({
        boughtOn: vehicle.purchase.boughtOn,
        costCents: reckoning.costs.acquisitionCents + reckoning.costs.reconditioningCents,
        sale: vehicle.sale,
      })),
      { from, to: today },
    ),
    sold: sold.sort((a, b) => (a.soldOn < b.soldOn ? 1 : -1)),
    letGo: letGo.sort((a, b) => b.betterByCents - a.betterByCents),
    notWeighed: weighed.filter(({ weighed: outcome }) => outcome !== null && !outcome.ok).length,
    names: open.filter(({ vehicle }) => named.has(vehicle.id)).map(({ vehicle }) => nameOf(vehicle)),
    slowest,
  };
}
