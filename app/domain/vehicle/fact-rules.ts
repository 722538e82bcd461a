// Rules inside one fact that a schema cannot say: dates in order, nothing that has happened in the future, reasons where they are owed.
import { chaseProblems } from '../codes/chase-rules.ts';
import type { CodeRequestDraft } from '../codes/code-request.ts';
import { requestLifeProblems } from '../codes/request-rules.ts';
import type { FaultDraft } from '../diagnosis/fault.ts';
import type { PartDraft } from '../parts/part.ts';
import type { AttemptDraft } from '../programming/attempt.ts';
import type { ProgrammingJobDraft } from '../programming/programming-job.ts';
import { assertNever } from '../shared/assert-never.ts';
import type { Day } from '../shared/day.ts';
import type { SubletDraft } from '../work/sublet.ts';
import type { PutChange } from './change.ts';
import type { ChangeProblem } from './change-problem.ts';

type NamedDay = readonly [field: string, name: string, day: Day | null];

/** Days that must not lie after today: they say that something happened. */
function futureProblems(today: Day, days: readonly NamedDay[]): ChangeProblem[] {
  return days.flatMap(([field, name, day]) =>
    day !== null && day > today
      ? [
          {
            field,
            sentence: `${name} lies in the future (${day}). Write the day on which it happened, or leave it empty.`,
          },
        ]
      : [],
  );
}

/** Days that must not run backwards, in the order given; empty ones are passed over. */
function orderProblems(days: readonly NamedDay[]): ChangeProblem[] {
  const problems: ChangeProblem[] = [];
  let earlier: NamedDay | null = null;
  for (const later of days) {
    if (later[2] === null) continue;
    if (earlier?.[2] && later[2] < earlier[2]) {
      problems.push({
        field: later[0],
        sentence: `${later[1]} (${later[2]}) is before ${earlier[1].toLowerCase()} (${earlier[2]}). Correct one of the two days.`,
      });
    }
    earlier = later;
  }
  return problems;
}

function partProblems(part: PartDraft, today: Day): ChangeProblem[] {
  const happened: NamedDay[] = [
    ['orderedOn', 'The day of the order', part.orderedOn],
    ['receivedOn', 'The day it was received', part.receivedOn],
    ['fittedOn', 'The day it was fitted', part.fittedOn],
  ];
  const problems = [
    ...futureProblems(today, [
      ['neededOn', 'The day it was found to be needed', part.neededOn],
      ...happened,
      ['returnedOn', 'The day it was sent back', part.returnedOn],
      ['coreReturnedOn', 'The day the core was returned', part.coreReturnedOn],
    ]),
    ...orderProblems(happened),
    ...orderProblems([
      part.receivedOn === null
        ? ['orderedOn', 'The day of the order', part.orderedOn]
        : ['receivedOn', 'The day it was received', part.receivedOn],
      ['returnedOn', 'The day it was sent back', part.returnedOn],
    ]),
    ...orderProblems([
      ['orderedOn', 'The day of the order', part.orderedOn],
      ['expectedOn', 'The day it is expected', part.expectedOn],
    ]),
  ];
  if (part.fittedOn !== null && part.receivedOn === null)
    problems.push({
      field: 'receivedOn',
      sentence: 'A fitted part was received first. Write the day it was received.',
    });
  if (part.returnedOn !== null && part.fittedOn !== null)
    problems.push({
      field: 'returnedOn',
      sentence: 'A part cannot be fitted and sent back. Clear one of the two days.',
    });
  if (part.receivedOn !== null && part.orderedOn === null)
    problems.push({
      field: 'orderedOn',
      sentence: 'Write the day of the order too; for a part bought over the counter it is the same day.',
    });
  const begun = { field: 'orderedOn', name: 'the day of the order', on: part.orderedOn, verb: 'ordered' };
  const endedOn = part.receivedOn ?? part.returnedOn;
  return [...problems, ...chaseProblems({ chases: part.chases, begun, endedOn }, today)];
}

function codeRequestProblems(request: CodeRequestDraft, today: Day): ChangeProblem[] {
  const problems = [
    ...futureProblems(today, [
      ['notedOn', 'The day it was noted', request.notedOn],
      ['askedOn', 'The day it was asked', request.askedOn],
      ['answeredOn', 'The day of the answer', request.answeredOn],
      ['proof', 'The day the proof was checked', request.proof?.checkedOn ?? null],
    ]),
    ...orderProblems([
      ['askedOn', 'The day it was asked', request.askedOn],
      ['answeredOn', 'The day of the answer', request.answeredOn],
    ]),
    ...orderProblems([
      ['askedOn', 'The day it was asked', request.askedOn],
      ['expectedOn', 'The day it is expected', request.expectedOn],
    ]),
    ...orderProblems([
      ['proof', 'The day the proof was checked', request.proof?.checkedOn ?? null],
      ['askedOn', 'The day it was asked', request.askedOn],
    ]),
  ];
  if (request.answeredOn !== null && request.askedOn === null)
    problems.push({ field: 'askedOn', sentence: 'An answer needs a question: write the day the code was asked for.' });
  if ((request.answeredOn === null) !== (request.outcome === null))
    problems.push({
      field: 'outcome',
      sentence: 'Say both on which day the answer came and whether the code was given or refused.',
    });
  return [...problems, ...requestLifeProblems(request, today)];
}

function faultProblems(fault: FaultDraft, today: Day): ChangeProblem[] {
  const problems = [
    ...futureProblems(today, [
      ['foundOn', 'The day it was found', fault.foundOn],
      ['decision.decidedOn', 'The day of the decision', fault.decision?.decidedOn ?? null],
      ['doneOn', 'The day it was finished', fault.doneOn],
    ]),
    ...orderProblems([
      ['foundOn', 'The day it was found', fault.foundOn],
      ['decision.decidedOn', 'The day of the decision', fault.decision?.decidedOn ?? null],
      ['doneOn', 'The day it was finished', fault.doneOn],
    ]),
  ];
  if (fault.decision?.kind === 'leave' && fault.decision.reason.trim() === '')
    problems.push({ field: 'decision.reason', sentence: 'Say why it is left as it is: a buyer will ask.' });
  if (fault.doneOn !== null && (fault.decision === null || fault.decision.kind === 'leave'))
    problems.push({
      field: 'doneOn',
      sentence: 'Only a fault that was decided to be repaired or replaced can be finished. Decide first.',
    });
  return problems;
}

function subletProblems(sublet: SubletDraft, today: Day): ChangeProblem[] {
  const sent: NamedDay = ['sentOn', 'The day it was sent', sublet.sentOn];
  const problems = [
    ...futureProblems(today, [
      ['notedOn', 'The day it was noted', sublet.notedOn],
      sent,
      ['backOn', 'The day it came back', sublet.backOn],
    ]),
    ...orderProblems([sent, ['backOn', 'The day it came back', sublet.backOn]]),
    ...orderProblems([sent, ['expectedOn', 'The day it is expected', sublet.expectedOn]]),
  ];
  if (sublet.backOn !== null && sublet.sentOn === null)
    problems.push({ field: 'sentOn', sentence: 'Write the day it was sent before the day it came back.' });
  const begun = { field: 'sentOn', name: 'the day it was sent', on: sublet.sentOn, verb: 'sent out' };
  return [...problems, ...chaseProblems({ chases: sublet.chases, begun, endedOn: sublet.backOn }, today)];
}

function attemptProblems(attempt: AttemptDraft, today: Day): ChangeProblem[] {
  const problems = futureProblems(today, [['on', 'The day of the attempt', attempt.on]]);
  if (attempt.voltsLowest !== null && attempt.voltsBefore !== null && attempt.voltsLowest > attempt.voltsBefore)
    problems.push({
      field: 'voltsLowest',
      sentence: 'The lowest voltage cannot be above the voltage before. Correct one of the two.',
    });
  return problems;
}

function jobDayProblems(
  { openedOn, plan, makerOrder, ticks, leftOut }: ProgrammingJobDraft,
  today: Day,
): ChangeProblem[] {
  return futureProblems(today, [
    ['openedOn', 'The day the job was opened', openedOn],
    ['plan', 'The day the plan was made', plan.madeOn],
    ['makerOrder.readOn', 'The day the document was read', makerOrder?.readOn ?? null],
    ...ticks.map((tick, at): NamedDay => [`ticks.${at}`, 'The day it was vouched for', tick.on]),
    ...leftOut.map((one, at): NamedDay => [`leftOut.${at}`, 'The day it was left out', one.on]),
  ]);
}

/** What is wrong inside one fact, as seen today; empty when nothing is. */
export function factProblems(change: PutChange, today: Day): readonly ChangeProblem[] {
  switch (change.list) {
    case 'parts':
      return partProblems(change.item, today);
    case 'codeRequests':
      return codeRequestProblems(change.item, today);
    case 'faults':
      return faultProblems(change.item, today);
    case 'sublets':
      return subletProblems(change.item, today);
    case 'attempts':
      return attemptProblems(change.item, today);
    case 'scans':
      return futureProblems(today, [['takenOn', 'The day of the scan', change.item.takenOn]]);
    case 'batteryReadings':
      return futureProblems(today, [['measuredOn', 'The day of the measurement', change.item.measuredOn]]);
    case 'jobs':
      return jobDayProblems(change.item, today);
    case 'labour':
      return futureProblems(today, [['workedOn', 'The day of the work', change.item.workedOn]]);
    case 'otherCosts':
      return futureProblems(today, [['spentOn', 'The day of the cost', change.item.spentOn]]);
    case 'signOffs':
      return futureProblems(today, [['signedOn', 'The day of the signature', change.item.signedOn]]);
    case 'attachments':
      return futureProblems(today, [['on', 'The day of the picture or document', change.item.on]]);
    case 'notes':
      return futureProblems(today, [['on', 'The day of the note', change.item.on]]);
    default:
      return assertNever(change, 'fact list');
  }
}
