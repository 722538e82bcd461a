// One expected course of a vehicle's open work, with a day for each item: the middle of each wait, no chance in it.
import { type Day, dayFromNumber, dayNumber } from '../shared/day.ts';
import { criticalPath, type Task } from './critical-path.ts';
import type { OpenItem } from './open-item.ts';
import { type ForecastContext, makeWalk, openNetwork } from './open-network.ts';
import { workingTimeline } from './timeline.ts';
import { medianOf, type TurnaroundAnswer } from './turnaround.ts';

export type PlannedItem = {
  readonly item: OpenItem;
  readonly answer: TurnaroundAnswer | null;
  /** The middle of the answer: calendar days, or days of the shop for its own turns. */
  readonly waitDays: number;
  readonly startsOn: Day;
  readonly endsOn: Day;
  /** Days by which it may slip without moving the ready day; of the shop for work, of the calendar for a wait. */
  readonly floatDays: number;
  readonly isCritical: boolean;
};

export type OpenPlan = {
  readonly readyOn: Day;
  readonly items: readonly PlannedItem[];
  /** Ids of items, each chain once. */
  readonly chains: readonly (readonly string[])[];
};

const waitId = (id: string) => `${id}/wait`;

/**
 * The critical path through the open items with each wait at its middle (median) value: what to look at first, not a promise; chances
 * are in forecast.ts. Null when nothing is open.
 */
export function planOpenWork(items: readonly OpenItem[], context: ForecastContext): OpenPlan | null {
  if (items.length === 0) return null;
  const nodes = openNetwork(items, context);
  const { walk, starts, ends } = makeWalk(nodes, context);
  const waits = nodes.map(({ answer }) => (answer === null ? 0 : medianOf(answer.daysToGo)));
  const { readyNumber } = walk((place) => waits[place] ?? 0);
  const tasks = nodes.flatMap(({ item, workDays, waitTime }, place): Task[] => [
    { id: waitId(item.id), duration: waits[place] ?? 0, after: item.after, time: waitTime },
    { id: item.id, duration: workDays, after: [waitId(item.id)], time: 'working' },
  ]);
  const path = criticalPath(tasks, { start: dayNumber(context.today), timeline: workingTimeline(context.calendar) });
  if (!path.ok) throw new Error(path.error.map(({ sentence }) => sentence).join(' '));
  const scheduled = new Map(path.value.tasks.map((task) => [task.id, task]));
  const planned = nodes.map(({ item, answer, workDays }, place): PlannedItem => {
    // An item that only waits has its room in the wait; one that is worked on in the work.
    const deciding = scheduled.get(workDays > 0 ? item.id : waitId(item.id));
    const end = ends[place] ?? 0;
    const endNumber = workDays > 0 ? Math.ceil(end - 1e-9) - 1 : Math.floor(end + 1e-9);
    const startNumber = Math.floor((starts[place] ?? 0) + 1e-9);
    return {
      item,
      answer,
      waitDays: waits[place] ?? 0,
      startsOn: dayFromNumber(Math.min(startNumber, endNumber)),
      endsOn: dayFromNumber(endNumber),
      floatDays: deciding?.totalFloat ?? 0,
      isCritical: deciding?.isCritical ?? false,
    };
  });
  const chains = new Map(
    path.value.chains
      .map((chain) => chain.filter((id) => !id.endsWith('/wait')))
      .filter((chain) => chain.length > 0)
      .map((chain) => [chain.join(), chain]),
  );
  return { readyOn: dayFromNumber(readyNumber), items: planned, chains: [...chains.values()] };
}
