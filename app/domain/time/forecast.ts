// When a vehicle will be ready: its open items gone through many times with waits drawn from the shop's own history.
import { type Day, dayFromNumber } from '../shared/day.ts';
import type { Cause } from './cause.ts';
import type { OpenItem } from './open-item.ts';
import { type ForecastContext, makeWalk, type OpenNode, openNetwork } from './open-network.ts';
import type { Random } from './seeded-random.ts';
import type { TurnaroundAnswer } from './turnaround.ts';

export type ForecastItem = {
  readonly id: string;
  readonly what: string;
  readonly cause: Cause;
  /** In how many runs it decided the day: the longest item of the chain that ended last. */
  readonly decides: number;
  /** In how many runs it was on that chain at all. */
  readonly onChain: number;
  /** What its wait rests on; null when it waits for nothing of its own. */
  readonly basis: Pick<TurnaroundAnswer, 'basis' | 'group' | 'cases'> | null;
};

export type Forecast = {
  /** Ready by this day in at least half of the runs, and in at least 80 of 100. */
  readonly likelyOn: Day;
  readonly safeOn: Day;
  readonly runs: number;
  /** What most often decides first. */
  readonly items: readonly ForecastItem[];
};

/** More runs move the 80 % day by less than a day for histories of a usual spread; fewer make it jump. */
export const usualRuns = 400;

function quantile(ascending: Int32Array, percent: number): number {
  const place = Math.ceil((ascending.length * percent) / 100) - 1;
  return ascending[Math.max(0, place)] ?? 0;
}

function drawFrom(answer: TurnaroundAnswer | null, random: Random): number {
  if (answer === null) return 0;
  const { daysToGo } = answer;
  return daysToGo[Math.min(daysToGo.length - 1, Math.floor(random() * daysToGo.length))] ?? 0;
}

function itemOf({ item, answer }: OpenNode, decides: number, onChain: number): ForecastItem {
  const { id, what, cause } = item;
  const basis = answer && { basis: answer.basis, group: answer.group, cases: answer.cases };
  return { id, what, cause, decides, onChain, basis };
}

/**
 * Simulates `runs` ways in which the open items may go. Waits are drawn each by itself from its answer; work takes its minutes in the
 * hours of the shop. That one supplier's slow week touches several parts at once is not in it, nor is work that nobody has found yet
 * beyond what the history of the kind holds. Null when nothing is open. The same `random` gives the same forecast. Own definition
 * ("common practice, no source"); resampling from earlier cases is the bootstrap of Efron (1979).
 */
export function forecastReady(
  items: readonly OpenItem[],
  context: ForecastContext,
  { runs = usualRuns, random }: { readonly runs?: number; readonly random: Random },
): Forecast | null {
  if (items.length === 0) return null;
  const nodes = openNetwork(items, context);
  const { walk, starts, ends, before } = makeWalk(nodes, context);
  const decides = new Int32Array(nodes.length);
  const onChain = new Int32Array(nodes.length);
  const readyNumbers = new Int32Array(runs);
  for (let run = 0; run < runs; run += 1) {
    const { readyNumber, lastPlace } = walk((place) => drawFrom(nodes[place]?.answer ?? null, random));
    readyNumbers[run] = readyNumber;
    let longest = lastPlace;
    let longestDays = -1;
    for (let place = lastPlace; place >= 0; place = before[place] ?? -1) {
      onChain[place] = (onChain[place] ?? 0) + 1;
      const days = (ends[place] ?? 0) - (starts[place] ?? 0);
      if (days > longestDays) {
        longest = place;
        longestDays = days;
      }
    }
    decides[longest] = (decides[longest] ?? 0) + 1;
  }
  readyNumbers.sort();
  return {
    likelyOn: dayFromNumber(quantile(readyNumbers, 50)),
    safeOn: dayFromNumber(quantile(readyNumbers, 80)),
    runs,
    items: nodes
      .map((node, place) => itemOf(node, decides[place] ?? 0, onChain[place] ?? 0))
      .sort((a, b) => b.decides - a.decides || b.onChain - a.onChain),
  };
}
