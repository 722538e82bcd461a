// Words of the work on a vehicle: labour, sublet work, other costs, checks, notes, sale. Programming has its own: programming.ts.
import type { SignOff } from '../../app/domain/readiness/sign-off.ts';
import { type Cents, showCents } from '../../app/domain/shared/cents.ts';
import type { Day } from '../../app/domain/shared/day.ts';
import { plural } from '../../app/domain/shared/text.ts';
import { sayDay } from './say-day.ts';

export const labourText = {
  add: 'Book work',
  empty: 'No work booked.',
  workedOn: 'Day',
  person: 'Who',
  minutes: 'Time',
  minutesHint: '90, 1:30 or 1.5h',
  notATime: 'This is not a time. Write minutes (90) or hours (1:30, 1.5h).',
  what: 'What was done',
  area: 'Area',
  fault: 'On the fault',
  total: (time: string) => `${time} h booked`,
} as const;

export const subletText = {
  add: 'Add sublet work',
  empty: 'Nothing given to somebody else.',
  what: 'Work',
  supplier: 'Given to',
  area: 'Area',
  fault: 'For the fault',
  notedOn: 'Noted on',
  sentOn: 'Sent on',
  expectedOn: 'Expected back on',
  backOn: 'Back on',
  quoted: 'Quoted',
  invoiced: 'Invoiced',
  note: 'Note',
  state: 'State',
  amount: 'Amount',
  states: { toSend: 'to send out', sent: (day: string) => `out since ${day}`, back: (day: string) => `back ${day}` },
  quick: { sent: 'Sent today', back: 'Back today' },
} as const;

export const costText = {
  add: 'Add cost',
  empty: 'No other cost.',
  spentOn: 'Day',
  what: 'What for',
  amount: 'Amount',
  amountHint: 'A refund with a minus',
} as const;

export const checkText = {
  empty: 'The shop’s checklist is empty. A manager writes it in Setup.',
  check: 'Check',
  who: 'Whose',
  state: 'State',
  stages: { verify: 'Proves the work', present: 'Makes it fit to be seen' },
  notSigned: 'not signed',
  results: { passed: 'passed', failed: 'failed', 'not-needed': 'not needed' } satisfies Record<
    SignOff['result'],
    string
  >,
  signed: (result: string, day: string, by: string) => `${result} ${day}, ${by}`,
  quick: { passed: 'Passed today', failed: 'Failed …', 'not-needed': 'Not needed …' },
  correct: 'Correct',
  signedOn: 'Day',
  signedBy: 'Who',
  result: 'Result',
  resultOptions: { passed: 'Passed', failed: 'Failed', 'not-needed': 'Not needed' } satisfies Record<
    SignOff['result'],
    string
  >,
  note: 'Note',
} as const;

export const noteText = {
  add: 'Add note',
  empty: 'No note.',
  on: 'Day',
  text: 'Note',
  by: 'Written by',
  hint: 'Ctrl+Enter saves',
} as const;

export const saleText = {
  sale: 'Sale',
  notSold: 'Not sold.',
  soldOn: 'Sold on',
  price: 'Price',
  buyer: 'Buyer',
  sell: 'Sell it',
  saveSale: 'Record the sale',
  correct: 'Correct the sale',
  takeBack: 'Take the sale back',
  takenBack: 'The sale was taken back; the vehicle is in stock again.',
  held: (count: number) =>
    `${plural(count, 'gate still holds', 'gates still hold')} this vehicle. A sale can be recorded all the same; what is open then stays written in the record:`,
  belowCost: 'This is less than what has been spent on it.',
  payoff: 'Lender',
  paidOffOn: 'Lender paid on',
  paidOffHint: 'When what was still owed under its funding plan was paid. Leave it empty until then.',
  paidOff: (day: Day | null, today: Day) => (day === null ? 'nothing owed' : `paid ${sayDay(day, today)}`),
  owed: (cents: Cents, dueOn: Day, today: Day) =>
    `${showCents(cents)} still owed, ${dueOn < today ? 'was due' : 'due'} ${sayDay(dueOn, today)}`,
} as const;
