// What one fault of a vehicle has cost, from everything in the record that is linked to it. Holding is not in it.
import { labourCents } from '../money/cost-lines.ts';
import { type Cents, sumCents } from '../shared/cents.ts';
import type { Vehicle } from '../vehicle/vehicle.ts';
import type { Person, Rates } from './shop.ts';

/** At whose hourly rates labour is counted: the person's own, else the shop's. */
export type CostTerms = { readonly rates: Pick<Rates, 'labourCentsPerHour'>; readonly people: readonly Person[] };

export type CaseCosts = {
  readonly minutes: number;
  readonly labourCents: Cents;
  /** Parts kept, with core charges that were not returned. */
  readonly partsCents: Cents;
  readonly subletCents: Cents;
  readonly codesCents: Cents;
  readonly totalCents: Cents;
  /** True when something linked has no amount, so that the total is too low. */
  readonly isIncomplete: boolean;
};

/** Costs in cents, labour rounded once for each entry as in money/costs.ts. A refused code request costs nothing. */
export function caseCosts(vehicle: Vehicle, faultId: string, { rates, people }: CostTerms): CaseCosts {
  const isOf = (fact: { readonly faultId: string | null }) => fact.faultId === faultId;
  const labour = vehicle.labour.filter(isOf);
  const parts = vehicle.parts.filter((part) => isOf(part) && part.returnedOn === null);
  const sublets = vehicle.sublets.filter(isOf);
  const rateOf = (person: string) =>
    people.find(({ id }) => id === person)?.labourCentsPerHour ?? rates.labourCentsPerHour;
  const labourSum = sumCents(labour.map(({ minutes, person }) => labourCents(minutes, rateOf(person))));
  const partsCents = sumCents(
    parts.map(
      (part) => ((part.priceCents ?? 0) + (part.coreReturnedOn === null ? part.coreChargeCents : 0)) * part.quantity,
    ),
  );
  const subletCents = sumCents(sublets.map(({ invoicedCents, quotedCents }) => invoicedCents ?? quotedCents ?? 0));
  const codesCents = sumCents(
    vehicle.codeRequests
      .filter((request) => isOf(request) && request.outcome === 'given')
      .map(({ feeCents }) => feeCents),
  );
  return {
    minutes: labour.reduce((sum, { minutes }) => sum + minutes, 0),
    labourCents: labourSum,
    partsCents,
    subletCents,
    codesCents,
    totalCents: sumCents([labourSum, partsCents, subletCents, codesCents]),
    isIncomplete:
      parts.some(({ priceCents }) => priceCents === null) ||
      sublets.some(({ invoicedCents, quotedCents }) => invoicedCents === null && quotedCents === null),
  };
}
