// Words of the Lot.
import { plural } from '../../app/domain/shared/text.ts';
import type { Purpose } from './purpose.ts';

export const lotPurpose: Purpose = {
  manager:
    'Every vehicle, where its days went and what it waits for. Begin with the longest wait, at the top: open the vehicle to see whose move it is.',
  technician:
    'Every vehicle and what it waits for. Open one to enter scans, parts and work; what can be done now is on Next jobs.',
  sales:
    'The vehicles whose repair has been proven. Open one to see what was found and done, and what a buyer must be told.',
};

export const lotText = {
  title: 'Lot',
  search: 'Search the lot',
  searchHint: 'Stock number, VIN, make, model, colour, place, key tag',
  spanLabel: 'Days shown',
  spans: { 'six-weeks': '6 weeks', 'three-months': '3 months', 'six-months': '6 months' },
  takeIn: 'Take in a vehicle',
  onlyManagersTakeIn: 'Only a manager takes vehicles in. Choose a manager at the top.',
  filter: 'Show only what stands at',
  showAll: 'Show all',
  legendEven: 'margin used up',
  legendEvenTip: 'From this day on the expected margin is negative if nothing but holding is added.',
  legendForecast: 'ready: likely, 80 %',
  legendForecastTip:
    'Hollow: until the day by which it is ready in half of the runs of the forecast; the narrow part until the day of 80 in 100. Where nothing is forecast: until what is waited for is expected.',
  legendPayment: 'due to the lender',
  legendPaymentTip: 'A payment on the principal that the funding plan asks for while the vehicle is unsold.',
  caption: (sorted: string) => `Vehicles of the lot, one row each. ${sorted}`,
  columns: {
    stock: 'Stock no.',
    vehicle: 'Vehicle',
    standing: 'Waits for',
    strip: 'Days held, by cause',
    held: 'Held days',
    spent: 'Spent',
    left: 'Margin left',
    expected: 'Margin at end',
    move: 'Next move',
  },
  columnTips: {
    stock: 'Stock number',
    vehicle: 'Year, make, model; end of the VIN; place; key tag',
    standing: 'What it waits for, and for how many days. The longest first; ready and sold come last.',
    held: 'Days from the purchase to today or to the sale',
    spent: 'Spent so far: purchase, work and holding',
    left: 'Price less everything spent so far',
    expected: 'Price less everything spent, ordered and still to come',
    move: 'Whose move it is, and what',
  },
  longestFirst: 'longest first',
  longestLast: 'longest last',
  since: (days: number) => `${days} d`,
  sinceTip: (days: number, since: string) => `${plural(days, 'day', 'days')}, since ${since}`,
  overdue: (days: number) => `${plural(days, 'day', 'days')} late`,
  expectedOn: (day: string) => `expected on ${day}`,
  key: (tag: string) => `key ${tag}`,
  open: (stockNumber: string, title: string) => `${stockNumber}, ${title}`,
  totals: (count: number) => plural(count, 'vehicle', 'vehicles'),
  tiedUp: 'tied up',
  idleOfHeld: (idle: number, held: number) => `${idle} of ${held} days held were idle`,
  found: (count: number) => (count === 0 ? 'No vehicle found.' : `${plural(count, 'vehicle', 'vehicles')} shown.`),
  foundAmongSold: (count: number) => `${plural(count, 'more', 'more')} among the sold`,
  showSold: 'Show the sold',
  nothingFound: (search: string) => `Nothing in this view matches “${search}”.`,
  nothingOfStanding: 'No vehicle stands at what is chosen above.',
  emptyNew:
    'This fleet is new. Fill in the dealer, the rates and the people first; then take the first vehicle in. All of it can be changed later.',
  goToSetup: 'Go to Setup',
  emptyManager: 'No vehicle yet. Take the first one in: its VIN, its price and the day it was bought are enough.',
  emptyTechnician: 'No vehicle yet. A manager takes them in; they are listed here as soon as they are.',
  emptySales: 'No vehicle has been proven yet. It is listed here as soon as its repair has been checked.',
  reading: 'Reading the lot …',
  soldToCome: (count: number) => `${count.toLocaleString('en')} sold vehicles are still being read …`,
  tryAgain: 'Try again',
} as const;
