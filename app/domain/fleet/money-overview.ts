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
import { type FleetBudget, fleetBudgets } from './fleet-budgets.ts';
import type { Shop } from './shop.ts';
import { type SoldMargin, soldMargin } from './sold-margin.ts';
import { type StockMeasures, stockMeasures } from './stock-measures.ts';

export type VehicleName = { readonly id: Identifier; readonly stockNumber: string; readonly title: string };

export type MoneyOverview = {
  readonly today: Day;
  readonly open: number;
  readonly tiedUpCents: Cents;
  /** On unsold vehicles, and on sold ones whose lender has not been paid. */
  readonly owedToLendersCents: Cents;
  readonly owedOnSold: { readonly vehicles: number; readonly cents: Cents };
  readonly nextDayCents: Cents;
  /** From today through `dueThrough` if nothing more is sold before, and pay-offs that are overdue. */
  readonly due: readonly CashDay[];
  readonly dueThrough: Day;
  /** What the figures of today are made of, the most tied up first. */
  readonly openVehicles: readonly (VehicleName & {
    readonly heldDays: number;
    readonly tiedUpCents: Cents;
    readonly owedCents: Cents;
    readonly nextDayCents: Cents;
  })[];
  /** Of open vehicles. */
  readonly budgets: readonly FleetBudget[];
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
  /** Sold in those days, the latest first. */
  readonly sold: readonly (VehicleName & SoldMargin & { readonly soldOn: Day; readonly heldDays: number })[];
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

/** What Money shows, in cents and days. */
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
  const owed = vehicles.flatMap(({ vehicle, reckoning }) => {
    const { payoff } = reckoning.costs;
    return payoff === null || vehicle.sale === null
      ? []
      : [{ ...payoff, vehicleId: vehicle.id, soldOn: vehicle.sale.soldOn }];
  });
  const owedOnSoldCents = sumCents(owed.map(({ cents }) => cents));
  const due = cashCalendar(funded, owed, { from: today, through: dueThrough });
  const tallies = daysByCause(
    vehicles.map(({ vehicle, reckoning: { held, costs } }) => ({
      boughtOn: vehicle.purchase.boughtOn,
      heldDays: held.heldDays,
      byCause: held.byCause,
      holdingCents: costs.holdingCents,
    })),
  );
  const sold = vehicles.flatMap(({ vehicle, reckoning: { held, costs } }) => {
    const { sale } = vehicle;
    if (sale === null || sale.soldOn <= from || sale.soldOn > today) return [];
    const margin = soldMargin(vehicle, costs);
    return margin === null ? [] : [{ ...nameOf(vehicle), ...margin, soldOn: sale.soldOn, heldDays: held.heldDays }];
  });
  const weighed = open.map(({ vehicle, prospect }) => ({ vehicle, weighed: prospect?.weighed ?? null }));
  const letGo = weighed.flatMap(({ vehicle, weighed: outcome }) =>
    outcome?.ok && outcome.value.verdict === 'let-go'
      ? [{ ...nameOf(vehicle), betterByCents: -outcome.value.advantageCents }]
      : [],
  );
  const budgets = fleetBudgets(
    open.map(({ vehicle, reckoning }) => ({ vehicleId: vehicle.id, budgets: reckoning.costs.budgets })),
  );
  const named = new Set([
    ...due.flatMap(({ payments }) => payments.map(({ vehicleId }) => vehicleId)),
    ...budgets.flatMap(({ over }) => over.map(({ vehicleId }) => vehicleId)),
  ]);
  return {
    today,
    open: open.length,
    tiedUpCents: sumCents(aged.map(({ tiedUpCents }) => tiedUpCents)),
    owedToLendersCents: sumCents([
      owedOnSoldCents,
      ...open.map(({ reckoning }) => reckoning.costs.fundingBalanceCents ?? 0),
    ]),
    owedOnSold: { vehicles: owed.length, cents: owedOnSoldCents },
    nextDayCents: sumCents(open.map(({ reckoning }) => reckoning.costs.nextDayCents)),
    due,
    dueThrough,
    openVehicles: open
      .map(({ vehicle, reckoning: { held, costs } }) => ({
        ...nameOf(vehicle),
        heldDays: held.heldDays,
        tiedUpCents: costs.spentCents,
        owedCents: costs.fundingBalanceCents ?? 0,
        nextDayCents: costs.nextDayCents,
      }))
      .sort((a, b) => b.tiedUpCents - a.tiedUpCents),
    budgets,
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
    names: vehicles.filter(({ vehicle }) => named.has(vehicle.id)).map(({ vehicle }) => nameOf(vehicle)),
    slowest,
  };
}
