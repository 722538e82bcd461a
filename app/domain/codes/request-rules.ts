// Rules over the facts of a code request: proof of ownership before it is asked, days in order, nothing in the future.
// The rules on asking and answering that hold for every record are in ../vehicle/fact-rules.ts; these come on top.
import type { Day } from '../shared/day.ts';
import type { ChangeProblem } from '../vehicle/change-problem.ts';
import { chaseProblems } from './chase-rules.ts';
import { missingFromRequest } from './code-form.ts';
import type { CodeKindFacts } from './code-kinds.ts';
import type { RequestFacts } from './request-facts.ts';

/**
 * Why the request may not be printed or marked asked; empty when it may. Proof of ownership comes first: codes are asked for vehicles
 * that the dealer owns (own rule; the NASTF Secure Data Release Model also checks authority before the operation).
 */
export function whyNotAskable(
  request: Pick<RequestFacts, 'proof' | 'deviceSerial' | 'module' | 'reason'>,
  vin: string,
  kind: CodeKindFacts,
): readonly ChangeProblem[] {
  const { proof, deviceSerial, module, reason } = request;
  const proofProblems: ChangeProblem[] =
    proof === null
      ? [
          {
            field: 'proof',
            sentence:
              'Record the proof of ownership before the code is asked for: which document, when it was checked, by whom.',
          },
        ]
      : [];
  return [...proofProblems, ...missingFromRequest(kind, { vin, deviceSerial, module, reason })];
}

type Happened = readonly [field: string, name: string, day: Day];

function dayProblems(days: readonly Happened[], today: Day, notBefore: Happened | null): ChangeProblem[] {
  return days.flatMap(([field, name, day]): ChangeProblem[] => {
    if (day > today)
      return [{ field, sentence: `${name} lies in the future (${day}). Write the day on which it happened.` }];
    if (notBefore !== null && day < notBefore[2])
      return [
        {
          field,
          sentence: `${name} (${day}) is before ${notBefore[1].toLowerCase()} (${notBefore[2]}). Correct one of the two days.`,
        },
      ];
    return [];
  });
}

function tryProblems(request: RequestFacts, today: Day): ChangeProblem[] {
  const { answeredOn, outcome, tries } = request;
  if (tries.length === 0) return [];
  if (answeredOn === null || outcome !== 'given')
    return [
      { field: 'outcome', sentence: 'Only a code that was given can be tried. Write the day on which it was given.' },
    ];
  const days = tries.map(
    (attempt, index): Happened => [`tries.${index}.triedOn`, 'The day it was tried', attempt.triedOn],
  );
  const order = tries.flatMap((attempt, index): ChangeProblem[] => {
    const before = tries[index - 1];
    return before && attempt.triedOn < before.triedOn
      ? [
          {
            field: `tries.${index}.triedOn`,
            sentence: 'Tries are kept in the order in which they happened. Correct the day.',
          },
        ]
      : [];
  });
  const right = tries.flatMap((attempt, index): ChangeProblem[] =>
    attempt.result === 'right' && (attempt.lockedUntil !== null || attempt.triesLeft === 0)
      ? [
          {
            field: `tries.${index}.result`,
            sentence: 'A right code does not lock the device. Say that it was wrong, or clear the lock.',
          },
        ]
      : [],
  );
  return [...dayProblems(days, today, ['answeredOn', 'The day of the answer', answeredOn]), ...order, ...right];
}

function closingProblems(request: RequestFacts, today: Day): ChangeProblem[] {
  const { closedOn, closedWhy, tries, filing } = request;
  const problems: ChangeProblem[] = [];
  const over = [...tries.map((attempt) => attempt.triedOn), request.answeredOn ?? request.askedOn ?? request.notedOn];
  const last = over.sort().at(-1) ?? request.notedOn;
  if (closedOn !== null)
    problems.push(
      ...dayProblems([['closedOn', 'The day it was closed', closedOn]], today, [
        'closedOn',
        'The last day on which something happened to it',
        last,
      ]),
    );
  if (closedOn !== null && closedWhy.trim() === '' && tries.at(-1)?.result !== 'right')
    problems.push({ field: 'closedWhy', sentence: 'Say why it is closed although no code has worked.' });
  if (filing === null) return problems;
  const days: Happened[] = [];
  if (filing.transactionOn !== null)
    days.push(['filing.transactionOn', 'The day of the transaction', filing.transactionOn]);
  if (filing.filedOn !== null) days.push(['filing.filedOn', 'The day of filing', filing.filedOn]);
  problems.push(...dayProblems(days, today, null));
  if (filing.filedOn !== null && filing.transactionOn !== null && filing.filedOn < filing.transactionOn)
    problems.push({
      field: 'filing.filedOn',
      sentence: `It was filed (${filing.filedOn}) before the transaction (${filing.transactionOn}). Correct one of the two days.`,
    });
  return problems;
}

/** What is wrong with the later life of a request, as seen today; empty when nothing is. */
export function requestLifeProblems(request: RequestFacts, today: Day): readonly ChangeProblem[] {
  const { chases, askedOn, answeredOn } = request;
  const begun = { field: 'askedOn', name: 'the day it was asked', on: askedOn, verb: 'asked for' };
  return [
    ...chaseProblems({ chases, begun, endedOn: answeredOn }, today),
    ...tryProblems(request, today),
    ...closingProblems(request, today),
  ];
}
