// The first page of a story: what was bought, from whom, for how much, and what it should fetch.
import { type BudgetGroup, budgetGroups, type GroupBudgets, noGroupBudgets } from '../../domain/money/budget.ts';
import type { Day } from '../../domain/shared/day.ts';
import type { TakeIn } from '../../domain/vehicle/take-in.ts';
import { type ModelKey, models } from './makes-and-models.ts';
import { plans, sources } from './sample-shop.ts';
import { sampleVin } from './sample-vin.ts';

/** Amounts in whole dollars. */
export type Beginning = {
  readonly boughtOn: Day;
  readonly model: ModelKey;
  readonly year: number;
  readonly colour: string;
  readonly miles: number;
  readonly source: string;
  readonly price: number;
  readonly fees: number;
  readonly transport: number;
  readonly arrivesBy: Day | null;
  readonly paperBy: Day | null;
  readonly keys: number;
  /** Null: nobody has set a price yet. */
  readonly asking: number | null;
  readonly budget: number | null;
  /** Budgets of single cost groups, where the manager has split it. */
  readonly budgets?: Partial<Record<BudgetGroup, number>>;
  readonly trade: number | null;
  /** Price from which the lender's plan pays. */
  readonly fundedFrom?: number;
  readonly floor: number | null;
};

const cents = (amount: number) => amount * 100;
const centsOrNull = (amount: number | null) => (amount === null ? null : cents(amount));

function byGroup(budgets: Partial<Record<BudgetGroup, number>>): GroupBudgets {
  const all = { ...noGroupBudgets };
  for (const group of budgetGroups) all[group] = centsOrNull(budgets[group] ?? null);
  return all;
}

/** What an auction sold for this much and more is bought on the invented lender's plan, the rest with own money. */
export function isFunded({ source, price, fundedFrom = 12_000 }: Beginning): boolean {
  return price >= fundedFrom && (source === sources.auction || source === sources.fleetAuction);
}

export function takeInOf(stockNumber: string, serial: number, beginning: Beginning): TakeIn {
  const model = models[beginning.model];
  return {
    identity: {
      stockNumber,
      vin: sampleVin(model, beginning.year, serial),
      vinReason: '',
      modelYear: beginning.year,
      make: model.make,
      model: model.model,
      body: model.body,
      colour: beginning.colour,
      drive: model.drive,
      odometer: { reading: beginning.miles, unit: 'mi' },
      location: '',
      keyTag: '',
    },
    purchase: {
      boughtOn: beginning.boughtOn,
      source: beginning.source,
      priceCents: cents(beginning.price),
      feesCents: cents(beginning.fees),
      transportCents: cents(beginning.transport),
      paperKind: 'Title',
      paperExpectedOn: beginning.paperBy,
      paperReceivedOn: null,
      keysReceived: beginning.keys,
      fundingPlanId: isFunded(beginning) ? plans.yard : null,
    },
    arrival: { expectedOn: beginning.arrivesBy, arrivedOn: null },
    targets: {
      askingCents: centsOrNull(beginning.asking),
      pricedOn: null,
      budgetCents: centsOrNull(beginning.budget),
      budgetByGroup: byGroup(beginning.budgets ?? {}),
      tradeValueCents: centsOrNull(beginning.trade),
      marginFloorCents: centsOrNull(beginning.floor),
    },
  };
}
