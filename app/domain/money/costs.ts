// What a vehicle has cost, what is committed, what is still to come, and what is left of its margin. The rules of each part are elsewhere.
import { isOpenRepair } from '../diagnosis/fault.ts';
import type { Person, Rates, SellingTerms } from '../fleet/shop.ts';
import { type Cents, roundToCents, sumCents } from '../shared/cents.ts';
import { addDays, type Day, laterDay } from '../shared/day.ts';
import { codeName } from '../sheets/sheet-words.ts';
import type { Vehicle } from '../vehicle/vehicle.ts';
import type { CurtailmentPayment } from './curtailments.ts';
import { marginTax, type SaleTax } from './margin-tax.ts';
import { lowerOfCostAndRealisable, stockCostCents } from './net-realisable.ts';
import { furtherValueLoss, type ValueLossCurve } from './value-loss.ts';
import {
  furtherVehicleHolding,
  type HoldingTerms,
  heldDaysPaidFor,
  lastDayNotNegative,
  type VehicleHolding,
  vehicleHolding,
} from './vehicle-holding.ts';

export type CostGroup =
  | 'purchase'
  | 'fees'
  | 'transport'
  | 'parts'
  | 'cores'
  | 'labour'
  | 'sublet'
  | 'codes'
  | 'other'
  | 'interest'
  | 'overhead';

/** 'spent': owed or paid. 'committed': ordered or agreed, not here. 'to-come': foreseen, nobody has committed to it. */
export type CostState = 'spent' | 'committed' | 'to-come';

export type CostLine = {
  readonly group: CostGroup;
  readonly state: CostState;
  readonly what: string;
  readonly cents: Cents;
};

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
  readonly budgetCents: Cents | null;
  /** Of the budget, after reconditioning spent, committed and to come. Negative: over budget. */
  readonly budgetLeftCents: Cents | null;
  /** By how much the cost is above what it can be expected to bring, see net-realisable.ts; 0 when it is not, null when not known or sold. */
  readonly writeDownCents: Cents | null;
  /** Owed to the lender at the end of today; null without a plan or once it is sold. */
  readonly fundingBalanceCents: Cents | null;
  readonly nextPayment: CurtailmentPayment | null;
  /** Labour, sublet work or parts without an amount, and terms that could not be applied. */
  readonly missing: readonly string[];
};

const reconditioning: readonly CostGroup[] = ['parts', 'cores', 'labour', 'sublet', 'codes', 'other'];

function purchaseLines({ purchase }: Vehicle): CostLine[] {
  return [
    { group: 'purchase', state: 'spent', what: 'Purchase price', cents: purchase.priceCents },
    { group: 'fees', state: 'spent', what: 'Fees', cents: purchase.feesCents },
    { group: 'transport', state: 'spent', what: 'Transport', cents: purchase.transportCents },
  ];
}

/** A part sent back costs nothing; a core charge is spent from the receipt until the old unit is returned. */
function partLines({ parts }: Vehicle): CostLine[] {
  return parts.flatMap((part): CostLine[] => {
    if (part.returnedOn !== null) return [];
    const state: CostState = part.receivedOn !== null ? 'spent' : part.orderedOn !== null ? 'committed' : 'to-come';
    const lines: CostLine[] = [];
    if (part.priceCents !== null)
      lines.push({ group: 'parts', state, what: part.what, cents: part.priceCents * part.quantity });
    if (part.coreChargeCents > 0 && part.coreReturnedOn === null)
      lines.push({
        group: 'cores',
        state,
        what: `Core charge: ${part.what}`,
        cents: part.coreChargeCents * part.quantity,
      });
    return lines;
  });
}

/** Minutes at an hourly rate, rounded to the nearest cent once for each entry. */
export function labourCents(minutes: number, centsPerHour: Cents): Cents {
  return roundToCents(BigInt(minutes) * BigInt(centsPerHour), 60n);
}

function labourLines(vehicle: Vehicle, rates: Rates, people: readonly Person[]): CostLine[] {
  const rateOf = (person: string) =>
    people.find((candidate) => candidate.id === person)?.labourCentsPerHour ?? rates.labourCentsPerHour;
  const booked = vehicle.labour.map(
    (labour): CostLine => ({
      group: 'labour',
      state: 'spent',
      what: labour.what,
      cents: labourCents(labour.minutes, rateOf(labour.person)),
    }),
  );
  const toCome = vehicle.faults.filter(isOpenRepair).flatMap((fault): CostLine[] => {
    const done = vehicle.labour
      .filter((labour) => labour.faultId === fault.id)
      .reduce((minutes, labour) => minutes + labour.minutes, 0);
    const left = (fault.decision?.estimateMinutes ?? 0) - done;
    if (left <= 0) return [];
    return [
      { group: 'labour', state: 'to-come', what: fault.what, cents: labourCents(left, rates.labourCentsPerHour) },
    ];
  });
  return [...booked, ...toCome];
}

function subletLines({ sublets }: Vehicle): CostLine[] {
  return sublets.flatMap((sublet): CostLine[] => {
    const cents = sublet.invoicedCents ?? sublet.quotedCents;
    if (cents === null) return [];
    const state: CostState =
      sublet.backOn !== null || sublet.invoicedCents !== null
        ? 'spent'
        : sublet.sentOn !== null
          ? 'committed'
          : 'to-come';
    return [{ group: 'sublet', state, what: sublet.what, cents }];
  });
}

/** A refused request costs nothing unless its fee was entered as another cost. */
function codeLines({ codeRequests }: Vehicle): CostLine[] {
  return codeRequests.flatMap((request): CostLine[] => {
    if (request.feeCents === 0 || request.outcome === 'refused') return [];
    const state: CostState = request.answeredOn !== null ? 'spent' : request.askedOn !== null ? 'committed' : 'to-come';
    return [{ group: 'codes', state, what: codeName(request), cents: request.feeCents }];
  });
}

function missingAmounts(vehicle: Vehicle): string[] {
  const parts = vehicle.parts
    .filter((part) => part.priceCents === null && part.returnedOn === null)
    .map((part) => `no price for ${part.what}`);
  const sublets = vehicle.sublets
    .filter((sublet) => sublet.quotedCents === null && sublet.invoicedCents === null)
    .map((sublet) => `no amount for ${sublet.what}`);
  const faults = vehicle.faults
    .filter((fault) => isOpenRepair(fault) && fault.decision?.estimateMinutes === null)
    .map((fault) => `no hours estimated for ${fault.what}`);
  return [...parts, ...sublets, ...faults];
}

function total(lines: readonly CostLine[], keep: (line: CostLine) => boolean): Cents {
  return sumCents(lines.filter(keep).map((line) => line.cents));
}

/** What the money of a vehicle is reckoned by. */
export type CostShop = HoldingTerms & {
  readonly people: readonly Person[];
  readonly saleTax: SaleTax;
  readonly selling: Pick<SellingTerms, 'retailCents'>;
  readonly valueLoss: ValueLossCurve;
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
  const holding = vehicleHolding(vehicle, shop, { until: sale?.soldOn ?? today, heldDays });
  const lines: CostLine[] = [
    ...purchaseLines(vehicle),
    ...partLines(vehicle),
    ...labourLines(vehicle, shop.rates, shop.people),
    ...subletLines(vehicle),
    ...codeLines(vehicle),
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
  const budgetUsedCents = total(lines, (line) => reconditioning.includes(line.group));
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
    budgetCents: targets.budgetCents,
    budgetLeftCents: targets.budgetCents === null ? null : targets.budgetCents - budgetUsedCents,
    writeDownCents: realisable?.writeDownCents ?? null,
    fundingBalanceCents: sale === null ? (holding.fundingCost?.balanceCents ?? null) : null,
    nextPayment: sale === null ? (holding.fundingCost?.nextDue ?? null) : null,
    missing: [...missingAmounts(vehicle), ...missingTerms(vehicle, holding)],
  };
}
