// Parts and cores of the whole fleet by supplier: what is on order and by when, what is overdue, what is still to be ordered, and which
// old units are owed back. The list to telephone by. Amounts only for whoever may see them.
import type { Shop } from '../fleet/shop.ts';
import type { Part } from '../parts/part.ts';
import { type Cents, showCents, sumCents } from '../shared/cents.ts';
import { type Day, daysBetween } from '../shared/day.ts';
import { type DayForm, showDay } from '../shared/show-day.ts';
import { plural } from '../shared/text.ts';
import type { Vehicle } from '../vehicle/vehicle.ts';
import { frameFleetSheet } from './fleet-frame.ts';
import type { Sheet, SheetBlock } from './sheet.ts';
import type { Printing } from './sheet-frame.ts';
import { joined, plain, quiet, strong } from './sheet-words.ts';

type Line = { readonly stockNumber: string; readonly part: Part };

export type SupplierParts = {
  /** As it was written first; empty where no supplier is named. */
  readonly name: string;
  /** Ordered and not here, the most overdue first, then by promised day. */
  readonly onOrder: readonly Line[];
  readonly toOrder: readonly Line[];
  /** Received, and the old unit has not been sent back. */
  readonly coresOwed: readonly Line[];
  readonly overdue: number;
  readonly coresCents: Cents;
};

function foldedName(name: string): string {
  return name.normalize('NFKC').trim().replace(/\s+/g, ' ').toLowerCase();
}

function isOverdue({ part }: Line, today: Day): boolean {
  return part.expectedOn !== null && part.expectedOn < today;
}

/** Before those without a promise, which sort last. */
const noPromise = '9999-12-31';

/**
 * The parts of these vehicles by supplier: those with something overdue first, then by name, those without a supplier last. A core is
 * owed from the receipt of the part until the old unit went back, as money/cost-lines.ts counts it; a part sent back owes none.
 */
export function partsBySupplier(
  vehicles: readonly Pick<Vehicle, 'identity' | 'parts' | 'sale'>[],
  today: Day,
): readonly SupplierParts[] {
  const lines = vehicles.flatMap(({ identity, parts, sale }) =>
    parts.map((part) => ({ stockNumber: identity.stockNumber, part, isSold: sale !== null })),
  );
  const groups = new Map<string, typeof lines>();
  for (const line of lines) {
    const key = foldedName(line.part.supplier);
    groups.set(key, [...(groups.get(key) ?? []), line]);
  }
  const suppliers = [...groups].map(([key, all]): SupplierParts => {
    const open = all.filter(({ part, isSold }) => !isSold && part.receivedOn === null && part.returnedOn === null);
    const onOrder = open
      .filter(({ part }) => part.orderedOn !== null)
      .sort((a, b) => ((a.part.expectedOn ?? noPromise) < (b.part.expectedOn ?? noPromise) ? -1 : 1));
    const coresOwed = all.filter(
      ({ part }) =>
        part.coreChargeCents > 0 &&
        part.receivedOn !== null &&
        part.coreReturnedOn === null &&
        part.returnedOn === null,
    );
    return {
      name: key === '' ? '' : (all[0]?.part.supplier.trim() ?? ''),
      onOrder,
      toOrder: open.filter(({ part }) => part.orderedOn === null),
      coresOwed,
      overdue: onOrder.filter((line) => isOverdue(line, today)).length,
      coresCents: sumCents(coresOwed.map(({ part }) => part.coreChargeCents * part.quantity)),
    };
  });
  return suppliers
    .filter(({ onOrder, toOrder, coresOwed }) => onOrder.length + toOrder.length + coresOwed.length > 0)
    .sort((a, b) => {
      if ((a.name === '') !== (b.name === '')) return a.name === '' ? 1 : -1;
      if (a.overdue > 0 !== b.overdue > 0) return a.overdue > 0 ? -1 : 1;
      return foldedName(a.name) < foldedName(b.name) ? -1 : 1;
    });
}

const left = (title: string, share: number) => ({ title, share, align: 'left' }) as const;
const right = (title: string, share: number) => ({ title, share, align: 'right' }) as const;

function promise(line: Line, { today, dayForm }: Shown) {
  const { expectedOn } = line.part;
  if (expectedOn === null) return quiet('no day promised');
  if (!isOverdue(line, today)) return plain(showDay(expectedOn, dayForm));
  return strong(`${showDay(expectedOn, dayForm)}, ${plural(daysBetween(expectedOn, today), 'day', 'days')} over`);
}

/** What is the same for every supplier. */
type Shown = { readonly today: Day; readonly dayForm: DayForm; readonly seesPrices: boolean };

function whatIs({ part }: Line): string {
  return joined([part.what, part.partNumber, part.note]);
}

function amountCell(cents: Cents | null) {
  return cents === null ? quiet('not known') : plain(showCents(cents));
}

function orderTable(supplier: SupplierParts, shown: Shown): SheetBlock[] {
  const { dayForm, seesPrices } = shown;
  const rows = [
    ...supplier.onOrder.map((line) => ({
      line,
      ordered: plain(line.part.orderedOn === null ? '' : showDay(line.part.orderedOn, dayForm)),
      promised: promise(line, shown),
    })),
    ...supplier.toOrder.map((line) => ({
      line,
      ordered: strong('to order'),
      promised: quiet(`needed since ${showDay(line.part.neededOn, dayForm)}`),
    })),
  ];
  if (rows.length === 0) return [];
  return [
    {
      kind: 'table',
      caption: `Parts on order and to be ordered from ${supplier.name || 'a supplier not named yet'}`,
      columns: [
        left('Stock number', 12),
        left('Part, number', seesPrices ? 38 : 48),
        right('Pieces', 7),
        left('Ordered', 13),
        left('Promised', 24),
        ...(seesPrices ? [right('Each', 11)] : []),
      ],
      rows: rows.map(({ line, ordered, promised }) => [
        strong(line.stockNumber),
        plain(whatIs(line)),
        plain(String(line.part.quantity)),
        ordered,
        promised,
        ...(seesPrices ? [amountCell(line.part.priceCents)] : []),
      ]),
      whenEmpty: '',
      rowRoom: 'text',
    },
  ];
}

function coreTable(supplier: SupplierParts, { today, dayForm, seesPrices }: Shown): SheetBlock[] {
  if (supplier.coresOwed.length === 0) return [];
  const total = seesPrices ? `, ${showCents(supplier.coresCents)} to come back` : '';
  return [
    {
      kind: 'heading',
      level: 3,
      text: `Old units owed back: ${supplier.coresOwed.length}${total}`,
    },
    {
      kind: 'table',
      caption: `Cores owed back to ${supplier.name || 'a supplier not named'}`,
      columns: [
        left('Stock number', 12),
        left('Old unit of', seesPrices ? 42 : 52),
        right('Pieces', 7),
        left('Received', 14),
        left('Old unit', 19),
        ...(seesPrices ? [right('Core charge', 12)] : []),
      ],
      rows: supplier.coresOwed.map((line) => {
        const { part } = line;
        const since = part.receivedOn === null ? 0 : daysBetween(part.receivedOn, today);
        return [
          strong(line.stockNumber),
          plain(whatIs(line)),
          plain(String(part.quantity)),
          plain(part.receivedOn === null ? '' : showDay(part.receivedOn, dayForm)),
          part.fittedOn === null
            ? quiet('still in the vehicle')
            : plain(`out since ${showDay(part.fittedOn, dayForm)}${since > 30 ? ', send it' : ''}`),
          ...(seesPrices ? [plain(showCents(part.coreChargeCents * part.quantity))] : []),
        ];
      }),
      whenEmpty: '',
      rowRoom: 'text',
    },
  ];
}

function summaryOf({ onOrder, toOrder, overdue, coresOwed }: SupplierParts): string {
  const parts = [
    onOrder.length > 0 ? `${onOrder.length} on order` : '',
    overdue > 0 ? `${overdue} overdue` : '',
    toOrder.length > 0 ? `${toOrder.length} to order` : '',
    coresOwed.length > 0 ? plural(coresOwed.length, 'old unit owed back', 'old units owed back') : '',
  ];
  return joined(parts);
}

export type PartsListInput = {
  readonly vehicles: readonly Pick<Vehicle, 'identity' | 'parts' | 'sale'>[];
  readonly seesPrices: boolean;
};

/** Parts and cores by supplier as the records stand today. Prices and core charges only when `seesPrices`. */
export function partsListSheet(
  { vehicles, seesPrices }: PartsListInput,
  shop: Shop,
  today: Day,
  printed: Printing,
): Sheet {
  const { dayForm, currency } = shop.dealer;
  const shown: Shown = { today, dayForm, seesPrices };
  const suppliers = partsBySupplier(vehicles, today);
  const count = (of: (supplier: SupplierParts) => number) => suppliers.reduce((sum, one) => sum + of(one), 0);
  const onOrder = count((one) => one.onOrder.length);
  const cores = count((one) => one.coresOwed.length);
  const tags = [
    { label: 'Overdue', value: String(count((one) => one.overdue)) },
    { label: 'To order', value: String(count((one) => one.toOrder.length)) },
    { label: 'Old units owed', value: String(cores) },
    ...(seesPrices && cores > 0
      ? [{ label: `Core charges, ${currency}`, value: showCents(count((one) => one.coresCents)) }]
      : []),
  ];
  const blocks: SheetBlock[] = [
    {
      kind: 'masthead',
      number: `${onOrder} on order`,
      name: `At ${plural(suppliers.filter(({ name }) => name !== '').length, 'supplier', 'suppliers')}, as of ${showDay(today, dayForm)}`,
      tags,
    },
    ...suppliers.flatMap((supplier): SheetBlock[] => [
      { kind: 'heading', level: 2, text: supplier.name === '' ? 'No supplier named yet' : supplier.name },
      { kind: 'paragraph', text: summaryOf(supplier), emphasis: supplier.overdue > 0 ? 'strong' : 'quiet' },
      ...orderTable(supplier, shown),
      ...coreTable(supplier, shown),
    ]),
    ...(suppliers.length === 0
      ? [
          {
            kind: 'paragraph',
            text: 'Nothing is on order, nothing is to be ordered, and no old unit is owed back.',
            emphasis: 'none',
          } as const,
        ]
      : []),
  ];
  const amounts = seesPrices ? ` Amounts in ${currency}.` : '';
  return frameFleetSheet('parts-list', 'Parts and cores by supplier', shop, printed, {
    subject: showDay(today, dayForm),
    orientation: 'portrait',
    blocks,
    footer: `Days promised are those the suppliers gave.${amounts} A core charge comes back when the old unit is returned in the state the supplier asks for.`,
  });
}
