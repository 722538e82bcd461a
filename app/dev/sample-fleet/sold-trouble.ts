// What went wrong with a sold vehicle, as a plan of chapters, and the attempts at a programming step until one works.
import type { ProgrammingRoute } from '../../domain/programming/programming-route.ts';
import type { Day } from '../../domain/shared/day.ts';
import { people } from './sample-shop.ts';
import type { Random } from './seeded-random.ts';
import type { ToldLater } from './told-later.ts';
import { worksBy } from './turnaround.ts';
import { workingDay, workingDaysAfter } from './working-days.ts';

/** What the scan on arrival shows, and the plan of its repair from the day of the scan; answers the day of the last work. */
export type Trouble = {
  readonly shows: readonly string[];
  readonly plan: (random: Random, later: ToldLater, scannedOn: Day) => Day;
};

export type Route = 'on-vehicle' | 'bench' | 'pass-through';

const messages = ['stopped, supply fell', 'no answer after restart', 'wrong software family', 'timed out'] as const;

/** Attempts at one step until it works, at most four; the last by the way that always works. */
export function tryUntilItWorks(
  random: Random,
  later: ToldLater,
  from: Day,
  about: {
    readonly job: () => string;
    /** The template of the step. */
    readonly step: string;
    readonly isUsed: boolean;
    readonly routes: readonly Route[];
    readonly lastResort: ProgrammingRoute;
  },
): Day {
  let day = workingDay(from);
  for (let attempt = 1; attempt <= 3; attempt += 1) {
    const route = random.pick(about.routes);
    const works = worksBy(random, route, about.isUsed);
    const before = random.whole(124, 134) / 10;
    const lowest = Math.round((before - (works ? 0.1 : 0.2 + random.unit())) * 10) / 10;
    const by = random.chance(0.7) ? people.technician : people.secondTechnician;
    const message = works ? '' : random.pick(messages);
    later.at(day, (story) =>
      story.attempt(about.job(), about.step, works ? 'worked' : random.chance(0.2) ? 'stopped' : 'failed', route, {
        volts: [before, lowest, before],
        message,
        by,
      }),
    );
    if (works) return day;
    day = workingDaysAfter(day, random.whole(1, 2));
  }
  later.at(day, (story) =>
    story.attempt(about.job(), about.step, 'worked', about.lastResort, {
      message: about.lastResort === 'sent-out' ? 'done by others' : '',
    }),
  );
  return day;
}
