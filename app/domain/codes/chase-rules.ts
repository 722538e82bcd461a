// Rules over chases of anything asked for: a code, a part, sublet work. Days in order, nothing in the future, only what was asked for.
import type { Day } from '../shared/day.ts';
import type { ChangeProblem } from '../vehicle/change-problem.ts';
import type { Chase } from './request-facts.ts';

/** What is chased, in the words of its kind. */
export type Chased = {
  readonly chases: readonly Chase[];
  readonly begun: { readonly field: string; readonly name: string; readonly on: Day | null; readonly verb: string };
  readonly endedOn: Day | null;
};

/** What stands against the chases, each at its field; empty when nothing does. */
export function chaseProblems({ chases, begun, endedOn }: Chased, today: Day): readonly ChangeProblem[] {
  if (chases.length === 0) return [];
  if (begun.on === null)
    return [
      {
        field: begun.field,
        sentence: `Only what was ${begun.verb} can be chased. Write the day it was ${begun.verb}.`,
      },
    ];
  const begunOn = begun.on;
  return chases.flatMap(({ chasedOn, promisedOn }, index): ChangeProblem[] => {
    const field = `chases.${index}.chasedOn`;
    const problems: ChangeProblem[] = [];
    if (chasedOn > today)
      problems.push({
        field,
        sentence: `The day it was chased lies in the future (${chasedOn}). Write the day on which it happened.`,
      });
    else if (chasedOn < begunOn)
      problems.push({
        field,
        sentence: `The day it was chased (${chasedOn}) is before ${begun.name} (${begunOn}). Correct one of the two days.`,
      });
    else if (endedOn !== null && chasedOn > endedOn)
      problems.push({
        field,
        sentence: `It was chased (${chasedOn}) after it had come (${endedOn}). Correct one of the two days.`,
      });
    if (promisedOn !== null && promisedOn < chasedOn)
      problems.push({
        field: `chases.${index}.promisedOn`,
        sentence: `The promised day (${promisedOn}) is before the day it was chased (${chasedOn}). Correct one of the two days.`,
      });
    return problems;
  });
}
