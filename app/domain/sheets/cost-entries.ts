// Every line of cost with its day and who it concerns, for the cost sheet. The amounts come from the rules of the money room, fact by fact;
// none is worked out here.
import type { Shop } from '../fleet/shop.ts';
import { type CostLine, codeLines, labourLines, partLines, purchaseLines, subletLines } from '../money/cost-lines.ts';
import type { Costs } from '../money/costs.ts';
import type { Day } from '../shared/day.ts';
import type { Vehicle } from '../vehicle/vehicle.ts';
import { joined, personName, showMinutes } from './sheet-words.ts';

export type CostEntry = CostLine & {
  /** The day of the latest thing that happened to it; null for what has not happened. */
  readonly on: Day | null;
  readonly who: string;
};

function withDay(lines: readonly CostLine[], on: Day | null, who: string): CostEntry[] {
  return lines.map((line) => ({ ...line, on, who }));
}

function partEntries(vehicle: Vehicle): CostEntry[] {
  return vehicle.parts.flatMap((part) => {
    const on = part.receivedOn ?? part.orderedOn;
    const lines = partLines({ ...vehicle, parts: [part] });
    const amount = part.quantity === 1 ? '' : ` × ${part.quantity}`;
    return withDay(lines, on, part.supplier).map((line) => ({
      ...line,
      what: joined([`${line.what}${amount}`, line.group === 'parts' ? part.partNumber : '']),
    }));
  });
}

function labourEntries(vehicle: Vehicle, { rates, people }: Shop): CostEntry[] {
  const booked = vehicle.labour.flatMap((entry) =>
    withDay(
      labourLines({ ...vehicle, labour: [entry], faults: [] }, rates, people),
      entry.workedOn,
      joined([personName(people, entry.person), showMinutes(entry.minutes).replaceAll(' ', '\u00a0')]),
    ),
  );
  const toCome = vehicle.faults.flatMap((fault) =>
    withDay(
      labourLines({ ...vehicle, faults: [fault] }, rates, people).filter(({ state }) => state === 'to-come'),
      null,
      'estimated',
    ),
  );
  return [...booked, ...toCome];
}

function subletEntries(vehicle: Vehicle): CostEntry[] {
  return vehicle.sublets.flatMap((sublet) =>
    withDay(
      subletLines({ ...vehicle, sublets: [sublet] }),
      sublet.backOn ?? sublet.sentOn,
      joined([sublet.supplier, sublet.invoicedCents === null ? 'quoted' : '']),
    ),
  );
}

function codeEntries(vehicle: Vehicle): CostEntry[] {
  return vehicle.codeRequests.flatMap((request) =>
    withDay(codeLines({ ...vehicle, codeRequests: [request] }), request.answeredOn ?? request.askedOn, request.askedOf),
  );
}

/** All lines of the reckoning, those of one group together and by day, what has no day last. Amounts of nothing are left out. */
export function costEntries(vehicle: Vehicle, shop: Shop, costs: Costs, until: Day): readonly CostEntry[] {
  const { purchase } = vehicle;
  const entries: CostEntry[] = [
    ...withDay(purchaseLines(vehicle), purchase.boughtOn, purchase.source),
    ...partEntries(vehicle),
    ...labourEntries(vehicle, shop),
    ...subletEntries(vehicle),
    ...codeEntries(vehicle),
    ...vehicle.otherCosts.map(
      (cost): CostEntry => ({
        group: 'other',
        state: 'spent',
        what: cost.what,
        cents: cost.amountCents,
        on: cost.spentOn,
        who: personName(shop.people, cost.entered.by),
      }),
    ),
    ...withDay(
      costs.lines.filter(({ group }) => group === 'interest' || group === 'overhead'),
      until,
      '',
    ),
  ];
  return entries.filter(({ cents }) => cents !== 0);
}
