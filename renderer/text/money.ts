// Words of Money: titles that say what was found, heads of tables, and the names of figures.
import type { MoneyView } from '../../app/contract/money-view.ts';
import { type Cents, showCents, sumCents } from '../../app/domain/shared/cents.ts';
import type { Day } from '../../app/domain/shared/day.ts';
import { plural } from '../../app/domain/shared/text.ts';
import { causesInOrder, standingNames } from '../../app/domain/time/cause.ts';
import type { TurnaroundKind } from '../../app/domain/time/turnaround-settings.ts';
import { budgetText } from './budget.ts';
import type { Purpose } from './purpose.ts';
import { sayDay, sayMonth } from './say-day.ts';

export const moneyPurpose: Purpose = {
  manager:
    'What the vehicles tie up, what falls due, and what was earned against the plan. Begin with the vehicles that should be let go and with the next payment.',
  technician: null,
  sales: null,
};

type Overview = MoneyView['overview'];

function dueFinding({ due, dueThrough, today }: Overview): string {
  const largest = [...due].sort((a, b) => b.cents - a.cents)[0];
  if (largest === undefined) return `No payment to a lender falls due before ${sayDay(dueThrough, today)}`;
  const total = showCents(sumCents(due.map(({ cents }) => cents)));
  const lateCents = sumCents(due.filter(({ dueOn }) => dueOn < today).map(({ cents }) => cents));
  if (lateCents > 0)
    return `${total} falls due to lenders by ${sayDay(dueThrough, today)}; ${showCents(lateCents)} of it is overdue: paid and not recorded, or owed`;
  return due.length === 1
    ? `${total} falls due to lenders by ${sayDay(dueThrough, today)}, all of it on ${sayDay(largest.dueOn, today)}`
    : `${total} falls due to lenders by ${sayDay(dueThrough, today)}; the most on one day, ${showCents(largest.cents)}, on ${sayDay(largest.dueOn, today)}`;
}

function ageingFinding({ ageing, open, tiedUpCents }: Overview): string {
  const half = Math.floor(ageing.length / 2);
  const old = ageing.slice(half);
  const vehicles = old.reduce((sum, band) => sum + band.vehicles, 0);
  const cents = sumCents(old.map((band) => band.tiedUpCents));
  const from = old[0]?.fromDays ?? 0;
  return `${vehicles} of ${plural(open, 'vehicle', 'vehicles')} held for ${from} days or more; ${showCents(cents)} of ${showCents(tiedUpCents)} in them`;
}

function causesFinding({ all }: Overview): string {
  const [most] = causesInOrder
    .filter((cause) => cause !== 'ready' && cause !== 'work')
    .sort((a, b) => (all.byCause[b] ?? 0) - (all.byCause[a] ?? 0));
  const wait = most === undefined ? '' : `; the most went to: ${standingNames[most]}, ${all.byCause[most] ?? 0}`;
  return `${all.idleDays} of ${plural(all.heldDays, 'day', 'days')} held were idle and cost ${showCents(all.idleCents)}${wait}`;
}

function soldFinding({ sold, measures }: Overview): string {
  if (sold.length === 0) return `Nothing was sold in the last ${measures.overDays} days`;
  const made = showCents(sumCents(sold.map(({ madeCents }) => madeCents)));
  const planned = sold.filter(({ plannedCents }) => plannedCents !== null);
  const less = planned.filter(({ earnedCents, plannedCents }) => earnedCents < (plannedCents ?? 0)).length;
  return `${plural(sold.length, 'vehicle', 'vehicles')} sold in ${measures.overDays} days left ${made}; before holding and tax ${less} of ${planned.length} earned less than planned`;
}

function letGoFinding({ letGo, notWeighed }: Overview): string {
  const rest =
    notWeighed === 0 ? '' : `; ${plural(notWeighed, 'vehicle', 'vehicles')} cannot be weighed for want of an input`;
  if (letGo.length === 0) return `No vehicle should be let go${rest}`;
  const better = showCents(sumCents(letGo.map(({ betterByCents }) => betterByCents)));
  return `${plural(letGo.length, 'vehicle', 'vehicles')} should be let go: better by ${better}${rest}`;
}

function budgetsFinding({ budgets }: Overview): string {
  const whole = budgets.find(({ group }) => group === null);
  if (whole === undefined) return 'No open vehicle has a reconditioning budget';
  const committed = whole.over.filter(({ isCommitted }) => isCommitted).length;
  const further = whole.over.length - committed;
  const worst = budgets
    .filter(({ group, leftCents }) => group !== null && leftCents < 0)
    .sort((a, b) => a.leftCents - b.leftCents)[0];
  const most =
    worst === undefined
      ? ''
      : `; the most over by group: ${budgetText.nameOf(worst.group)}, ${showCents(-worst.leftCents)}`;
  return `${committed} of ${plural(whole.vehicles, 'vehicle', 'vehicles')} with a budget ${committed === 1 ? 'is' : 'are'} over it, ${further} more will be${most}`;
}

function openFinding({ openVehicles, tiedUpCents, nextDayCents }: Overview): string {
  const [most] = openVehicles;
  if (most === undefined) return 'No vehicle is in stock';
  return `${showCents(tiedUpCents)} in stock costs ${showCents(nextDayCents)} a day to hold; the most is in ${most.stockNumber}, ${showCents(most.tiedUpCents)}`;
}

const kindNames: Readonly<Partial<Record<TurnaroundKind, string>>> = {
  arrival: 'arrival',
  part: 'part',
  code: 'code',
  sublet: 'sublet work',
  paper: 'paper',
};

function slowestFinding({ slowest }: Overview): string {
  const [first] = slowest;
  if (first === undefined) return 'Nobody outside has answered three times yet';
  return `The longest wait is for ${first.group} (${kindNames[first.kind] ?? first.kind}): ${first.medianDays} days in the middle case`;
}

export const moneyScreenText = {
  title: 'Money',
  onlyManagers: 'Only a manager sees the money of the fleet. Choose a manager at the top.',
  reading: 'Reckoning the fleet …',
  tryAgain: 'Try again',
  tiedUp: (cents: Cents, vehicles: number) =>
    `${showCents(cents)} in ${plural(vehicles, 'open vehicle', 'open vehicles')}`,
  figures: 'The fleet today',
  labels: {
    tiedUp: 'Tied up',
    owed: 'Owed to lenders',
    nextDay: 'One more day costs',
    idle: 'Idle days',
    daysSupply: 'Days’ supply',
    turn: 'Turn a year',
    daysToSell: 'Days to turn once',
    grossReturn: 'Gross return',
    backTest: 'Forecasts',
  },
  owed: (cents: Cents, onSold: Overview['owedOnSold']) =>
    onSold.vehicles === 0
      ? showCents(cents)
      : `${showCents(cents)}, ${showCents(onSold.cents)} of it on ${plural(onSold.vehicles, 'sold vehicle', 'sold vehicles')}`,
  measuresMadeOf: ({ inStock, sold, overDays, averageInventoryCents }: Overview['measures']) =>
    `${inStock} in stock; ${sold} sold in ${overDays} days; average stock at cost ${showCents(Math.round(averageInventoryCents))}.`,
  idle: (days: number, cents: Cents) => `${plural(days, 'day', 'days')}, ${showCents(cents)}`,
  measuresHint: (days: number) =>
    `Over the last ${days} days. Days’ supply: stock ÷ vehicles sold a day. Turn: cost of what was sold, brought to a year, ÷ average stock at cost. Gross return: gross profit of these days ÷ average stock.`,
  ratio: (value: number | null, decimals: number) => (value === null ? null : value.toFixed(decimals)),
  backTest: ({ cases, safeMet, likelyMet }: MoneyView['backTest']) =>
    cases === 0
      ? 'Too little history to test them'
      : `Of the dates given with 80 %, ${Math.round((100 * safeMet) / cases)} % were met; of those with 50 %, ${Math.round((100 * likelyMet) / cases)} % (${plural(cases, 'case', 'cases')})`,
  findings: {
    due: dueFinding,
    open: openFinding,
    ageing: ageingFinding,
    budgets: budgetsFinding,
    'days-by-cause': causesFinding,
    sold: soldFinding,
    'let-go': letGoFinding,
    slowest: slowestFinding,
  },
  names: {
    due: 'Due to lenders',
    open: 'What the figures of today are made of',
    ageing: 'How old the stock is',
    budgets: 'Reconditioning budgets of open vehicles',
    'days-by-cause': 'Where the days went, by month of purchase',
    sold: 'Margin earned against planned',
    'let-go': 'To be let go',
    slowest: 'The longest waits',
  },
  unit: {
    due: (currency: string) =>
      `${currency}, by the day; payments on principal if nothing is sold before, and what is still owed on sold vehicles`,
    open: (currency: string) => `${currency}; each vehicle opens to its own lines of cost`,
    budgets: (currency: string) =>
      `${currency}; of the vehicles that have such a budget. The bar is spent, committed and to come; the mark the budget`,
    ageing: (currency: string) => `${currency} tied up, by days held`,
    'days-by-cause': () => 'Days held of the vehicles bought in a month',
    sold: (currency: string) =>
      `${currency}, before holding and tax, which no plan names: the bar is what was earned, the mark what was planned (asking price less purchase and budget)`,
  },
  madeOf: (made: string, planned: string | null) => (planned === null ? made : `${made} of ${planned}`),
  table: 'The figures as a table',
  exportTable: 'Save as CSV',
  exportOf: (name: string) => `Save as CSV: ${name}`,
  exported: (fileName: string) => `${fileName} is in the folder “exports” of the fleet.`,
  showFolder: 'Show the folder',
  day: 'Day',
  amount: 'Amount',
  vehicle: 'Vehicle',
  what: 'What',
  daysHeld: 'Days held',
  vehicles: 'Vehicles',
  month: 'Month',
  idleCost: 'Idle days cost',
  soldOn: 'Sold',
  earned: 'Earned before holding and tax',
  holding: 'Holding',
  tax: 'Tax',
  made: 'Left',
  planned: 'Planned',
  budget: 'Budget',
  group: 'Group',
  spent: 'Spent',
  committed: 'Committed',
  toCome: 'To come',
  left: 'Left of it',
  over: 'Over',
  tiedUpHead: 'Tied up',
  owedHead: 'Owed to the lender',
  nextDayHead: 'One more day',
  overdue: (day: string) => `${day}, overdue`,
  betterBy: 'Better by',
  who: 'Who',
  kind: 'For',
  cases: 'Cases',
  middle: 'Middle case, days',
  longest: 'Longest, days',
  late: 'After the promise',
  lateOf: (late: number, promised: number) => (promised === 0 ? '–' : `${late} of ${promised}`),
  band: (from: number, to: number | null) => (to === null ? `${from} days and more` : `${from}–${to} days`),
  monthOf: sayMonth,
  causeDays: (cause: (typeof causesInOrder)[number], days: number) => `${standingNames[cause]} ${days}`,
  kindNames,
  sayDay: (day: Day, today: Day) => sayDay(day, today),
} as const;
