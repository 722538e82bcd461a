// Shares ordered jobs out among several technicians. A rule of thumb that is often best and never far off, not the best possible plan.

export type ListJob = {
  readonly id: string;
  readonly minutesLeft: number;
  readonly lossCentsPerDay: number;
  /** Who can do it, by id; null for anybody. */
  readonly people: readonly string[] | null;
};

export type ListPerson = {
  readonly id: string;
  /** Minutes of working time from now until the person is free. */
  readonly freeInMinutes: number;
};

export type Assignment = {
  readonly jobId: string;
  readonly personId: string;
  /** Minutes of working time from now. */
  readonly startsIn: number;
  readonly endsIn: number;
};

export type ListSchedule = {
  /** In the order in which they were given out. */
  readonly assignments: readonly Assignment[];
  /** Jobs that nobody here can do. */
  readonly withoutPerson: readonly string[];
  /** Sum of loss a day times minutes until done. */
  readonly weightedCompletion: number;
};

/**
 * List scheduling: the jobs in the order given (by weighted time, see order-by-weighted-time.ts), each to whoever of those that can do
 * it is free first, equals to the earlier in the list. A heuristic: the best plan for several people is hard to find (NP-hard). For
 * people who are all free now and can all do everything its weighted sum is at most (1 + √2) / 2, about 1.21, times the best
 * (Kawaguchi and Kyan, 1986; from memory); with people of different skills no such bound is known here.
 */
export function listSchedule(jobs: readonly ListJob[], people: readonly ListPerson[]): ListSchedule {
  const freeIn = new Map(people.map(({ id, freeInMinutes }) => [id, freeInMinutes]));
  const assignments: Assignment[] = [];
  const withoutPerson: string[] = [];
  let weightedCompletion = 0;
  for (const job of jobs) {
    let chosen: { readonly id: string; readonly startsIn: number } | null = null;
    for (const [id, startsIn] of freeIn) {
      if (job.people !== null && !job.people.includes(id)) continue;
      if (chosen === null || startsIn < chosen.startsIn) chosen = { id, startsIn };
    }
    if (chosen === null) {
      withoutPerson.push(job.id);
      continue;
    }
    const endsIn = chosen.startsIn + job.minutesLeft;
    freeIn.set(chosen.id, endsIn);
    assignments.push({ jobId: job.id, personId: chosen.id, startsIn: chosen.startsIn, endsIn });
    weightedCompletion += endsIn * job.lossCentsPerDay;
  }
  return { assignments, withoutPerson, weightedCompletion };
}
