// Words of the vehicle screen apart from its entries: head, strip, what stands between it and its sale, forms in general.

import { showCents } from '../../app/domain/shared/cents.ts';
import type { Day } from '../../app/domain/shared/day.ts';
import { plural } from '../../app/domain/shared/text.ts';
import type { SheetKind } from '../../app/domain/sheets/sheet.ts';
import { type Standing, standingNames } from '../../app/domain/time/cause.ts';
import type { Purpose } from './purpose.ts';
import { sayDay, sayDaysIn, sayDistance, saySince } from './say-day.ts';

export const ledgerText = {
  save: 'Save',
  saveNew: 'Add',
  putBack: 'Put back',
  correct: 'Correct',
  remove: 'Remove',
  undo: 'Undo',
  next: 'Next',
  notSaved: 'not saved',
  holds: 'Holds the sale.',
  newEntry: (name: string) => name,
  entry: (name: string) => `Correct: ${name}`,
  removed: (name: string) => `Removed: ${name}.`,
  actionFor: (action: string, name: string) => `${action}: ${name}`,
  nobody: 'somebody no longer listed',
  none: 'none',
} as const;

export const vehiclePurpose: Purpose = {
  manager:
    'All that is known of this vehicle. Begin with what stands between it and its sale: press a line, and you are where it is dealt with.',
  technician:
    'All that the workshop knows of this vehicle. Begin with what stands between it and its sale: press a line of yours, and you are where it is entered.',
  sales: 'What was found and done on this vehicle, and what a buyer must be told. The readiness sheet has it on paper.',
};

export const vehicleText = {
  reading: 'Opening the vehicle …',
  backToLot: 'Lot',
  backToLotTip: 'Back to the Lot',
  vin: 'VIN',
  noVin: 'VIN not known yet',
  stockNumber: 'Stock number',
  readOnly: 'This vehicle can be read and not changed.',
  otherSheets: 'Sheets …',
  otherSheetsTip: 'All sheets of this vehicle: look at them, print them, save them.',
  sheet: { 'job-sheet': 'Job sheet', 'readiness-sheet': 'Readiness sheet' } satisfies Partial<
    Record<SheetKind, string>
  >,
  waitsFor: 'Waits for',
  stands: 'Stands',
  nextMove: 'Next move',
  nobodysMove: 'Nobody’s: it is sold',
  daysHeld: 'Days held',
  idleDays: (idle: number) => (idle === 0 ? 'none idle' : `${idle} idle, could be won back`),
  marginExpected: 'Margin expected',
  ofStartingMargin: (starting: string) => `of ${starting} at the start`,
  noPrice: 'No asking price yet',
  usedUp: (day: Day, today: Day) =>
    day < today
      ? `used up since ${sayDay(day, today)}`
      : `used up after ${sayDay(day, today)}, ${sayDistance(day, today)}`,
  lastsUntil: (day: Day, today: Day) =>
    day < today ? `used up since ${sayDay(day, today)}` : `${sayDay(day, today)}, ${sayDistance(day, today)}`,
  askingPrice: 'Asking price',
  soldOn: (day: Day, today: Day) => `on ${sayDay(day, today)}`,
  standingWhat: (what: string, since: Day, expectedOn: Day | null, today: Day) => {
    const due =
      expectedOn === null
        ? ''
        : expectedOn < today
          ? `; promised for ${sayDay(expectedOn, today)}, ${sayDistance(expectedOn, today).replace(' ago', ' late')}`
          : `; expected ${sayDay(expectedOn, today)}, ${sayDistance(expectedOn, today)}`;
    return `${what === '' ? '' : `${sayDaysIn(what, today)}, `}${saySince(since, today)}${due}`;
  },
  sections: 'Sections',
  holdsHere: (count: number) => `${plural(count, 'thing holds', 'things hold')} the sale here`,
  unsaved: 'not saved',
} as const;

export const stripText = {
  title: 'Where the days went',
  slider: 'Day of the hold strip',
  keys: 'Arrow keys read it day by day, with Ctrl from cause to cause.',
  held: (standing: Standing, what: string, day: Day, nth: number, of: number, today: Day) =>
    `${sayDay(day, today)}: ${standingNames[standing]}${what === '' ? '' : `, ${sayDaysIn(what, today)}`}${of > 1 ? ` (day ${nth} of ${of})` : ''}`,
  today: (standing: Standing, what: string, day: Day) =>
    `${sayDay(day, day)}, today: ${standingNames[standing]}${what === '' ? '' : `, ${sayDaysIn(what, day)}`}`,
  sold: (day: Day, today: Day) => `${sayDay(day, today)}: sold`,
  before: (day: Day, today: Day) => `${sayDay(day, today)}: not bought yet`,
  future: (day: Day, today: Day) => `${sayDay(day, today)}, ${sayDistance(day, today)}`,
  futureExpected: (standing: Standing) => `: still ${standingNames[standing]}, as promised`,
  futureExpectedEnd: (standing: Standing) =>
    `: the day for which the end of the wait was promised (${standingNames[standing]})`,
  futureOpen: ': nothing is promised for it',
  wait: (
    wait: {
      readonly kind: 'part' | 'code' | 'sublet';
      readonly begunOn: Day;
      readonly from: string;
      readonly promisedFor: Day | null;
      readonly endedOn: Day | null;
    },
    today: Day,
  ) => {
    const begun = { part: 'ordered', code: 'asked for', sublet: 'sent out' }[wait.kind];
    const preposition = { part: 'from', code: 'of', sublet: 'to' }[wait.kind];
    const words = [
      `${begun} on ${sayDay(wait.begunOn, today)}${wait.from === '' ? '' : ` ${preposition} ${wait.from}`}`,
      wait.promisedFor === null ? '' : `promised for ${sayDay(wait.promisedFor, today)}`,
      wait.endedOn === null ? 'not here yet' : `here on ${sayDay(wait.endedOn, today)}`,
    ];
    return `; ${words.filter((word) => word !== '').join(', ')}`;
  },
  ready: {
    likely: '; ready by then in half of all runs of the forecast',
    safe: '; ready by then in 80 of 100 runs of the forecast',
    between: '; between the likely and the safe day of being ready',
    beyond: '; ready by then, as the forecast has it',
  },
  payment: (cents: number) => `; ${showCents(cents)} due to the lender`,
  marginUsedUp: '; margin used up',
  lastDayOfMargin: '; last day on which the margin holds',
  causeDays: (standing: Standing, days: number) => `${standingNames[standing]} ${days}`,
} as const;

export const gatesText = {
  title: 'What stands between this vehicle and its sale',
  nothing: 'Nothing. It can be offered.',
  sold: 'It is sold.',
  toSign: 'To be signed',
  met: (count: number) => (count === 0 ? 'No gate is met yet' : `${plural(count, 'gate is', 'gates are')} met`),
  metOn: (title: string, day: Day | null, today: Day) => (day === null ? title : `${title} ${sayDay(day, today)}`),
  notNeeded: (title: string) => `${title}: not needed`,
  days: (count: number) => (count === 0 ? 'today' : plural(count, 'day', 'days')),
  /** Beside each line, where the column has no room for more. */
  actorShort: { manager: 'manager', technician: 'technician', sales: 'sales', outside: 'outside' },
  actor: { manager: 'manager', technician: 'technician', sales: 'sales', outside: 'somebody outside' },
} as const;

export const moneyText = {
  title: 'Targets and money',
  summary: 'What it costs',
  spent: 'Spent',
  committed: 'Committed',
  toCome: 'To come',
  total: 'Total',
  group: {
    purchase: 'Purchase price',
    fees: 'Fees',
    transport: 'Transport',
    parts: 'Parts',
    cores: 'Core charges out',
    labour: 'Labour',
    sublet: 'Sublet',
    codes: 'Code fees',
    other: 'Other',
    interest: 'Interest',
    overhead: 'Lot cost by the day',
  },
  purchaseAndFees: 'Purchase, fees, transport',
  reconditioning: 'Reconditioning',
  holding: 'Holding',
  committedAndToCome: 'Committed and to come',
  asking: 'Asking price',
  soldFor: 'Sold for',
  marginLeft: 'Margin if sold as it stands',
  marginExpected: 'Margin when finished',
  startingMargin: 'Margin at the start',
  marginUsed: 'Margin used so far',
  breakEven: 'Margin lasts until',
  breakEvenNever: 'not foreseeable',
  budget: 'Reconditioning budget',
  budgetLeft: 'Left of the budget',
  tradeValue: 'Trade value today',
  marginFloor: 'Least margin wanted',
  belowFloor: 'below the least margin wanted',
  missing: 'Not counted yet:',
  lines: (group: string) => `Lines of ${group}`,
  targets: 'Targets',
  figures: 'Figures by group',
  details: 'All figures',
} as const;
