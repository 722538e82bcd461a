// Words of taking a vehicle in.
import type { Purpose } from './purpose.ts';

export const takeInPurpose: Purpose = {
  manager:
    'Begins the record of a vehicle. Type the VIN first; with it the price and the day of the purchase are enough, and the rest may wait.',
  technician: null,
  sales: null,
};

export const takeInText = {
  title: 'Take a vehicle in',
  takeInList: 'Take in a purchase list…',
  keys: 'Enter goes to the next field, Ctrl+Enter takes it in.',
  which: 'Which vehicle',
  stockNumber: 'Stock number',
  stockNumberHint: 'The next in the row is filled in',
  modelYear: 'Model year',
  make: 'Make',
  model: 'Model',
  body: 'Body',
  colour: 'Colour',
  drive: 'Drive',
  odometer: 'Odometer',
  keyTag: 'Key tag',
  location: 'Where it stands',
  purchase: 'Purchase',
  boughtOn: 'Bought on',
  source: 'Bought from',
  price: 'Price',
  fees: 'Fees',
  transport: 'Transport',
  fundingPlan: 'Paid with',
  ownMoney: 'own money',
  askingPrice: 'Asking price',
  askingHint: 'May wait',
  comes: 'Arrival, paper, keys',
  isHere: 'It is here already',
  arrivedOn: 'Arrived on',
  expectedOn: 'Expected on',
  paperKind: 'Paper is called',
  paperIsHere: 'The paper is here',
  paperExpectedOn: 'Paper expected on',
  keysReceived: 'Keys received',
  takeIn: 'Take it in',
  startAgain: 'Empty the form',
  taken: (stockNumber: string, title: string) => `${stockNumber} ${title} was taken in.`,
  vinTaken: (stockNumber: string) =>
    `This VIN is in the lot already, as stock number ${stockNumber}. Open that vehicle, or correct the VIN.`,
  openOther: (stockNumber: string) => `Open ${stockNumber}`,
  onlyManager: 'Only the manager takes a vehicle in. Choose the manager at the top, or ask.',
  readOnly: 'The fleet is open for reading only. The line at the foot of the window says why.',
} as const;
