// What a vehicle has cost, what is committed, what is still to come, and what is left of its margin. The rules of each part are elsewhere.
import type { NamedKinds } from '../codes/code-name.ts';
import type { Person, SellingTerms } from '../fleet/shop.ts';
import { type Cents, sumCents } from '../shared/cents.ts';
import { addDays, type Day, laterDay } from '../shared/day.ts';
import type { WorkingCalendar } from '../time/working-calendar.ts';
import type { Vehicle } from '../vehicle/vehicle.ts';
import { type BudgetRow, budgetGroups, budgetRows } from './budget.ts';
import {
  type CostGroup,
  type CostLine,
  codeLines,
  labourLines,
  missingAmounts,
  partLines,
  purchaseLines,
  subletLines,
} from './cost-lines.ts';
import { type CurtailmentPayment, curtailmentPayments } from './curtailments.ts';
import { marginTax, type SaleTax } from './margin-tax.ts';
import { lowerOfCostAndRealisable, stockCostCents } from './net-realisable.ts';
import { openPayoff, type Payoff } from './payoff.ts';
import { furtherValueLoss, type ValueLossCurve } from './value-loss.ts';
import {
  furtherVehicleHolding,
  type HoldingTerms,
  heldDaysPaidFor,
  lastDayNotNegative,
  type VehicleHolding,
  vehicleHolding,
} from './vehicle-holding.ts';

export type Costs = {
  readonly lines: readonly CostLine[];
  readonly spentCents: Cents;
  readonly committedCents: Cents;
  readonly toComeCents: Cents;
  /** Purchase price, fees and transport. */
  readonly acquisitionCents: Cents;
  /** Spent on parts, cores, labour, sublet, codes and other. */
  readonly reconditioningCents: Cents;
  readonly holdingCents: Cents;
  /** What one more day costs; 0 once it is sold. */
  readonly nextDayCents: Cents;
  /** Asking (or sale) price less acquisition; null without a price. */
  readonly startingMarginCents: Cents | null;
  /** Tax on the margin at the asking (or sale) price; 0 where the shop pays none, null without a price. */
  readonly taxCents: Cents | null;
  /** Price less tax and everything spent. */
  readonly marginLeftCents: Cents | null;
  /** Price less tax and everything spent, committed and still to come. */
  readonly marginExpectedCents: Cents | null;
  /** Spent on reconditioning and holding, in hundredths of a per cent of the starting margin; null when there is no margin. */
  readonly marginUsedBasisPoints: number | null;
  /** The last day on which the expected margin is not negative if nothing but holding, and value lost with age, is added; null when not foreseeable. */
  readonly breakEvenOn: Day | null;
  /** By cost group, the whole as the last one. */
  readonly budgets: readonly BudgetRow[];
  /** By how much the cost is above what it can be expected to bring, see net-realisable.ts; 0 when it is not, null when not known or sold. */
  readonly writeDownCents: Cents | null;
  /** Owed to the lender at the end of today while it is unsold; null without a plan. */
  readonly fundingBalanceCents: Cents | null;
  /** Still owed to the lender of a sold one. */
  readonly payoff: Payoff | null;
  readonly nextPayment: CurtailmentPayment | null;
  /** All payments on the principal from the draw to the sale, or to half a year from today. */
  readonly payments: readonly CurtailmentPayment[];
  /** Labour, sublet work or parts without an amount: the reckoning cannot count them. */
  readonly missingAmounts: readonly string[];
  /** The same, and terms that could not be applied. */
  readonly missing: readonly string[];
};

/** Days from today up to which payments on the principal are named. */
const paymentsAhead = 183;

const reconditioning: readonly CostGroup[] = budgetGroups;

function total(lines: readonly CostLine[], keep: (line: CostLine) => boolean): Cents {
  return sumCents(lines.filter(keep).map((line) => line.cents));
}

/** What the money of a vehicle is reckoned by. */
export type CostShop = HoldingTerms & {
  readonly codeKinds?: NamedKinds;
  readonly people: readonly Person[];
  readonly saleTax: SaleTax;
  readonly selling: Pick<SellingTerms, 'retailCents'>;
  readonly valueLoss: ValueLossCurve;
  readonly calendar: WorkingCalendar;
};

function holdingLines({ funding, fundingCost, ownInterestCents, overheadCents }: VehicleHolding): CostLine[] {
  const spent = (group: CostGroup, what: string, cents: Cents): CostLine => ({ group, state: 'spent', what, cents });
  const ofPlan =
    funding === null || fundingCost === null
      ? []
      : [
          spent('interest', `Interest under ${funding.plan.name}`, fundingCost.interestCents),
          spent('interest', `Fee of ${funding.plan.name}`, fundingCost.drawFeeCents),
        ];
  const own = funding === null ? 'Interest on the purchase price' : 'Interest on own money in the purchase price';
  return [...ofPlan, spent('interest', own, ownInterestCents), spent('overhead', 'Lot cost by the day', overheadCents)];
}

function missingTerms({ purchase }: Vehicle, { funding, fundingCost }: VehicleHolding): readonly string[] {
  if (funding === null)
    return purchase.fundingPlanId === null
      ? []
      : ['its funding plan is no longer in the settings, own money is assumed'];
  return fundingCost?.missing.length ? [`a trade value, at which ${funding.plan.name} stops its curtailments`] : [];
}

/**
 * Reckons the money of one vehicle as it stands after `heldDays`. All amounts in cents; a lost margin is negative. Margins are after the
 * tax on the margin where the shop pays it. How margin used is defined: own definition ("common practice, no source").
 */
export function reckonCosts(
  vehicle: Vehicle,
  shop: CostShop,
  { today, heldDays }: { readonly today: Day; readonly heldDays: number },
): Costs {
  const { purchase, targets, sale } = vehicle;
  const withoutAmount = missingAmounts(vehicle);
  const holding = vehicleHolding(vehicle, shop, { until: sale?.paidOffOn ?? sale?.soldOn ?? today, heldDays });
  const lines: CostLine[] = [
    ...purchaseLines(vehicle),
    ...partLines(vehicle),
    ...labourLines(vehicle, shop.rates, shop.people),
    ...subletLines(vehicle),
    ...codeLines(vehicle, shop.codeKinds),
    ...vehicle.otherCosts.map(
      (cost): CostLine => ({ group: 'other', state: 'spent', what: cost.what, cents: cost.amountCents }),
    ),
    ...holdingLines(holding),
  ].filter((line) => line.cents !== 0);
  const spentCents = total(lines, (line) => line.state === 'spent');
  const committedCents = total(lines, (line) => line.state === 'committed');
  const toComeCents = total(lines, (line) => line.state === 'to-come');
  const acquisitionCents = sumCents([purchase.priceCents, purchase.feesCents, purchase.transportCents]);
  const reconditioningCents = total(lines, (line) => line.state === 'spent' && reconditioning.includes(line.group));
  const priceCents = sale?.priceCents ?? targets.askingCents;
  const taxAt = (sellingCents: Cents) =>
    marginTax(shop.saleTax, { sellingCents, purchaseCents: purchase.priceCents }).taxCents;
  const taxCents = priceCents === null ? null : taxAt(priceCents);
  const left = priceCents === null || taxCents === null ? null : priceCents - taxCents;
  const startingMarginCents = priceCents === null ? null : priceCents - acquisitionCents;
  const marginExpectedCents = left === null ? null : left - spentCents - committedCents - toComeCents;
  const further = furtherVehicleHolding(vehicle, shop, { today, heldDays });
  const lost = priceCents === null ? () => 0 : furtherValueLoss(shop.valueLoss, priceCents, heldDays);
  const marginAfter = (days: number): Cents => {
    if (priceCents === null || marginExpectedCents === null || taxCents === null) return 0;
    const lostCents = lost(days);
    return marginExpectedCents - further(days) - lostCents + taxCents - taxAt(priceCents - lostCents);
  };
  const breakEven = (): Day | null => {
    if (marginExpectedCents === null || sale !== null) return null;
    if (marginExpectedCents >= 0) {
      const days = lastDayNotNegative(marginAfter);
      return days === null ? null : addDays(today, days);
    }
    const beforeHolding = marginExpectedCents + holding.totalCents;
    if (beforeHolding < 0) return purchase.boughtOn;
    const paidFor = heldDaysPaidFor(beforeHolding, vehicle, shop, { today, heldDays });
    return laterDay(purchase.boughtOn, addDays(today, paidFor - heldDays));
  };
  const realisable =
    targets.askingCents === null || sale !== null
      ? null
      : lowerOfCostAndRealisable({
          costCents: stockCostCents({ acquisitionCents, reconditioningCents }),
          expectedPriceCents: targets.askingCents,
          toCompleteCents: committedCents + toComeCents,
          toSellCents: shop.selling.retailCents ?? 0,
        });
  return {
    lines,
    spentCents,
    committedCents,
    toComeCents,
    acquisitionCents,
    reconditioningCents,
    holdingCents: holding.totalCents,
    nextDayCents: sale === null ? further(1) : 0,
    startingMarginCents,
    taxCents,
    marginLeftCents: left === null ? null : left - spentCents,
    marginExpectedCents,
    marginUsedBasisPoints:
      startingMarginCents === null || startingMarginCents <= 0
        ? null
        : Math.round(((reconditioningCents + holding.totalCents) * 10_000) / startingMarginCents),
    breakEvenOn: breakEven(),
    budgets: budgetRows(targets, lines),
    writeDownCents: realisable?.writeDownCents ?? null,
    fundingBalanceCents: sale === null ? (holding.fundingCost?.balanceCents ?? null) : null,
    payoff: openPayoff(vehicle, shop),
    nextPayment: sale === null ? (holding.fundingCost?.nextDue ?? null) : null,
    payments:
      holding.funding === null
        ? []
        : curtailmentPayments(
            holding.funding.plan,
            holding.funding.draw,
            sale?.soldOn ?? addDays(today, paymentsAhead),
          ),
    missingAmounts: withoutAmount,
    missing: [...withoutAmount, ...missingTerms(vehicle, holding)],
  };
}
