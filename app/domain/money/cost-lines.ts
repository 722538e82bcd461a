// The facts of a record as lines of cost, each with its group and how certain it is. Holding is in vehicle-holding.ts, sums in costs.ts.
import { codeName, type NamedKinds } from '../codes/code-name.ts';
import { isOpenRepair } from '../diagnosis/fault.ts';
import type { Person, Rates } from '../fleet/shop.ts';
import { type Cents, roundToCents } from '../shared/cents.ts';
import type { Vehicle } from '../vehicle/vehicle.ts';

/** In the order of the way. */
export const costGroups = [
  'purchase',
  'fees',
  'transport',
  'parts',
  'cores',
  'labour',
  'sublet',
  'codes',
  'other',
  'interest',
  'overhead',
] as const;
export type CostGroup = (typeof costGroups)[number];

/** 'spent': owed or paid. 'committed': ordered or agreed, not here. 'to-come': foreseen, nobody has committed to it. */
export const costStates = ['spent', 'committed', 'to-come'] as const;
export type CostState = (typeof costStates)[number];

export type CostLine = {
  readonly group: CostGroup;
  readonly state: CostState;
  readonly what: string;
  readonly cents: Cents;
};

export function purchaseLines({ purchase }: Vehicle): CostLine[] {
  return [
    { group: 'purchase', state: 'spent', what: 'Purchase price', cents: purchase.priceCents },
    { group: 'fees', state: 'spent', what: 'Fees', cents: purchase.feesCents },
    { group: 'transport', state: 'spent', what: 'Transport', cents: purchase.transportCents },
  ];
}

/** A part sent back costs nothing; a core charge is spent from the receipt until the old unit is returned. */
export function partLines({ parts }: Vehicle): CostLine[] {
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

export function labourLines(vehicle: Vehicle, rates: Rates, people: readonly Person[]): CostLine[] {
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

export function subletLines({ sublets }: Vehicle): CostLine[] {
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

/** A request that was refused, or closed without an answer, costs nothing unless its fee was entered as another cost. */
export function codeLines({ codeRequests }: Vehicle, kinds?: NamedKinds): CostLine[] {
  return codeRequests.flatMap((request): CostLine[] => {
    if (request.feeCents === 0 || request.outcome === 'refused') return [];
    if (request.closedOn !== null && request.answeredOn === null) return [];
    const state: CostState = request.answeredOn !== null ? 'spent' : request.askedOn !== null ? 'committed' : 'to-come';
    return [{ group: 'codes', state, what: codeName(request, kinds), cents: request.feeCents }];
  });
}

export function missingAmounts(vehicle: Vehicle): string[] {
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
