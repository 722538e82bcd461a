// Words of taking in a purchase list.
import type { ListFact } from '../../app/domain/import/list-columns.ts';
import type { ListEncoding } from '../../app/domain/import/list-text.ts';
import type { DayForm, DecimalForm } from '../../app/domain/import/value-forms.ts';
import { plural } from '../../app/domain/shared/text.ts';
import type { Purpose } from './purpose.ts';

export const importListPurpose: Purpose = {
  manager:
    'Takes a purchase list in as one act: a CSV file as an auction or a spreadsheet writes it. Choose the file first; nothing is taken in before you press the button at the foot, and one undo takes the whole list back.',
  technician: null,
  sales: null,
};

export const factNames: Readonly<Record<ListFact, string>> = {
  vin: 'VIN',
  stockNumber: 'Stock number',
  modelYear: 'Model year',
  make: 'Make',
  model: 'Model',
  body: 'Body',
  colour: 'Colour',
  odometer: 'Odometer',
  boughtOn: 'Bought on',
  source: 'Bought from',
  price: 'Price',
  fees: 'Fees',
  transport: 'Transport',
  asking: 'Asking price',
  arrivedOn: 'Arrived on',
  expectedOn: 'Expected on',
  location: 'Where it stands',
  keyTag: 'Key tag',
  keysReceived: 'Keys received',
};

export const decimalFormNames: Readonly<Record<DecimalForm, string>> = {
  point: '1,234.50',
  comma: '1.234,50',
};
export const dayFormNames: Readonly<Record<DayForm, string>> = {
  'year-first': 'year, month, day',
  'day-first': 'day, month, year',
  'month-first': 'month, day, year',
};

const encodingNames: Readonly<Record<ListEncoding, string>> = {
  'utf-8': 'UTF-8',
  'utf-16le': 'UTF-16',
  'utf-16be': 'UTF-16',
  'windows-1252': 'Windows-1252',
};
const separatorNames: Readonly<Record<string, string>> = {
  ',': 'commas',
  ';': 'semicolons',
  '\t': 'tabs',
  '|': 'upright strokes',
};

export const importListText = {
  title: 'Take in a purchase list',
  choose: 'Choose a CSV file',
  orDrop: 'or drop it here.',
  another: 'Choose another file',
  onlyManager: 'Only the manager takes vehicles in. Choose the manager at the top, or ask.',
  readOnly: 'The fleet is open for reading only. The line at the foot of the window says why.',
  tooLarge: 'This file is larger than 5 MB, which no purchase list is. Leave out what is not needed and save it again.',
  noText: 'This is no text. Save the list as CSV in the program that made it, then choose that file.',
  notRead: 'The file could not be read. Is it open in another program? Close it there and choose it again.',
  about: (fileName: string, rows: number, encoding: ListEncoding, separator: string) =>
    `${fileName}: ${plural(rows, 'row', 'rows')}, ${encodingNames[encoding]}, columns separated by ${separatorNames[separator] ?? separator}.`,
  remembered: 'The columns are matched as you did for the same head line before.',
  columns: 'What the columns mean',
  column: 'Column',
  examples: 'First values',
  meaning: 'Means',
  writtenAs: 'Written as',
  unused: 'not used',
  meaningOf: (header: string) => `Meaning of the column ${header}`,
  writtenIn: (header: string) => `How the column ${header} is written`,
  nameless: (place: number) => `column ${place}`,
  rest: 'What the list does not say',
  boughtOn: 'Bought on, where no day is given',
  odometerUnit: 'Odometers are in',
  numbersStock: 'Number rows without a stock number',
  vinReason: 'Reason to keep a VIN that is missing or fails its check digit',
  vinReasonHint: 'Stands at every row that needs one',
  rows: 'Rows',
  good: (count: number) => `${plural(count, 'row', 'rows')} can be taken in.`,
  bad: (count: number) => (count === 0 ? '' : `${plural(count, 'row has', 'rows have')} something against it.`),
  onlyBad: 'Show only rows with something against them',
  grid: 'Rows of the list. Arrow keys move, Space takes a row in or leaves it out, Ctrl with an arrow goes to the next row with something against it.',
  nextBad: 'Next with something against it',
  previousBad: 'Previous',
  previousBadLabel: 'Previous row with something against it',
  take: 'Take in',
  row: 'Row',
  vehicle: 'Vehicle',
  price: 'Price',
  against: 'What stands against it',
  chooseRow: (row: number) => `Take in row ${row}`,
  chooseAll: 'All good rows',
  chooseNone: 'None',
  takeIn: (count: number) => `Take in ${plural(count, 'vehicle', 'vehicles')}`,
  nothingChosen: 'No good row is chosen.',
  taking: (count: number) => `Taking in ${plural(count, 'vehicle', 'vehicles')}…`,
  taken: (count: number) => `${plural(count, 'vehicle was', 'vehicles were')} taken in.`,
  undo: 'Undo',
  leftTitle: 'Not taken in',
  left: (count: number, taken: readonly string[]) =>
    `${plural(count, 'row was', 'rows were')} not taken in. ${
      taken.length === 0 ? 'None was.' : `Taken in: ${taken.join(', ')}.`
    }`,
  toLot: 'To the Lot',
  takeInOne: 'Take in a single vehicle',
} as const;
