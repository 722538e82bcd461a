// Words of the forecast and of finishing or letting go.

import { showCents } from '../../app/domain/shared/cents.ts';
import type { Day } from '../../app/domain/shared/day.ts';
import { plural } from '../../app/domain/shared/text.ts';
import type { Forecast, ForecastItem } from '../../app/domain/time/forecast.ts';
import { sayDay, sayDistance } from './say-day.ts';

function basisWords({ basis }: ForecastItem): string {
  if (basis === null) return 'work in the hours of the shop';
  const { group, cases } = basis;
  const whose = group === 'all' ? 'all of the shop' : group;
  switch (basis.basis) {
    case 'turnaround':
      return `${plural(cases, 'earlier case', 'earlier cases')}, ${whose}`;
    case 'promises':
      return `how ${plural(cases, 'earlier promise was', 'earlier promises were')} kept, ${whose}`;
    case 'promise':
      return 'the promise, taken at its word';
    case 'setting':
      return 'a setting; too few earlier cases';
  }
}

export const prospectText = {
  ready: 'Ready',
  readyWords: (likelyOn: Day, safeOn: Day, today: Day) =>
    likelyOn === safeOn
      ? sayDay(likelyOn, today)
      : `${sayDay(likelyOn, today)} likely, ${sayDay(safeOn, today)} safely`,
  readyToCome: 'worked out when the sold vehicles have been read',
  likelyTip: 'Likely: in half of the runs of the forecast. Safely: in 80 of 100.',
  decides: ({ what, decides }: ForecastItem, runs: number) =>
    `most often decided by ${what} (${Math.round((100 * decides) / runs)} %)`,
  madeOf: 'What the forecast is made of',
  runs: ({ runs }: Forecast) =>
    `${runs} runs, with waits drawn from this shop’s own history. What nobody has found yet is in it only as far as earlier vehicles had it too.`,
  item: 'Open item',
  decidesHead: 'Decides the day',
  onChainHead: 'On the way that ends last',
  basisHead: 'Rests on',
  courseHead: 'With each wait at its middle',
  roomHead: 'May slip by',
  course: (readyOn: Day, today: Day) =>
    `With every wait at its middle value it would be ready ${sayDay(readyOn, today)}; what may slip by no day is on the critical path.`,
  courseDays: (from: Day, to: Day, today: Day) =>
    from === to ? sayDay(from, today) : `${sayDay(from, today)} to ${sayDay(to, today)}`,
  room: ({ floatDays, isCritical }: { readonly floatDays: number; readonly isCritical: boolean }) =>
    isCritical ? 'no day' : plural(Math.floor(floatDays + 1e-9), 'day', 'days'),
  share: (count: number, runs: number) => `${Math.round((100 * count) / runs)} %`,
  basisWords,

  title: 'Finish or let go',
  finish: 'Finish and sell',
  letGo: 'Sell to the trade now',
  verdict: (verdict: 'finish' | 'let-go' | 'even', cents: number) =>
    verdict === 'even'
      ? 'Both come out the same.'
      : verdict === 'finish'
        ? `Finish it: that leaves ${showCents(cents)} more than selling it to the trade now.`
        : `Let it go: finishing leaves ${showCents(-cents)} less than selling it to the trade now.`,
  spendRoom: 'May still be spent on top',
  daysRoom: 'May be ready later by',
  days: (days: number | null, by: Day | null, today: Day) =>
    days === null
      ? 'any number of days'
      : `${plural(days, 'day', 'days')}${by === null ? '' : `, ready by ${sayDay(by, today)}`}`,
  saleOn: 'Expected sale',
  saleWords: (saleOn: Day, days: number, cases: number, today: Day) =>
    `${sayDay(saleOn, today)}, ${sayDistance(saleOn, today)}: ${plural(days, 'day', 'days')} after it is ready, ${
      cases === 0 ? 'by the setting' : `the middle one of ${plural(cases, 'own sale', 'own sales')}`
    }`,
  marginAtSale: 'Margin then',
  nextDay: 'One more day costs',
  result: 'Result',
  on: (day: Day, today: Day) => `sold ${sayDay(day, today)}`,
  sensitivity: 'If price or date move: what finishing leaves, against letting go',
  asking: (percent: number) =>
    percent === 0 ? 'asking price as it is' : `asking price ${percent > 0 ? '+' : '−'}${Math.abs(percent)} %`,
  readyMoved: (days: number) =>
    days === 0 ? 'ready as forecast' : `${Math.abs(days)} days ${days > 0 ? 'later' : 'earlier'}`,
  verdictWord: { finish: 'finish', 'let-go': 'let go', even: 'even' },
  missing: 'To weigh it, these are missing:',
  tax: 'Tax on the margin',
  writeDown: 'Above what it can bring',
  writeDownTip:
    'Cost of purchase and reconditioning above the expected price less what is still to be spent and the cost of selling: the lower of cost and net realisable value.',
  balance: 'Owed to the lender',
  nextPayment: (cents: number, day: Day, today: Day) => `${showCents(cents)} due ${sayDay(day, today)}`,
} as const;

export const whatIfText = {
  title: 'Try out',
  hint: 'Nothing is kept until you press Keep; then it is the same as entering it where it belongs.',
  asking: 'Asking price',
  extra: 'One more cost',
  extraWhat: 'What for',
  wait: 'Comes on another day',
  expectedOn: 'Expected on',
  fault: 'Decide otherwise about',
  decision: 'Decision to try',
  reason: 'Why it is left',
  asItIs: 'as it is',
  now: 'Now',
  changed: 'Then',
  margin: 'Margin when finished',
  notWeighed: 'cannot be weighed',
  keep: 'Keep',
  putBack: 'Put back',
  nothingTried: 'Nothing is being tried out.',
  mayNotKeep: 'Nothing can be changed here now.',
} as const;
