// The rules inside one fact, each with the sentence a person reads when it is broken. Today is 10 March 2026.
import { describe, expect, it } from 'vitest';
import type { FactList, PutChange } from '../../../app/domain/vehicle/change.ts';
import { factProblems } from '../../../app/domain/vehicle/fact-rules.ts';
import {
  makeAttempt,
  makeCodeRequest,
  makeDecision,
  makeFault,
  makeJob,
  makeLabour,
  makeNote,
  makeOtherCost,
  makePart,
  makeScan,
  makeSignOff,
  makeSublet,
} from '../../helpers/vehicle-maker.ts';

const today = '2026-03-10';
const tomorrow = '2026-03-11';
const early = '2026-03-02';
const late = '2026-03-05';

/** 'field: sentence' of everything that is wrong. */
function problems(list: FactList, item: { id: string }): string[] {
  return factProblems({ kind: 'put', list, item } as unknown as PutChange, today).map(
    ({ field, sentence }) => `${field}: ${sentence}`,
  );
}

const future = (field: string, name: string) =>
  `${field}: ${name} lies in the future (2026-03-11). Write the day on which it happened, or leave it empty.`;
const runsBack = (field: string, later: string, earlier: string) =>
  `${field}: ${later} (2026-03-02) is before ${earlier} (2026-03-05). Correct one of the two days.`;

describe('what has happened does not lie in the future', () => {
  const job = makeJob(today);
  const cases: readonly (readonly [FactList, { id: string }, string])[] = [
    ['scans', makeScan(tomorrow), future('takenOn', 'The day of the scan')],
    ['jobs', makeJob(early, { openedOn: tomorrow }), future('openedOn', 'The day the job was opened')],
    ['attempts', makeAttempt(tomorrow, job, 'step-1'), future('on', 'The day of the attempt')],
    ['labour', makeLabour(tomorrow), future('workedOn', 'The day of the work')],
    ['otherCosts', makeOtherCost(tomorrow, 1), future('spentOn', 'The day of the cost')],
    ['signOffs', makeSignOff(tomorrow, 'road-test'), future('signedOn', 'The day of the signature')],
    ['notes', makeNote(tomorrow), future('on', 'The day of the note')],
    ['faults', makeFault(tomorrow), future('foundOn', 'The day it was found')],
    [
      'faults',
      makeFault(early, { decision: makeDecision(tomorrow) }),
      future('decision.decidedOn', 'The day of the decision'),
    ],
    [
      'faults',
      makeFault(early, { decision: makeDecision(early), doneOn: tomorrow }),
      future('doneOn', 'The day it was finished'),
    ],
    ['parts', makePart(tomorrow), future('neededOn', 'The day it was found to be needed')],
    ['parts', makePart(early, { orderedOn: tomorrow }), future('orderedOn', 'The day of the order')],
    [
      'parts',
      makePart(early, { orderedOn: early, receivedOn: tomorrow }),
      future('receivedOn', 'The day it was received'),
    ],
    [
      'parts',
      makePart(early, { orderedOn: early, receivedOn: early, fittedOn: tomorrow }),
      future('fittedOn', 'The day it was fitted'),
    ],
    [
      'parts',
      makePart(early, { orderedOn: early, receivedOn: early, returnedOn: tomorrow }),
      future('returnedOn', 'The day it was sent back'),
    ],
    ['parts', makePart(early, { coreReturnedOn: tomorrow }), future('coreReturnedOn', 'The day the core was returned')],
    ['codeRequests', makeCodeRequest(tomorrow, { proof: null }), future('notedOn', 'The day it was noted')],
    ['codeRequests', makeCodeRequest(early, { askedOn: tomorrow }), future('askedOn', 'The day it was asked')],
    [
      'codeRequests',
      makeCodeRequest(early, { askedOn: early, answeredOn: tomorrow, outcome: 'given' }),
      future('answeredOn', 'The day of the answer'),
    ],
    [
      'codeRequests',
      makeCodeRequest(early, { proof: { document: 'title', checkedOn: tomorrow, checkedBy: 'manager-1' } }),
      future('proof', 'The day the proof was checked'),
    ],
    ['sublets', makeSublet(tomorrow), future('notedOn', 'The day it was noted')],
    ['sublets', makeSublet(early, { sentOn: tomorrow }), future('sentOn', 'The day it was sent')],
    ['sublets', makeSublet(early, { sentOn: early, backOn: tomorrow }), future('backOn', 'The day it came back')],
  ];
  it.each(cases)('in %s (%#)', (list, item, problem) => {
    expect(problems(list, item)).toEqual([problem]);
  });

  it('but what is expected may', () => {
    expect(problems('parts', makePart(early, { orderedOn: early, expectedOn: tomorrow }))).toEqual([]);
    expect(problems('codeRequests', makeCodeRequest(early, { askedOn: early, expectedOn: tomorrow }))).toEqual([]);
    expect(problems('sublets', makeSublet(early, { sentOn: early, expectedOn: tomorrow }))).toEqual([]);
  });

  it('and today is not the future', () => {
    expect(problems('scans', makeScan(today))).toEqual([]);
  });
});

describe('days do not run backwards', () => {
  const received = 'The day it was received';
  const ordered = 'the day of the order';
  const cases: readonly (readonly [FactList, { id: string }, string])[] = [
    ['parts', makePart(early, { orderedOn: late, receivedOn: early }), runsBack('receivedOn', received, ordered)],
    [
      'parts',
      makePart(early, { orderedOn: late, receivedOn: late, fittedOn: early }),
      runsBack('fittedOn', 'The day it was fitted', 'the day it was received'),
    ],
    [
      'parts',
      makePart(early, { orderedOn: late, receivedOn: late, returnedOn: early }),
      runsBack('returnedOn', 'The day it was sent back', 'the day it was received'),
    ],
    [
      'parts',
      makePart(early, { orderedOn: late, returnedOn: early }),
      runsBack('returnedOn', 'The day it was sent back', ordered),
    ],
    [
      'parts',
      makePart(early, { orderedOn: late, expectedOn: early }),
      runsBack('expectedOn', 'The day it is expected', ordered),
    ],
    [
      'codeRequests',
      makeCodeRequest(early, { askedOn: late, answeredOn: early, outcome: 'given' }),
      runsBack('answeredOn', 'The day of the answer', 'the day it was asked'),
    ],
    [
      'codeRequests',
      makeCodeRequest(early, { askedOn: late, expectedOn: early }),
      runsBack('expectedOn', 'The day it is expected', 'the day it was asked'),
    ],
    [
      'codeRequests',
      makeCodeRequest(late, { askedOn: early }),
      runsBack('askedOn', 'The day it was asked', 'the day the proof was checked'),
    ],
    [
      'sublets',
      makeSublet(early, { sentOn: late, backOn: early }),
      runsBack('backOn', 'The day it came back', 'the day it was sent'),
    ],
    [
      'sublets',
      makeSublet(early, { sentOn: late, expectedOn: early }),
      runsBack('expectedOn', 'The day it is expected', 'the day it was sent'),
    ],
    [
      'faults',
      makeFault(late, { decision: makeDecision(early) }),
      runsBack('decision.decidedOn', 'The day of the decision', 'the day it was found'),
    ],
    [
      'faults',
      makeFault(early, { decision: makeDecision(late), doneOn: early }),
      runsBack('doneOn', 'The day it was finished', 'the day of the decision'),
    ],
  ];
  it.each(cases)('in %s (%#)', (list, item, problem) => {
    expect(problems(list, item)).toEqual([problem]);
  });

  it('but may all be the same day', () => {
    const part = makePart(today, { orderedOn: today, expectedOn: today, receivedOn: today, fittedOn: today });
    expect(problems('parts', part)).toEqual([]);
  });
});

describe('one thing asks for another', () => {
  it('a fitted part was received', () => {
    expect(problems('parts', makePart(early, { orderedOn: early, fittedOn: early }))).toEqual([
      'receivedOn: A fitted part was received first. Write the day it was received.',
    ]);
  });

  it('a part is fitted or sent back, not both', () => {
    const both = { orderedOn: early, receivedOn: early, fittedOn: early, returnedOn: early };
    expect(problems('parts', makePart(early, both))).toEqual([
      'returnedOn: A part cannot be fitted and sent back. Clear one of the two days.',
    ]);
  });

  it('a part that is here was ordered', () => {
    expect(problems('parts', makePart(early, { receivedOn: early }))).toEqual([
      'orderedOn: Write the day of the order too; for a part bought over the counter it is the same day.',
    ]);
  });

  it('a code request keeps the rules of its later life too', () => {
    const tries = [
      { id: 'try-one', triedOn: early, by: 'ben', result: 'wrong', triesLeft: 3, lockedUntil: null, note: '' },
    ] as const;
    expect(problems('codeRequests', makeCodeRequest(early, { askedOn: early, tries: [...tries] }))).toEqual([
      'outcome: Only a code that was given can be tried. Write the day on which it was given.',
    ]);
  });

  it('an answer needs a question', () => {
    expect(problems('codeRequests', makeCodeRequest(early, { answeredOn: early, outcome: 'given' }))).toEqual([
      'askedOn: An answer needs a question: write the day the code was asked for.',
    ]);
  });

  it('an answer has a day and an outcome', () => {
    const sentence = 'outcome: Say both on which day the answer came and whether the code was given or refused.';
    expect(problems('codeRequests', makeCodeRequest(early, { askedOn: early, answeredOn: early }))).toEqual([sentence]);
    expect(problems('codeRequests', makeCodeRequest(early, { askedOn: early, outcome: 'refused' }))).toEqual([
      sentence,
    ]);
  });

  it('a fault that is left has a reason', () => {
    const left = (reason: string) => makeFault(early, { decision: makeDecision(early, { kind: 'leave', reason }) });
    expect(problems('faults', left('  '))).toEqual(['decision.reason: Say why it is left as it is: a buyer will ask.']);
    expect(problems('faults', left('scratch, priced in'))).toEqual([]);
  });

  it('only what was decided to be repaired or replaced can be finished', () => {
    const sentence = 'doneOn: Only a fault that was decided to be repaired or replaced can be finished. Decide first.';
    expect(problems('faults', makeFault(early, { doneOn: late }))).toEqual([sentence]);
    const left = makeDecision(early, { kind: 'leave', reason: 'old' });
    expect(problems('faults', makeFault(early, { decision: left, doneOn: late }))).toEqual([sentence]);
  });

  it('sublet work that is back was sent', () => {
    expect(problems('sublets', makeSublet(early, { backOn: late }))).toEqual([
      'sentOn: Write the day it was sent before the day it came back.',
    ]);
  });

  it('the lowest voltage is not above the voltage before', () => {
    const attempt = makeAttempt(early, makeJob(early), 'step-1', { voltsBefore: 12.6, voltsLowest: 12.7 });
    expect(problems('attempts', attempt)).toEqual([
      'voltsLowest: The lowest voltage cannot be above the voltage before. Correct one of the two.',
    ]);
    expect(problems('attempts', { ...attempt, voltsLowest: 12.6 } as never)).toEqual([]);
  });

  it('several things can be wrong at once, each with its field', () => {
    const part = makePart(tomorrow, { orderedOn: tomorrow, receivedOn: late });
    expect(problems('parts', part)).toHaveLength(3);
  });
});
