// Words of Waiting: the list of what is owed from outside, how its cost is shared, and the dialog in which a chase is written down.
import type { ProviderTurnaround, WaitingLineView, WaitingView } from '../../app/contract/waiting-view.ts';
import type { AskWay } from '../../app/domain/codes/request-facts.ts';
import { showCents } from '../../app/domain/shared/cents.ts';
import { type Day, daysBetween } from '../../app/domain/shared/day.ts';
import { plural } from '../../app/domain/shared/text.ts';
import { standingNames } from '../../app/domain/time/cause.ts';
import type { Purpose } from './purpose.ts';
import { sayDay, sayDaysIn, sayDistance } from './say-day.ts';

type Line = WaitingLineView;

const forWorkshop =
  'Every part, code and sublet work that was asked for and is not here. Begin with what is to be chased today; C writes a chase down.';
export const waitingPurpose: Purpose = { manager: forWorkshop, technician: forWorkshop, sales: null };

const kindNames: Readonly<Record<Line['kind'], string>> = { part: 'part', code: 'code', sublet: 'sublet work' };
const kindsNames: Readonly<Record<Line['kind'], string>> = { part: 'parts', code: 'codes', sublet: 'sublet work' };

export const chaseWays: Readonly<Record<AskWay, string>> = {
  phone: 'By phone',
  letter: 'By letter',
  portal: 'Through a portal',
  'in-person': 'In person',
};

const wayInSentence: Readonly<Record<AskWay, string>> = {
  phone: 'by phone',
  letter: 'by letter',
  portal: 'through a portal',
  'in-person': 'in person',
};

function of(line: Line): string {
  const cases =
    line.kind === 'sublet'
      ? plural(line.expected.cases, 'job', 'jobs')
      : plural(line.expected.cases, kindNames[line.kind], kindsNames[line.kind]);
  switch (line.expected.among) {
    case 'provider-and-kind':
      return `${cases} of this kind from ${line.provider}`;
    case 'provider':
      return line.kind === 'sublet' ? `${cases} at ${line.provider}` : `${cases} from ${line.provider}`;
    case 'kind':
      return `${cases} of this kind`;
    case 'all':
      return `${cases}, whoever ${line.kind === 'sublet' ? 'did them' : 'sent them'}`;
  }
}

/** What the expected day rests on. */
function basis(line: Line): string {
  switch (line.expected.basis) {
    case 'turnaround':
      return `by ${of(line)}`;
    case 'promises':
      return `by promises of ${of(line)}`;
    case 'promise':
      return 'the promise; no history of promises';
    case 'setting':
      return 'by the setting; too few cases';
  }
}

function decides(line: Line): string {
  if (line.decides === 'alone') return 'Holds the vehicle';
  if (line.decides === 'together') return 'Holds it with others';
  return `Held longer by: ${standingNames[line.decidedBy.cause]}`;
}

function besides({ besides: others, decides: place, decidedBy, isInWork }: Line): string {
  const count = others.length;
  const first = place === 'not' ? decidedBy.what : (others[0]?.what ?? '');
  const more = place === 'not' ? count - 1 : count - (first === '' ? 0 : 1);
  const waits = first === '' ? 'nothing else' : more > 0 ? `${first} and ${more} more` : first;
  return isInWork ? `in work today; ${waits}` : place === 'not' ? waits : `besides: ${waits}`;
}

function turnaround({
  medianDays,
  eightiethDays,
  cases,
  late,
  promised,
}: Omit<ProviderTurnaround, 'provider' | 'kind' | 'codeKind'>): string {
  const kept = promised === 0 ? '' : `, ${late} of ${plural(promised, 'promise', 'promises')} not kept`;
  return `usually ${plural(medianDays, 'day', 'days')}, four of five within ${eightiethDays} (${plural(cases, 'case', 'cases')}${kept})`;
}

export const waitingText = {
  title: 'Waiting',
  onlyWorkshop: 'This list is for the workshop and the manager. Choose one of them at the top.',
  reading: 'Reading what is owed …',
  tryAgain: 'Try again',
  nothing: 'Nothing is owed: no part is ordered, no code asked for and no work sent out that is not here.',
  found: (lines: number, vehicles: number) =>
    `${plural(lines, 'thing', 'things')} asked for and not here, for ${plural(vehicles, 'vehicle', 'vehicles')}.`,
  toChase: (count: number) => (count === 0 ? 'None is to be chased today.' : `${count} to be chased today.`),
  money: ({ dayCents, sharedCents }: WaitingView, currency: string) =>
    dayCents === null || sharedCents === null
      ? ''
      : `Another day costs these vehicles ${showCents(dayCents)} ${currency}; ${showCents(sharedCents)} of it is decided by what is listed here.`,
  howOrdered:
    'First what costs most to wait for another day, then what is longest overdue. Each vehicle’s day is counted once and borne by what is expected last, as in the days held; where several have no promise that stands, or the same last one, each bears an equal part, because the vehicle goes on only when all of them are here.',
  howOrderedWithoutMoney:
    'First what costs most to wait for another day, then what is longest overdue. Each vehicle’s day counts once, for what is expected last.',
  views: 'Order',
  byCost: 'By cost',
  byProvider: 'By provider',
  save: 'Save as CSV',
  saved: (fileName: string) => `${fileName} is in the folder “exports” of the fleet.`,
  showFolder: 'Show the folder',
  caption: 'What was asked for and is not here. Arrow keys move, Enter opens the vehicle, C writes down a chase.',
  columns: {
    vehicle: 'Vehicle',
    what: 'Waits for',
    since: 'Asked',
    promised: 'Promised',
    expected: 'By own history',
    chase: 'Chase next',
    holds: 'The vehicle',
    cost: 'Another day',
  },
  open: ({ stockNumber, title, what }: Line) => `${stockNumber}, ${title}: ${what}`,
  from: ({ provider, kind }: Line) => (provider === '' ? `${kindNames[kind]}, nobody named` : provider),
  kindNames,
  waited: (days: number) => (days === 0 ? 'today' : plural(days, 'day', 'days')),
  since: (day: Day, today: Day) => sayDay(day, today),
  noPromise: 'no day',
  overdue: (days: number) => `${plural(days, 'day', 'days')} over`,
  inDays: (day: Day, today: Day) => sayDistance(day, today),
  expected: ({ expected }: Line, today: Day) =>
    expected.safeOn === expected.likelyOn
      ? sayDay(expected.likelyOn, today)
      : `${sayDay(expected.likelyOn, today)}, by ${sayDay(expected.safeOn, today)}`,
  expectedTip: ({ expected }: Line, today: Day) =>
    `In half of the cases by ${sayDay(expected.likelyOn, today)}, in 80 of 100 by ${sayDay(expected.safeOn, today)}`,
  basis,
  chaseOn: (day: Day, today: Day) => (day <= today ? 'today' : `${sayDay(day, today)}, ${sayDistance(day, today)}`),
  why: (why: string, today: Day) => sayDaysIn(why, today),
  lastChase: ({ lastChase, chases }: Line, today: Day) =>
    lastChase === null
      ? ''
      : `chased ${plural(chases, 'time', 'times')}, last ${sayDay(lastChase.chasedOn, today)} ${wayInSentence[lastChase.how]}`,
  decides,
  besides,
  besidesTip: ({ besides: others }: Line) =>
    others.map(({ cause, what }) => `${standingNames[cause]}: ${what}`).join('\n'),
  share: ({ shareCents }: Line) => (shareCents === null ? '' : showCents(shareCents)),
  ofDay: ({ dayCents, shareCents }: Line) =>
    dayCents === null || shareCents === dayCents ? '' : `of ${showCents(dayCents)}`,
  nobody: 'Nobody named',
  provider: (count: number, vehicles: number) =>
    `${plural(count, 'thing', 'things')} for ${plural(vehicles, 'vehicle', 'vehicles')}`,
  providerChase: (day: Day, today: Day) => (day <= today ? 'chase today' : `chase ${sayDay(day, today)}`),
  turnaround,
  turnaroundFor: (kind: ProviderTurnaround['kind'], codeKind: string) => codeKind || kindsNames[kind],
  more: (count: number) => `Show more: ${plural(count, 'line', 'lines')} not drawn`,
  howLong: 'How long they take',
  howLongHint:
    'Of those who owe something now: calendar days from asking to having it, over finished cases of this fleet.',
  noHistory: 'None of them has finished anything for this fleet yet.',
  turnaroundColumns: {
    provider: 'Who',
    kind: 'For',
    median: 'Middle case, days',
    eightieth: 'Four of five within, days',
    cases: 'Cases',
    late: 'After the promise',
  },
  lateOf: (late: number, promised: number) => (promised === 0 ? '–' : `${late} of ${promised}`),
  chase: 'Chase',
  chaseFor: ({ what, stockNumber }: Line) => `Chase: ${what}, ${stockNumber}`,
  mayNotChase: 'Only the manager writes down a chase of this. Ask the manager.',
  dialog: ({ what, provider }: Line) => (provider === '' ? `Chased: ${what}` : `Chased ${provider}: ${what}`),
  dialogAbout: ({ stockNumber, title, askedOn, promisedOn }: Line, today: Day) =>
    `${stockNumber} ${title}. Asked ${sayDay(askedOn, today)}, ${
      promisedOn === null ? 'no day promised' : `promised for ${sayDay(promisedOn, today)}`
    }.`,
  chasedOn: 'Chased on',
  how: 'How',
  newPromise: 'Now promised for',
  newPromiseHint: 'Empty where no day was named',
  note: 'What was said',
  record: 'Write it down',
  recorded: ({ what, stockNumber }: Line) => `Chased: ${what}, ${stockNumber}.`,
  gone: 'This is no longer waited for: somebody changed it meanwhile. Close this and look at the list again.',
  ways: chaseWays,
  sinceDays: (from: Day, to: Day) => daysBetween(from, to),
} as const;
