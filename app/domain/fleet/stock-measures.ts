// The usual measures of a stock of vehicles. Plain figures in, unrounded ratios out; null where there is nothing to divide by.
import type { Cents } from '../shared/cents.ts';
import { type Day, daysBetween } from '../shared/day.ts';

/**
 * How many days the stock lasts at the pace of the last `overDays` days: units in stock ÷ (units sold ÷ days). The pace is by the day:
 * dividing by a month's sales gives months, which has been printed as days. Null when nothing was sold. Common formula, no single source.
 */
export function daysSupply(inStock: number, sold: number, overDays: number): number | null {
  return sold === 0 || overDays <= 0 ? null : (inStock * overDays) / sold;
}

/** Half of the sum of the stock at cost at the beginning and the end; may hold half a cent. */
export function averageInventoryCents(beginCents: Cents, endCents: Cents): number {
  return (beginCents + endCents) / 2;
}

/** How often a year the stock is turned over: yearly cost of sales ÷ average stock, both at cost, never at selling prices. */
export function inventoryTurn(yearlyCostOfSalesCents: number, averageCents: number): number | null {
  return averageCents <= 0 ? null : yearlyCostOfSalesCents / averageCents;
}

/** Days that a turn takes: 365 ÷ turn. */
export function daysToSell(turn: number | null): number | null {
  return turn === null || turn <= 0 ? null : 365 / turn;
}

/** Gross return on inventory investment: gross profit ÷ average stock at cost. 3.25 is 3.25 earned for each 1 in stock. */
export function grossReturn(salesCents: number, costOfSalesCents: number, averageCents: number): number | null {
  return averageCents <= 0 ? null : (salesCents - costOfSalesCents) / averageCents;
}

/** A vehicle as far as stock is measured: everything spent on it as its cost, the price if sold. */
export type StockVehicle = {
  readonly boughtOn: Day;
  readonly costCents: Cents;
  readonly sale: { readonly soldOn: Day; readonly priceCents: Cents } | null;
};

export type StockMeasures = {
  readonly inStock: number;
  readonly sold: number;
  readonly overDays: number;
  readonly averageInventoryCents: number;
  readonly daysSupply: number | null;
  readonly turn: number | null;
  readonly daysToSell: number | null;
  /** Over the period, not a year. */
  readonly grossReturn: number | null;
};

function isInStock({ boughtOn, sale }: StockVehicle, on: Day): boolean {
  return boughtOn <= on && (sale === null || sale.soldOn > on);
}

/**
 * All measures from the end of `from` to the end of `to`: sales after `from` up to and including `to`, stock at the end of both days,
 * at what each vehicle has cost by now (what it had cost on an earlier day is not reckoned back). Turn is brought to a year of 365 days.
 * @throws when `to` is not after `from`.
 */
export function stockMeasures(
  vehicles: readonly StockVehicle[],
  { from, to }: { readonly from: Day; readonly to: Day },
): StockMeasures {
  const overDays = daysBetween(from, to);
  if (overDays <= 0) throw new Error('Stock is measured over at least one day.');
  const stockCents = (on: Day) =>
    vehicles.filter((vehicle) => isInStock(vehicle, on)).reduce((sum, { costCents }) => sum + costCents, 0);
  const sales = vehicles.flatMap(({ sale, costCents }) =>
    sale !== null && sale.soldOn > from && sale.soldOn <= to ? [{ priceCents: sale.priceCents, costCents }] : [],
  );
  const inStock = vehicles.filter((vehicle) => isInStock(vehicle, to)).length;
  const averageCents = averageInventoryCents(stockCents(from), stockCents(to));
  const costOfSalesCents = sales.reduce((sum, { costCents }) => sum + costCents, 0);
  const salesCents = sales.reduce((sum, { priceCents }) => sum + priceCents, 0);
  const turn = inventoryTurn((costOfSalesCents * 365) / overDays, averageCents);
  return {
    inStock,
    sold: sales.length,
    overDays,
    averageInventoryCents: averageCents,
    daysSupply: daysSupply(inStock, sales.length, overDays),
    turn,
    daysToSell: daysToSell(turn),
    grossReturn: grossReturn(salesCents, costOfSalesCents, averageCents),
  };
}
