// Open items with their answers, laid out for going through once or a thousand times: when each ends for given waits.
import { type Day, dayNumber } from '../shared/day.ts';
import type { OpenItem } from './open-item.ts';
import { checkNetwork } from './task-network.ts';
import { finishDayNumber, workingTimeline } from './timeline.ts';
import { askTurnaround, type TurnaroundAnswer, type TurnaroundHistory } from './turnaround.ts';
import { type TurnaroundSettings, timeOfKind } from './turnaround-settings.ts';
import type { WorkingCalendar } from './working-calendar.ts';

export type ForecastContext = {
  readonly history: TurnaroundHistory;
  readonly settings: TurnaroundSettings;
  readonly calendar: WorkingCalendar;
  /** The items stand as on this day; the history is asked as it was known on it. */
  readonly today: Day;
};

/** In an order in which each comes after what it waits for. */
export type OpenNode = {
  readonly item: OpenItem;
  readonly answer: TurnaroundAnswer | null;
  /** The time its wait runs in. */
  readonly waitTime: 'calendar' | 'turn';
  /** Work in days of the shop. */
  readonly workDays: number;
  /** Places of what comes before it, in this same order. */
  readonly after: readonly number[];
};

/** @throws when the items are no network: they come from openWork, which makes none with a circle. */
export function openNetwork(
  items: readonly OpenItem[],
  { history, settings, calendar, today }: ForecastContext,
): readonly OpenNode[] {
  const checked = checkNetwork(items.map((item) => ({ id: item.id, duration: 0, after: item.after, item })));
  if (!checked.ok) throw new Error(checked.error.map(({ sentence }) => sentence).join(' '));
  const places = new Map(checked.value.map(({ id }, place) => [id, place]));
  return checked.value.map(({ item }) => ({
    item,
    answer: item.wait === null ? null : askTurnaround(history, item.wait, today, settings),
    waitTime: item.wait === null ? 'calendar' : timeOfKind[item.wait.kind],
    workDays: item.minutes / calendar.minutesPerDay,
    after: item.after.flatMap((id) => places.get(id) ?? []),
  }));
}

export type Passage = {
  /** The number of the day on which everything is done. */
  readonly readyNumber: number;
  /** The place of the item that ends last; -1 without items. */
  readonly lastPlace: number;
};

/**
 * Goes through the network once. `starts` and `ends` are filled with instants, `before` with the place of the item that each waited for
 * longest, -1 for none. What only waits is over on the day that it comes to; what is worked on ends in the hours of the shop.
 */
export function makeWalk(
  nodes: readonly OpenNode[],
  { calendar, today }: Pick<ForecastContext, 'calendar' | 'today'>,
): {
  readonly walk: (waitOf: (place: number) => number) => Passage;
  readonly starts: Float64Array;
  readonly ends: Float64Array;
  readonly before: Int32Array;
} {
  const timeline = workingTimeline(calendar);
  const start = dayNumber(today);
  const starts = new Float64Array(nodes.length);
  const ends = new Float64Array(nodes.length);
  const before = new Int32Array(nodes.length);
  const walk = (waitOf: (place: number) => number): Passage => {
    let readyNumber = start;
    let lastPlace = -1;
    for (let place = 0; place < nodes.length; place += 1) {
      const node = nodes[place];
      if (!node) continue;
      let from = start;
      let decidedBy = -1;
      for (const earlier of node.after) {
        const end = ends[earlier] ?? start;
        if (end > from || (decidedBy < 0 && end === from)) {
          from = end;
          decidedBy = earlier;
        }
      }
      const wait = waitOf(place);
      const waited = timeline.finish(timeline.begin(from, wait, node.waitTime), wait, node.waitTime);
      const end = timeline.finish(timeline.begin(waited, node.workDays, 'working'), node.workDays, 'working');
      const day = node.workDays > 0 ? finishDayNumber(end, start) : Math.floor(end + 1e-9);
      starts[place] = from;
      ends[place] = end;
      before[place] = decidedBy;
      if (lastPlace < 0 || day > readyNumber || (day === readyNumber && end > (ends[lastPlace] ?? start))) {
        readyNumber = Math.max(readyNumber, day);
        lastPlace = place;
      }
    }
    return { readyNumber, lastPlace };
  };
  return { walk, starts, ends, before };
}
