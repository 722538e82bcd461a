// What a vehicle has cost, what is committed, what is still to come, and what is left of its margin. Tax is not here.
import { isOpenRepair } from '../diagnosis/fault.ts';
import type { Person, Rates } from '../fleet/shop.ts';
import { type Cents, roundToCents, sumCents } from '../shared/cents.ts';
import { addDays, type Day, laterDay } from '../shared/day.ts';
import { codeName } from '../sheets/sheet-words.ts';
import type { Vehicle } from '../vehicle/vehicle.ts';
import { daysPaidFor, holdingCost } from './holding-cost.ts';

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
  /** Asking (or sale) price less acquisition; null without a price. */
  readonly startingMarginCents: Cents | null;
  /** Price less everything spent. */
  readonly marginLeftCents: Cents | null;
  /** Price less everything spent, committed and still to come. */
  readonly marginExpectedCents: Cents | null;
  /** Spent on reconditioning and holding, in hundredths of a per cent of the starting margin; null when there is no margin. */
  readonly marginUsedBasisPoints: number | null;
  /** The last day on which the expected margin is not negative if nothing but holding is added; null when not foreseeable. */
  readonly breakEvenOn: Day | null;
  readonly budgetCents: Cents | null;
  /** Of the budget, after reconditioning spent, committed and to come. Negative: over budget. */
  readonly budgetLeftCents: Cents | null;
  /** Labour, sublet work or parts without an amount: the reckoning cannot count them. */
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

/**
 * Reckons the money of one vehicle as it stands after `heldDays`. All amounts in cents; a lost margin is negative.
 * How margin used is defined: own definition ("common practice, no source").
 */
export function reckonCosts(
  vehicle: Vehicle,
  shop: { readonly rates: Rates; readonly people: readonly Person[] },
  { today, heldDays }: { readonly today: Day; readonly heldDays: number },
): Costs {
  const holding = holdingCost(vehicle.purchase.priceCents, heldDays, shop.rates);
  const lines: CostLine[] = [
    ...purchaseLines(vehicle),
    ...partLines(vehicle),
    ...labourLines(vehicle, shop.rates, shop.people),
    ...subletLines(vehicle),
    ...codeLines(vehicle),
    ...vehicle.otherCosts.map(
      (cost): CostLine => ({ group: 'other', state: 'spent', what: cost.what, cents: cost.amountCents }),
    ),
    {
      group: 'interest' as const,
      state: 'spent' as const,
      what: 'Interest on the purchase price',
      cents: holding.interestCents,
    },
    { group: 'overhead' as const, state: 'spent' as const, what: 'Lot cost by the day', cents: holding.overheadCents },
  ].filter((line) => line.cents !== 0);
  const { purchase, targets, sale } = vehicle;
  const spentCents = total(lines, (line) => line.state === 'spent');
  const committedCents = total(lines, (line) => line.state === 'committed');
  const toComeCents = total(lines, (line) => line.state === 'to-come');
  const acquisitionCents = sumCents([purchase.priceCents, purchase.feesCents, purchase.transportCents]);
  const reconditioningCents = total(lines, (line) => line.state === 'spent' && reconditioning.includes(line.group));
  const holdingCents = holding.interestCents + holding.overheadCents;
  const priceCents = sale?.priceCents ?? targets.askingCents;
  const startingMarginCents = priceCents === null ? null : priceCents - acquisitionCents;
  const marginExpectedCents = priceCents === null ? null : priceCents - spentCents - committedCents - toComeCents;
  const budgetUsedCents = total(lines, (line) => reconditioning.includes(line.group));
  return {
    lines,
    spentCents,
    committedCents,
    toComeCents,
    acquisitionCents,
    reconditioningCents,
    holdingCents,
    startingMarginCents,
    marginLeftCents: priceCents === null ? null : priceCents - spentCents,
    marginExpectedCents,
    marginUsedBasisPoints:
      startingMarginCents === null || startingMarginCents <= 0
        ? null
        : Math.round(((reconditioningCents + holdingCents) * 10_000) / startingMarginCents),
    breakEvenOn: sale === null ? breakEvenDay(marginExpectedCents, vehicle, shop.rates, { today, heldDays }) : null,
    budgetCents: targets.budgetCents,
    budgetLeftCents: targets.budgetCents === null ? null : targets.budgetCents - budgetUsedCents,
    missing: missingAmounts(vehicle),
  };
}

/**
 * The last day on which the expected margin is not negative if nothing but holding is added. Where it is negative already, the day lies
 * in the past; a margin that was negative before any holding gives the day of purchase.
 */
function breakEvenDay(
  marginExpectedCents: Cents | null,
  vehicle: Vehicle,
  rates: Rates,
  { today, heldDays }: { readonly today: Day; readonly heldDays: number },
): Day | null {
  if (marginExpectedCents === null) return null;
  const { boughtOn, priceCents } = vehicle.purchase;
  if (marginExpectedCents < 0) {
    const { interestCents, overheadCents } = holdingCost(priceCents, heldDays, rates);
    const beforeHolding = marginExpectedCents + interestCents + overheadCents;
    if (beforeHolding < 0) return boughtOn;
    const lasted = daysPaidFor(beforeHolding, priceCents, 0, rates);
    return lasted === null ? null : laterDay(boughtOn, addDays(today, lasted - heldDays));
  }
  const days = daysPaidFor(marginExpectedCents, priceCents, heldDays, rates);
  return days === null ? null : addDays(today, days);
}
