// One vehicle's prospects from its reckoning and its forecast: when it will be sold, what is left then, and finish or let go.
import type { Shop } from '../fleet/shop.ts';
import type { Cents } from '../shared/cents.ts';
import { addDays, type Day, daysBetween, laterDay } from '../shared/day.ts';
import type { Result } from '../shared/result.ts';
import type { Vehicle } from '../vehicle/vehicle.ts';
import type { Costs } from './costs.ts';
import { type FinishOrLetGo, finishOrLetGo, type MissingInput } from './finish-or-let-go.ts';
import { marginTax } from './margin-tax.ts';
import { furtherValueLoss } from './value-loss.ts';
import { furtherVehicleHolding } from './vehicle-holding.ts';

export type Prospect = {
  /** Ready by this day in half of the forecast's runs, today when it is ready; null when nothing can be foreseen. */
  readonly readyOn: Day | null;
  /** From ready to sold, and how many of the shop's own sales that rests on (0: a setting); null when nobody knows. */
  readonly daysToSell: number | null;
  readonly daysToSellCases: number;
  readonly saleOn: Day | null;
  /** What is left if it is sold on that day at the asking price less the value lost until then; holding, selling cost and tax come off. */
  readonly marginAtSaleCents: Cents | null;
  readonly weighed: Result<FinishOrLetGo, readonly MissingInput[]>;
};

export type ProspectInputs = {
  readonly vehicle: Vehicle;
  readonly shop: Shop;
  readonly today: Day;
  readonly heldDays: number;
  readonly costs: Costs;
  readonly readyOn: Day | null;
  /** The middle one of the shop's own sales, for when no setting goes before it. */
  readonly ownDaysToSell: { readonly days: number; readonly cases: number } | null;
};

/**
 * All amounts in cents. Everything ordered or agreed is taken to be owed also when the vehicle is let go; nothing that is missing is
 * guessed. Own definition ("common practice, no source"). For an unsold vehicle.
 */
export function weighVehicle(inputs: ProspectInputs): Prospect {
  const { vehicle, shop, today, heldDays, costs, readyOn, ownDaysToSell } = inputs;
  const { askingCents, tradeValueCents } = vehicle.targets;
  const { selling, saleTax, valueLoss } = shop;
  const daysToSell = selling.daysToSell ?? ownDaysToSell?.days ?? null;
  const holding = furtherVehicleHolding(vehicle, shop, { today, heldDays });
  const lost =
    askingCents === null || valueLoss.length === 0 ? null : furtherValueLoss(valueLoss, askingCents, heldDays);
  const saleOn = readyOn === null || daysToSell === null ? null : addDays(laterDay(readyOn, today), daysToSell);
  const purchaseCents = vehicle.purchase.priceCents;
  const marginAt = (on: Day): Cents | null => {
    if (askingCents === null) return null;
    const days = daysBetween(today, on);
    const sellingCents = askingCents - (lost?.(days) ?? 0);
    const { taxCents } = marginTax(saleTax, { sellingCents, purchaseCents });
    const spent = costs.spentCents + costs.committedCents + costs.toComeCents;
    return sellingCents - taxCents - spent - holding(days) - (selling.retailCents ?? 0);
  };
  return {
    readyOn,
    daysToSell,
    daysToSellCases: selling.daysToSell === null ? (ownDaysToSell?.cases ?? 0) : 0,
    saleOn,
    marginAtSaleCents: saleOn === null ? null : marginAt(saleOn),
    weighed: finishOrLetGo({
      today,
      spentCents: costs.spentCents,
      purchaseCents,
      tax: saleTax,
      holding,
      valueLost: lost,
      finish: {
        askingCents,
        readyOn,
        daysToSell,
        committedCents: costs.committedCents,
        toComeCents: costs.toComeCents,
        withoutAmount: costs.missingAmounts,
        sellingCents: selling.retailCents,
      },
      letGo: {
        tradeCents: tradeValueCents,
        daysToGo: selling.daysToTrade,
        committedCents: costs.committedCents,
        sellingCents: selling.tradeCents,
      },
    }),
  };
}
