// The critical path through a network of tasks: when each can start and must finish, and which chains decide the end.
import { fail, ok, type Result } from '../shared/result.ts';
import { checkNetwork, type NetworkProblem } from './task-network.ts';
import { plainTimeline, type TaskTime, type Timeline } from './timeline.ts';

export type Task = {
  readonly id: string;
  /** In days of the task's own time (or in the unit of the whole network without a calendar); 0 for a mere link. */
  readonly duration: number;
  /** The tasks that must be finished before this one begins, by id. */
  readonly after: readonly string[];
  readonly time?: TaskTime;
};

export type ScheduledTask = {
  readonly id: string;
  readonly earliestStart: number;
  readonly earliestFinish: number;
  readonly latestStart: number;
  readonly latestFinish: number;
  /** By how much it may slip, in its own time, without moving the end; and without moving anything that follows. */
  readonly totalFloat: number;
  readonly freeFloat: number;
  readonly isCritical: boolean;
};

export type CriticalPath = {
  /** In the order given. */
  readonly tasks: readonly ScheduledTask[];
  /** The instant at which the last task finishes; the start for an empty network. */
  readonly finish: number;
  /** Every critical chain, each from its first task to its last. */
  readonly chains: readonly (readonly string[])[];
  /** True when there are more chains than are listed. */
  readonly hasMoreChains: boolean;
};

/** A network of doubled parallel tasks has exponentially many chains; nobody reads more than this. */
const mostChains = 100;

/** Durations such as 16/3 leave sums that differ in the last digits; a float below this is none. */
const noise = 1e-9;

function tidy(value: number): number {
  return Math.abs(value) < noise ? 0 : value;
}

type Ends = { readonly start: number; readonly finish: number };

function forward(order: readonly Task[], start: number, timeline: Timeline): Map<string, Ends> {
  const earliest = new Map<string, Ends>();
  for (const task of order) {
    const time = task.time ?? 'calendar';
    let from = start;
    for (const id of task.after) from = Math.max(from, earliest.get(id)?.finish ?? start);
    const begin = timeline.begin(from, task.duration, time);
    earliest.set(task.id, { start: begin, finish: timeline.finish(begin, task.duration, time) });
  }
  return earliest;
}

function backward(
  order: readonly Task[],
  followers: ReadonlyMap<string, readonly Task[]>,
  end: number,
  timeline: Timeline,
): Map<string, Ends> {
  const latest = new Map<string, Ends>();
  for (let at = order.length - 1; at >= 0; at -= 1) {
    const task = order[at];
    if (!task) continue;
    let finish = end;
    for (const follower of followers.get(task.id) ?? [])
      finish = Math.min(finish, latest.get(follower.id)?.start ?? end);
    latest.set(task.id, { start: timeline.start(finish, task.duration, task.time ?? 'calendar'), finish });
  }
  return latest;
}

function followersOf(tasks: readonly Task[]): Map<string, Task[]> {
  const followers = new Map<string, Task[]>(tasks.map(({ id }) => [id, []]));
  for (const task of tasks) for (const id of new Set(task.after)) followers.get(id)?.push(task);
  return followers;
}

function chainsOf(
  scheduled: readonly ScheduledTask[],
  followers: ReadonlyMap<string, readonly Task[]>,
  timeline: Timeline,
): { chains: string[][]; hasMoreChains: boolean } {
  const critical = new Map(scheduled.filter(({ isCritical }) => isCritical).map((task) => [task.id, task]));
  const next = new Map<string, string[]>();
  const led = new Set<string>();
  for (const task of critical.values()) {
    const ids = (followers.get(task.id) ?? []).flatMap((follower) => {
      const after = critical.get(follower.id);
      const isTight =
        after && timeline.gap(task.earliestFinish, after.earliestStart, follower.time ?? 'calendar') < noise;
      return isTight ? [after.id] : [];
    });
    next.set(task.id, ids);
    for (const id of ids) led.add(id);
  }
  const chains: string[][] = [];
  let hasMoreChains = false;
  const walk = (chain: readonly string[], id: string): void => {
    const longer = [...chain, id];
    const ids = next.get(id) ?? [];
    if (ids.length > 0) for (const after of ids) if (!hasMoreChains) walk(longer, after);
    if (ids.length > 0) return;
    if (chains.length === mostChains) hasMoreChains = true;
    else chains.push(longer);
  };
  for (const id of critical.keys()) if (!led.has(id) && !hasMoreChains) walk([], id);
  return { chains, hasMoreChains };
}

/**
 * Forward and backward pass: earliest start is the latest earliest finish of what comes before; latest finish the earliest latest start
 * of what follows; total float latest less earliest start; free float up to the earliest start of what follows; critical without total
 * float (Kelley and Walker, 1959). Nothing is rounded in between. Fails with every task that is named twice, follows one that is not
 * there or has no proper duration, and with a cycle named in its order; then nothing is reckoned.
 */
export function criticalPath(
  tasks: readonly Task[],
  { start = 0, timeline = plainTimeline }: { readonly start?: number; readonly timeline?: Timeline } = {},
): Result<CriticalPath, readonly NetworkProblem[]> {
  const network = checkNetwork(tasks);
  if (!network.ok) return fail(network.error);
  const followers = followersOf(tasks);
  const earliest = forward(network.value, start, timeline);
  let finish = start;
  for (const ends of earliest.values()) finish = Math.max(finish, ends.finish);
  const latest = backward(network.value, followers, finish, timeline);
  const scheduled = tasks.map((task): ScheduledTask => {
    const time = task.time ?? 'calendar';
    const early = earliest.get(task.id) ?? { start, finish: start };
    const late = latest.get(task.id) ?? { start: finish, finish };
    let next = finish;
    for (const follower of followers.get(task.id) ?? [])
      next = Math.min(next, earliest.get(follower.id)?.start ?? finish);
    const totalFloat = tidy(timeline.gap(early.start, late.start, time));
    return {
      id: task.id,
      earliestStart: early.start,
      earliestFinish: early.finish,
      latestStart: late.start,
      latestFinish: late.finish,
      totalFloat,
      freeFloat: tidy(timeline.gap(early.finish, next, time)),
      isCritical: totalFloat === 0,
    };
  });
  return ok({ tasks: scheduled, finish, ...chainsOf(scheduled, followers, timeline) });
}
