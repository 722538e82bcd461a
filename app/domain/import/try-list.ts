// A purchase list tried out row by row: what each row would take in, and what stands against it in sentences. Pure; takes nothing in.
import { z } from 'zod';
import { type Day, isDay } from '../shared/day.ts';
import { lineSchema } from '../shared/text.ts';
import type { Identity } from '../vehicle/identity.ts';
import type { Market } from '../vehicle/market.ts';
import { nextStockNumber } from '../vehicle/next-stock-number.ts';
import { noTargets } from '../vehicle/purchase.ts';
import { type TakeIn, takeInSchema, takeInVehicle } from '../vehicle/take-in.ts';
import { cleanVin, readVin } from '../vehicle/vin.ts';
import { type ListFact, listMatchSchema } from './list-columns.ts';
import { dayFormSchema, decimalFormSchema, readListCents, readListDay, readListWhole } from './value-forms.ts';

/** How the person says the list is to be read. */
export const listReadingSchema = z.strictObject({
  match: listMatchSchema,
  /** By column; those of columns that hold no number or day are not looked at. */
  decimalForms: z.array(decimalFormSchema).max(200),
  dayForms: z.array(dayFormSchema).max(200),
  odometerUnit: z.enum(['km', 'mi']),
  /** For rows without a day of purchase; null: such a row cannot be taken in. */
  boughtOn: z.string().refine(isDay).nullable(),
  /** For rows whose VIN needs a reason to be kept as it is; empty: such a row cannot be taken in. */
  vinReason: lineSchema(200),
  /** Rows without a stock number get the next in the row. */
  numbersStock: z.boolean(),
});
export type ListReading = z.infer<typeof listReadingSchema>;

export type TriedRow = {
  /** Counted from 0 among the rows under the head line. */
  readonly row: number;
  readonly stockNumber: string;
  readonly vin: string;
  readonly title: string;
  readonly boughtOn: Day | null;
  readonly priceCents: number | null;
  /** What stands against taking it in; empty: it is good. */
  readonly problems: readonly string[];
  /** Not empty where a reason for the VIN would make it good. */
  readonly needsReason: boolean;
  /** Null while something stands against it. */
  readonly takeIn: TakeIn | null;
};

export type ListSetting = {
  readonly today: Day;
  readonly market: Market;
  /** Every vehicle of the fleet, sold ones too: a stock number is never used twice, a VIN may come back once it is sold. */
  readonly fleet: readonly { readonly stockNumber: string; readonly vin: string; readonly isSold: boolean }[];
  readonly paperKind: string;
};

type Cells = {
  readonly text: (fact: ListFact) => string;
  readonly cents: (fact: ListFact) => number | null;
  readonly whole: (fact: ListFact) => number | null;
  readonly day: (fact: ListFact) => Day | null;
  readonly problems: string[];
};

/** Control characters and line breaks inside a cell become one space; so does every run of spaces. */
function tidy(text: string): string {
  // biome-ignore lint/suspicious/noControlCharactersInRegex: taking control characters out is the point.
  return text.replace(/[\u0000-\u001f\u007f\s]+/g, ' ').trim();
}

function cellsOf(row: readonly string[], reading: ListReading, names: readonly string[]): Cells {
  const problems: string[] = [];
  const at = (fact: ListFact) => reading.match.indexOf(fact);
  const text = (fact: ListFact) => tidy(row[at(fact)] ?? '');
  function read<Value>(
    fact: ListFact,
    kind: string,
    how: (value: string, column: number) => Value | null,
  ): Value | null {
    const value = text(fact);
    if (value === '') return null;
    const column = at(fact);
    const found = how(value, column);
    if (found === null) {
      const shown = value.length > 40 ? `${value.slice(0, 40)}…` : value;
      problems.push(`“${shown}” in the column ${names[column] ?? column + 1} is no ${kind} as that column is read.`);
    }
    return found;
  }
  return {
    text,
    problems,
    cents: (fact) => {
      const cents = read(fact, 'amount', (value, column) =>
        readListCents(value, reading.decimalForms[column] ?? 'point'),
      );
      if (cents === null || cents >= 0) return cents;
      problems.push(`The amount in the column ${names[at(fact)] ?? ''} is below zero. Correct it in the list.`);
      return null;
    },
    whole: (fact) =>
      read(fact, 'whole number', (value, column) => readListWhole(value, reading.decimalForms[column] ?? 'point')),
    day: (fact) => read(fact, 'day', (value, column) => readListDay(value, reading.dayForms[column] ?? 'year-first')),
  };
}

const factNames: Readonly<Record<string, string>> = {
  stockNumber: 'Stock number',
  vin: 'VIN',
  modelYear: 'Model year',
  make: 'Make',
  model: 'Model',
  body: 'Body',
  colour: 'Colour',
  location: 'Where it stands',
  keyTag: 'Key tag',
  source: 'Bought from',
  keysReceived: 'Keys received',
};

function schemaSentences(takeIn: unknown): string[] {
  const held = takeInSchema.safeParse(takeIn);
  if (held.success) return [];
  return held.error.issues.map((issue) => {
    const field = String(issue.path.at(-1) ?? '');
    return `${factNames[field] ?? field}: ${issue.message}`;
  });
}

type Draft = {
  readonly identity: Identity;
  readonly boughtOn: Day | null;
  readonly priceCents: number | null;
  readonly cells: Cells;
};

function yearOfVin(vin: string, market: Market): number | null {
  const { modelYears } = readVin(vin, { market });
  return modelYears.length === 1 ? (modelYears[0] ?? null) : null;
}

function draftOf(cells: Cells, stockNumber: string, reading: ListReading, { market }: ListSetting): Draft {
  const vin = cleanVin(cells.text('vin'));
  const odometer = cells.whole('odometer');
  const isOwed = vin === '' || readVin(vin, { market }).problems.some(({ severity }) => severity === 'override');
  const identity: Identity = {
    stockNumber,
    vin,
    vinReason: isOwed ? reading.vinReason.trim() : '',
    modelYear: cells.whole('modelYear') ?? (vin === '' ? null : yearOfVin(vin, market)),
    make: cells.text('make'),
    model: cells.text('model'),
    body: cells.text('body'),
    colour: cells.text('colour'),
    drive: 'combustion',
    odometer: odometer === null ? null : { reading: odometer, unit: reading.odometerUnit },
    location: cells.text('location'),
    keyTag: cells.text('keyTag'),
  };
  const boughtOn = cells.text('boughtOn') === '' ? reading.boughtOn : cells.day('boughtOn');
  return { identity, boughtOn, priceCents: cells.cents('price'), cells };
}

/** What is missing for the record, each a sentence that says what to do. */
function missingSentences({ identity, boughtOn, priceCents, cells }: Draft): string[] {
  const sentences: string[] = [];
  if (identity.stockNumber === '')
    sentences.push('It has no stock number. Let the program number such rows, or write one into the list.');
  if (boughtOn === null && cells.text('boughtOn') === '')
    sentences.push('The day of purchase is missing. Match its column, or give one day for all such rows.');
  if (priceCents === null && cells.text('price') === '')
    sentences.push('The price is missing. Match its column, or write it into the list; 0 is a price.');
  return sentences;
}

/** Where the same is said elsewhere in the list or in the fleet. `earlier` maps to the row that said it first. */
function twiceSentences(identity: Identity, row: number, earlier: Earlier): string[] {
  const sentences: string[] = [];
  const stock = identity.stockNumber.toLowerCase();
  const sameVinAt = identity.vin === '' ? undefined : earlier.vins.get(identity.vin);
  if (sameVinAt !== undefined && sameVinAt !== row)
    sentences.push(`This VIN stands in row ${sameVinAt + 1} already. Leave one of the two out.`);
  const inLot = identity.vin === '' ? undefined : earlier.fleetVins.get(identity.vin);
  if (inLot !== undefined) sentences.push(`This VIN is in the lot already, as stock number ${inLot}.`);
  const sameStockAt = stock === '' ? undefined : earlier.stock.get(stock);
  if (sameStockAt !== undefined && sameStockAt !== row)
    sentences.push(
      `Stock number ${identity.stockNumber} stands in row ${sameStockAt + 1} already. Give it another one.`,
    );
  if (stock !== '' && earlier.fleetStock.has(stock))
    sentences.push(`Stock number ${identity.stockNumber} belongs to another vehicle of the fleet.`);
  return sentences;
}

type Earlier = {
  readonly vins: Map<string, number>;
  readonly stock: Map<string, number>;
  readonly fleetVins: ReadonlyMap<string, string>;
  readonly fleetStock: ReadonlySet<string>;
};

function takeInOf({ identity, boughtOn, priceCents, cells }: Draft, setting: ListSetting): TakeIn | null {
  const fees = cells.cents('fees');
  const transport = cells.cents('transport');
  const asking = cells.cents('asking');
  const arrivedOn = cells.day('arrivedOn');
  const expectedOn = arrivedOn === null ? cells.day('expectedOn') : null;
  const keysReceived = cells.whole('keysReceived');
  if (boughtOn === null || priceCents === null) return null;
  return {
    identity,
    purchase: {
      boughtOn,
      source: cells.text('source'),
      priceCents,
      feesCents: fees ?? 0,
      transportCents: transport ?? 0,
      paperKind: setting.paperKind,
      paperExpectedOn: null,
      paperReceivedOn: null,
      keysReceived,
      fundingPlanId: null,
    },
    arrival: { arrivedOn, expectedOn },
    targets: { ...noTargets, askingCents: asking },
  };
}

function ruleSentences(takeIn: TakeIn, { today, market }: ListSetting): string[] {
  const broken = schemaSentences(takeIn);
  if (broken.length > 0) return broken;
  const stamp = { by: 'list', at: `${today}T00:00:00.000Z` };
  const made = takeInVehicle('list-row', takeIn, { today, market, stamp });
  return made.ok ? [] : made.error.map(({ sentence }) => sentence);
}

/**
 * Tries every row. The first of two rows with the same VIN or stock number is good, the later ones say which row it was. Numbers for
 * rows without one go on from the fleet's and the list's own.
 */
export function tryList(
  rows: readonly (readonly string[])[],
  names: readonly string[],
  reading: ListReading,
  setting: ListSetting,
): readonly TriedRow[] {
  const stockAt = reading.match.indexOf('stockNumber');
  const used = [...setting.fleet.map(({ stockNumber }) => stockNumber), ...rows.map((row) => tidy(row[stockAt] ?? ''))];
  let next = nextStockNumber(used.filter((stockNumber) => stockNumber !== '')) || '1';
  const earlier: Earlier = {
    vins: new Map(),
    stock: new Map(),
    fleetVins: new Map(
      setting.fleet
        .filter(({ isSold, vin }) => !isSold && vin !== '')
        .map(({ vin, stockNumber }) => [vin, stockNumber]),
    ),
    fleetStock: new Set(setting.fleet.map(({ stockNumber }) => stockNumber.toLowerCase())),
  };
  return rows.map((row, index): TriedRow => {
    const cells = cellsOf(row, reading, names);
    let stockNumber = cells.text('stockNumber');
    if (stockNumber === '' && reading.numbersStock) {
      stockNumber = next;
      next = nextStockNumber([next]) || `${next}-1`;
    }
    const draft = draftOf(cells, stockNumber, reading, setting);
    const { identity, boughtOn, priceCents } = draft;
    const takeIn = takeInOf(draft, setting);
    const twice = twiceSentences(identity, index, earlier);
    const problems = [...missingSentences(draft), ...cells.problems, ...twice];
    if (takeIn !== null && stockNumber !== '') problems.push(...ruleSentences(takeIn, setting));
    if (identity.vin !== '' && !earlier.vins.has(identity.vin)) earlier.vins.set(identity.vin, index);
    if (stockNumber !== '' && !earlier.stock.has(stockNumber.toLowerCase()))
      earlier.stock.set(stockNumber.toLowerCase(), index);
    const needsReason =
      identity.vinReason === '' &&
      (identity.vin === '' ||
        readVin(identity.vin, { market: setting.market }).problems.some(({ severity }) => severity === 'override'));
    return {
      row: index,
      stockNumber,
      vin: identity.vin,
      title: [identity.modelYear ?? '', identity.make, identity.model].filter((word) => word !== '').join(' '),
      boughtOn,
      priceCents,
      problems: [...new Set(problems)],
      needsReason,
      takeIn: problems.length === 0 ? takeIn : null,
    };
  });
}
