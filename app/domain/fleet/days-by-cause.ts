// Where the days of many vehicles went, by the month in which they were bought, and what the idle ones cost.
import { type Cents, roundToCents, sumCents } from '../shared/cents.ts';
import type { Day } from '../shared/day.ts';
import type { Cause } from '../time/cause.ts';

/** What time/held-days.ts and money/costs.ts say of one vehicle. */
export type HeldVehicle = {
  readonly boughtOn: Day;
  readonly heldDays: number;
  readonly byCause: Readonly<Partial<Record<Cause, number>>>;
  /** Interest and lot cost of all its days together. */
  readonly holdingCents: Cents;
};

export type CauseTally = {
  readonly vehicles: number;
  readonly heldDays: number;
  readonly byCause: Readonly<Partial<Record<Cause, number>>>;
  readonly idleDays: number;
  /** Of the holding cost, the part that fell on idle days: what could have been saved. */
  readonly idleCents: Cents;
};

export type CauseTallyOfMonth = CauseTally & {
  /** 'YYYY-MM' of the purchase. */
  readonly month: string;
};

/** Each day of a vehicle costs the same share of its holding; rounded once for each vehicle. */
function idleCentsOf({ heldDays, byCause, holdingCents }: HeldVehicle): Cents {
  return heldDays === 0 ? 0 : roundToCents(BigInt(holdingCents) * BigInt(byCause.idle ?? 0), BigInt(heldDays));
}

function tally(vehicles: readonly HeldVehicle[]): CauseTally {
  const byCause: Partial<Record<Cause, number>> = {};
  for (const vehicle of vehicles)
    for (const [cause, days] of Object.entries(vehicle.byCause) as [Cause, number][])
      byCause[cause] = (byCause[cause] ?? 0) + days;
  return {
    vehicles: vehicles.length,
    heldDays: vehicles.reduce((sum, { heldDays }) => sum + heldDays, 0),
    byCause,
    idleDays: byCause.idle ?? 0,
    idleCents: sumCents(vehicles.map(idleCentsOf)),
  };
}

/**
 * Days by cause for the fleet and for each month of purchase, earliest first; months without a purchase are left out. The causes add up to
 * the days held. By month of purchase, so that a vehicle's days are never split between two rows ("common practice, no source").
 */
export function daysByCause(vehicles: readonly HeldVehicle[]): {
  readonly months: readonly CauseTallyOfMonth[];
  readonly all: CauseTally;
} {
  const byMonth = new Map<string, HeldVehicle[]>();
  for (const vehicle of vehicles) {
    const month = vehicle.boughtOn.slice(0, 7);
    byMonth.set(month, [...(byMonth.get(month) ?? []), vehicle]);
  }
  const months = [...byMonth]
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([month, ofMonth]) => ({ month, ...tally(ofMonth) }));
  return { months, all: tally(vehicles) };
}
