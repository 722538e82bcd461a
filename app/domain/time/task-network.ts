// Whether tasks form a network that can be reckoned, and one order in which each comes after what it waits for.
import { fail, ok, type Result } from '../shared/result.ts';

type NetworkTask = { readonly id: string; readonly duration: number; readonly after: readonly string[] };

export type NetworkProblem =
  | { readonly code: 'twice'; readonly task: string; readonly sentence: string }
  | { readonly code: 'bad-duration'; readonly task: string; readonly sentence: string }
  | { readonly code: 'unknown-task'; readonly task: string; readonly missing: string; readonly sentence: string }
  /** The tasks of one cycle, each before the next, the last before the first. */
  | { readonly code: 'cycle'; readonly tasks: readonly string[]; readonly sentence: string };

function problemsOf(tasks: readonly NetworkTask[], known: ReadonlySet<string>): NetworkProblem[] {
  const problems: NetworkProblem[] = [];
  const seen = new Set<string>();
  for (const { id, duration, after } of tasks) {
    if (seen.has(id)) problems.push({ code: 'twice', task: id, sentence: `There are two tasks named “${id}”.` });
    seen.add(id);
    if (!Number.isFinite(duration) || duration < 0)
      problems.push({ code: 'bad-duration', task: id, sentence: `“${id}” needs a duration of 0 or more.` });
    for (const missing of new Set(after))
      if (!known.has(missing))
        problems.push({
          code: 'unknown-task',
          task: id,
          missing,
          sentence: `“${id}” waits for “${missing}”, which is not among the tasks.`,
        });
  }
  return problems;
}

/** One cycle among tasks that could not be put in order: from any of them back along what it waits for, until one comes up again. */
function findCycle(left: ReadonlyMap<string, NetworkTask>): string[] {
  const trail: string[] = [];
  let id = left.keys().next().value;
  while (id !== undefined && !trail.includes(id)) {
    trail.push(id);
    id = left.get(id)?.after.find((before) => left.has(before));
  }
  return id === undefined ? trail : trail.slice(trail.indexOf(id)).reverse();
}

/** The tasks in an order that keeps what comes before what, equals as given; or everything that stands against it. */
export function checkNetwork<Given extends NetworkTask>(
  tasks: readonly Given[],
): Result<readonly Given[], readonly NetworkProblem[]> {
  const byId = new Map(tasks.map((task) => [task.id, task]));
  const problems = problemsOf(tasks, new Set(byId.keys()));
  if (problems.length > 0) return fail(problems);
  const waitsFor = new Map(tasks.map(({ id, after }) => [id, new Set(after).size]));
  const leadsTo = new Map<string, Given[]>(tasks.map(({ id }) => [id, []]));
  for (const task of tasks) for (const id of new Set(task.after)) leadsTo.get(id)?.push(task);
  const order = tasks.filter(({ id }) => waitsFor.get(id) === 0);
  for (let at = 0; at < order.length; at += 1) {
    for (const follower of leadsTo.get(order[at]?.id ?? '') ?? []) {
      const left = (waitsFor.get(follower.id) ?? 0) - 1;
      waitsFor.set(follower.id, left);
      if (left === 0) order.push(follower);
    }
  }
  if (order.length === tasks.length) return ok(order);
  const done = new Set(order.map(({ id }) => id));
  const cycle = findCycle(new Map([...byId].filter(([id]) => !done.has(id))));
  const names = [...cycle, cycle[0]].map((id) => `“${id}”`).join(' → ');
  return fail([{ code: 'cycle', tasks: cycle, sentence: `These tasks wait for each other: ${names}.` }]);
}
