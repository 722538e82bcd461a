// The first page of a story: what was bought, from whom, for how much, and what it should fetch.
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
  readonly trade: number | null;
  readonly floor: number | null;
};

const cents = (amount: number) => amount * 100;
const centsOrNull = (amount: number | null) => (amount === null ? null : cents(amount));

/** What an auction sold for 12,000 and more is bought on the invented lender's plan, the rest with own money. */
function isFunded({ source, price }: Beginning): boolean {
  return price >= 12_000 && (source === sources.auction || source === sources.fleetAuction);
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
      budgetCents: centsOrNull(beginning.budget),
      tradeValueCents: centsOrNull(beginning.trade),
      marginFloorCents: centsOrNull(beginning.floor),
    },
  };
}
