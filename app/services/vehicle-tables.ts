// One vehicle's dated entries and its parts as rows of cells, made of the record as the role may have it. Amounts in the main unit.
import type { Person } from '../domain/fleet/shop.ts';
import type { CsvCell } from '../domain/shared/csv.ts';
import type { Day } from '../domain/shared/day.ts';
import type { Vehicle } from '../domain/vehicle/vehicle.ts';
import { amountCell } from './lot-table.ts';

type Rows = readonly (readonly CsvCell[])[];
type Shows = { readonly money: boolean; readonly people: readonly Person[] };
/** Day, section, what, who or from whom, quantity or minutes, amount in cents. */
type Line = {
  readonly on: Day;
  readonly section: string;
  readonly what: string;
  readonly who?: string;
  readonly many?: number;
  readonly cents?: number | null;
};

function linesOf(vehicle: Vehicle, nameOf: (id: string) => string): Line[] {
  const { purchase, arrival, sale } = vehicle;
  const lines: Line[] = [
    { on: purchase.boughtOn, section: 'Purchase', what: 'Price', who: purchase.source, cents: purchase.priceCents },
    { on: purchase.boughtOn, section: 'Purchase', what: 'Fees', cents: purchase.feesCents },
    { on: purchase.boughtOn, section: 'Purchase', what: 'Transport', cents: purchase.transportCents },
  ];
  if (arrival.arrivedOn !== null) lines.push({ on: arrival.arrivedOn, section: 'Arrival', what: 'Arrived' });
  for (const one of vehicle.scans) lines.push({ on: one.takenOn, section: 'Scan', what: one.device });
  for (const one of vehicle.faults) lines.push({ on: one.foundOn, section: 'Fault', what: one.what, who: one.module });
  for (const one of vehicle.parts)
    lines.push({
      on: one.receivedOn ?? one.orderedOn ?? one.neededOn,
      section: 'Part',
      what: one.what,
      who: one.supplier,
      many: one.quantity,
      cents: one.priceCents === null ? null : one.priceCents * one.quantity,
    });
  for (const one of vehicle.labour)
    lines.push({ on: one.workedOn, section: 'Labour', what: one.what, who: nameOf(one.person), many: one.minutes });
  for (const one of vehicle.sublets)
    lines.push({
      on: one.backOn ?? one.sentOn ?? one.notedOn,
      section: 'Sublet work',
      what: one.what,
      who: one.supplier,
      cents: one.invoicedCents ?? one.quotedCents,
    });
  for (const one of vehicle.codeRequests)
    lines.push({
      on: one.askedOn ?? one.notedOn,
      section: 'Code request',
      what: one.module,
      who: one.askedOf,
      cents: one.feeCents,
    });
  for (const one of vehicle.otherCosts)
    lines.push({ on: one.spentOn, section: 'Other cost', what: one.what, cents: one.amountCents });
  for (const one of vehicle.signOffs)
    lines.push({ on: one.signedOn, section: 'Check', what: one.checkId, who: nameOf(one.signedBy) });
  for (const one of vehicle.notes) lines.push({ on: one.on, section: 'Note', what: one.text });
  if (sale !== null)
    lines.push({ on: sale.soldOn, section: 'Sale', what: 'Sold', who: sale.buyer, cents: sale.priceCents });
  return lines.sort((a, b) => (a.on < b.on ? -1 : a.on > b.on ? 1 : 0));
}

/** Everything dated in the record, the oldest first. Labour in minutes, without an amount: its rate is the shop's. */
export function ledgerTable(vehicle: Vehicle, { money, people }: Shows): Rows {
  const nameOf = (id: string) => people.find((person) => person.id === id)?.name ?? id;
  return [
    ['Day', 'Section', 'What', 'Who or from whom', 'Quantity or minutes', ...(money ? ['Amount'] : [])],
    ...linesOf(vehicle, nameOf).map((line): CsvCell[] => [
      line.on,
      line.section,
      line.what,
      line.who ?? '',
      line.many ?? null,
      ...(money ? [amountCell(line.cents ?? null)] : []),
    ]),
  ];
}

export function partsTable({ parts }: Vehicle, seesPrices: boolean): Rows {
  return [
    [
      'Part',
      'Part number',
      'Supplier',
      'Quantity',
      ...(seesPrices ? ['Price of one', 'Core charge of one'] : []),
      'Needed on',
      'Ordered on',
      'Expected on',
      'Received on',
      'Fitted on',
      'Sent back on',
      'Core returned on',
      'Note',
    ],
    ...parts.map((part): CsvCell[] => [
      part.what,
      part.partNumber,
      part.supplier,
      part.quantity,
      ...(seesPrices ? [amountCell(part.priceCents), amountCell(part.coreChargeCents)] : []),
      part.neededOn,
      part.orderedOn,
      part.expectedOn,
      part.receivedOn,
      part.fittedOn,
      part.returnedOn,
      part.coreReturnedOn,
      part.note,
    ]),
  ];
}
