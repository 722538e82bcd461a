// Words of code requests: how each stands, what is next, and the fields of its life. Never a code.
import type { AskWay } from '../../app/domain/codes/request-facts.ts';
import type { Day } from '../../app/domain/shared/day.ts';
import { plural } from '../../app/domain/shared/text.ts';
import { showMoment } from './instant.ts';
import { sayDay, sayDaysIn } from './say-day.ts';

const tries = (left: number | null) => (left === null ? '' : `, ${plural(left, 'try', 'tries')} left`);

export const codeText = {
  add: 'Add code request',
  empty: 'No code asked for.',
  neverTheCode: 'No code is written into a request, ever: it is kept in the vault, or where the shop keeps it.',
  code: 'Asked for',
  kind: 'Kind',
  goneKind: (name: string) => `${name} (no longer in the settings)`,
  module: 'Module',
  deviceSerial: 'Serial number of the unit',
  reason: 'What it is needed for',
  fault: 'For the fault',
  whatIsAsked: 'What is asked for',
  proof: 'Proof of ownership',
  document: 'Document seen',
  documents: ['Auction invoice', 'Purchase invoice', 'Title', 'Registration'],
  checkedOn: 'Checked on',
  checkedBy: 'Checked by',
  proofMissing: 'no proof yet',
  printLetter: 'Print letter',
  proofFirst: 'First of all: without it the code may be neither asked for nor a letter printed.',
  notedOn: 'Noted on',
  asking: 'Asked',
  askedOn: 'Asked on',
  askedOf: 'Asked of',
  askedHow: 'How',
  ways: {
    phone: 'by telephone',
    letter: 'by letter',
    portal: 'in a portal',
    'in-person': 'in person',
  } satisfies Record<AskWay, string>,
  noWay: 'not said',
  credential: 'Credential used',
  credentialHint: 'Number or name. Never a password.',
  expectedOn: 'Expected on',
  answer: 'Answer',
  answeredOn: 'Answered on',
  outcome: 'Answer',
  outcomes: { given: 'Given', refused: 'Refused' },
  noAnswer: 'No answer yet',
  fee: 'Fee',
  keptWhere: 'Where the code is kept',
  note: 'Note',
  state: 'State',
  next: 'Next',
  quick: {
    asked: 'Asked today',
    chased: 'Chased today',
    given: 'Given today',
    refused: 'Refused today',
    right: 'Worked',
    wrong: 'Did not work',
    closed: 'Close',
  },

  states: {
    toAsk: 'to ask',
    proofFirst: 'proof of ownership first',
    asked: (day: string) => `asked ${day}`,
    chased: (day: string, times: number) => `chased ${day}${times > 1 ? `, the ${ordinal(times)} time` : ''}`,
    given: (day: string, left: number | null) => `given ${day}, not tried${tries(left)}`,
    refused: (day: string) => `refused ${day}`,
    wrong: (day: string, left: number | null) => `does not work, tried ${day}${tries(left)}`,
    locked: (until: string | null) =>
      until === null ? 'unit locked; how long it did not say' : `unit locked until ${showMoment(until)}`,
    right: (day: string) => `works, ${day}`,
    closed: (day: string, why: string) => `closed ${day}${why === '' ? '' : `: ${why}`}`,
  },

  chaseOn: (on: Day, today: Day) => (on <= today ? 'chase today' : `chase ${sayDay(on, today)}`),
  chaseWhy: (why: string, today: Day) => sayDaysIn(why, today),
  usual: ({ medianDays, eightiethDays, cases, among }: UsualWords) =>
    `half in ${plural(medianDays, 'day', 'days')}, 80 % in ${eightiethDays} (${plural(cases, 'case', 'cases')}${whose[among]})`,
  noUsual: 'Too few earlier requests to say how long it takes.',

  chases: 'Chased',
  addChase: 'Add a chase',
  chase: (place: number) => `Chase ${place}`,
  chasedOn: 'Chased on',
  promisedOn: 'Promised for',
  removeChase: (place: number) => `Remove chase ${place}`,
  tries: 'Tried',
  addTry: 'Add a try',
  attempt: (place: number) => `Try ${place}`,
  triedOn: 'Tried on',
  result: 'Result',
  results: { right: 'Right', wrong: 'Wrong' },
  triesLeft: 'Tries left',
  triesLeftHint: 'As the unit shows.',
  lockedUntil: 'Locked until',
  removeTry: (place: number) => `Remove try ${place}`,
  beforeTrying: (left: number | null) =>
    left === null
      ? 'How many wrong codes the unit takes is not known. Look at the maker’s service information first.'
      : left === 0
        ? 'As far as is known the unit takes no more codes now.'
        : `${plural(left, 'wrong code', 'wrong codes')} until the unit locks, as far as is known.`,
  by: 'By',

  filing: 'Form to file',
  scheme: 'Scheme',
  noScheme: 'none',
  transactionOn: 'Day of the transaction',
  transactionHint: 'Empty: the day the code was given.',
  filedOn: 'Filed on',
  reference: 'Reference',
  closing: 'Closed',
  closedOn: 'Closed on',
  closedWhy: 'Why',
  remove: 'Remove',
  keepReason: 'Reason to keep this serial',
  keepReasonHint: 'With a reason it is kept as it is.',
} as const;

type UsualWords = {
  readonly medianDays: number;
  readonly eightiethDays: number;
  readonly cases: number;
  readonly among: keyof typeof whose;
};
const whose = {
  'provider-and-kind': '',
  provider: ', any code of theirs',
  kind: ', any provider',
  all: ', any code',
} as const;

function ordinal(count: number): string {
  const last = count % 100 > 10 && count % 100 < 14 ? 0 : count % 10;
  return `${count}${last === 1 ? 'st' : last === 2 ? 'nd' : last === 3 ? 'rd' : 'th'}`;
}

/** The chases of parts and sublet work in their forms. */
export const chaseListText = {
  chase: (day: string, way: string, who: string) => [day, way, who].filter((word) => word !== '').join(', '),
  promised: (day: string) => `promised for ${day}`,
  remove: (day: string) => `Remove the chase of ${day}`,
} as const;
