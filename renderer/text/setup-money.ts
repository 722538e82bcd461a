// Words of the sections of Setup about money terms and time.
import type { DayCount } from '../../app/domain/money/day-count.ts';
import { dayCountNames } from '../../app/domain/money/day-count.ts';
import type { Curtailment } from '../../app/domain/money/funding-plan.ts';
import type { TaxRounding } from '../../app/domain/money/margin-tax.ts';
import type { Day } from '../../app/domain/shared/day.ts';
import type { TurnaroundKind, TurnaroundSettings } from '../../app/domain/time/turnaround-settings.ts';
import { sayWholeDay } from './say-day.ts';

export const setupMoneyText = {
  plansHint:
    'The terms under which a lender pays for vehicles, as its contract has them. The purchase of a vehicle names its plan; without one it is bought with own money.',
  noPlans: 'No plan. Every vehicle is bought with own money, at the interest under Rates.',
  addPlan: 'Add a plan',
  planName: 'Name of the plan',
  planOf: (name: string) => `Plan ${name}`,
  advance: 'Lent, of the purchase price',
  rate: 'Interest a year',
  dayCount: 'Counts days by',
  dayCounts: dayCountNames satisfies Record<DayCount, string>,
  freeDays: 'Days free of interest',
  drawFee: 'Fee for each vehicle',
  payoff: 'Working days to pay off after a sale',
  payoffHint: 'Empty: the contract does not say.',
  rateChanges: 'The rate changed',
  addRateChange: 'Add a change of the rate',
  from: 'from',
  curtailments: 'Curtailments: payments on the principal while unsold',
  addCurtailment: 'Add a curtailment',
  curtailmentKind: 'Pays',
  curtailmentKinds: {
    'percent-of-original': 'part of the original principal',
    'percent-of-balance': 'part of the balance',
    amount: 'an amount',
  } satisfies Record<Curtailment['kind'], string>,
  value: 'How much',
  dayMark: 'Days after the draw',
  every: 'Again every',
  everyHint: 'Empty: once.',
  unit: 'Unit',
  units: { days: 'days', months: 'months' },
  floorOriginal: 'Curtailments stop at, of the original principal',
  floorWholesale: 'and of the trade value',
  floorHint: 'The lesser of the two counts. Both empty: no floor.',
  numbered: (label: string, place: number) => `${label}, row ${place}`,
  remove: 'Remove',
  removePlan: (name: string) => `Remove plan ${name}`,
  removeRow: (what: string, place: number) => `Remove ${what} ${place}`,
  percent: '%',

  taxKind: 'Tax',
  taxKinds: { none: 'none in the price', 'on-margin': 'on the margin of each vehicle' },
  taxRate: 'Rate',
  taxRateHint:
    'Of the price without tax: 20 % takes a sixth of the margin. Repairs do not lower the margin; a loss pays none.',
  rounding: 'Rounded',
  roundings: {
    nearest: 'to the nearest cent',
    'nearest-even': 'to the nearest cent, halves to the even one',
    down: 'down',
  } satisfies Record<TaxRounding, string>,
  taxHint: 'Which scheme applies is for you and who advises you on tax.',

  retailCost: 'Cost of a retail sale',
  tradeCost: 'Cost of a sale to the trade',
  daysToSell: 'Days from ready to sold',
  daysToSellHint: 'Empty: the middle one of your own sales.',
  daysToTrade: 'Days until a vehicle sold to the trade is gone',
  sellingHint:
    'Needed to weigh finishing a vehicle against letting it go. What is missing is asked for there; nothing is guessed.',

  weekdays: ['Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday', 'Sunday'],
  workHours: 'Working time in a day',
  hours: 'hours',
  holidays: 'Holidays',
  holidaysHint: (today: Day) =>
    `One day to a line, as ${sayWholeDay(`${today.slice(0, 4)}-12-25`)}. No country’s holidays are known by themselves.`,
  calendarHint: 'Forecasts let work happen on these days only.',

  fewestCases: 'A supplier’s own history counts from',
  cases: 'cases',
  turnaroundHint:
    'What a forecast takes where your own history has too few cases. With more history these numbers matter less and less.',
  kinds: {
    arrival: 'Bought to arrived',
    inspect: 'Arrived to scanned',
    unseen: 'Scanned to all work done',
    decide: 'Found to decided',
    fault: 'Decided to done, whole fault',
    order: 'Needed to ordered',
    part: 'Part ordered to received',
    ask: 'Code needed to asked for',
    code: 'Code asked for to answered',
    send: 'Sublet noted to sent',
    sublet: 'Sublet sent to back',
    programming: 'All in hand to programmed',
    repair: 'All in hand to repaired',
    verify: 'Repaired to proven',
    present: 'Proven to presented',
    paper: 'Bought to paper received',
  } satisfies Record<TurnaroundKind, string>,
  minutes: {
    inspect: 'Scan on arrival',
    repair: 'A repair nobody estimated',
    step: 'A step of programming',
    fit: 'Fitting a part',
    verify: 'Proving the work',
    present: 'Cleaning and photographs',
  } satisfies Record<keyof TurnaroundSettings['minutes'], string>,
  days: 'days',
  workDays: 'working days',
  minutesUnit: 'min',
  waits: 'Waits',
  work: 'Work',

  bandsHint: 'The last day held that belongs to each band. One more, without an end, follows.',
  band: (place: number) => `Band ${place} ends with day`,
  addBand: 'Add a band',
  removeBand: 'Remove the last band',

  lossHint:
    'The part of its asking price that a vehicle loses with the days held, straight lines in between. Your own reading of your market; without points nothing is lost.',
  noLoss: 'No curve. A vehicle is taken to keep its asking price.',
  heldDays: 'After days held',
  lost: 'Lost',
  addPoint: 'Add a point',
  point: 'point',
} as const;
