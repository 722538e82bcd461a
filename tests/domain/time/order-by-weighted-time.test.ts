// The order by weighted time against every other order of up to eight jobs, and the sharing out among several people against the best.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { showCents } from '../../../app/domain/shared/cents.ts';
import { listSchedule } from '../../../app/domain/time/list-schedule.ts';
import {
  orderByWeightedTime,
  type WeightedJob,
  weightedCompletion,
} from '../../../app/domain/time/order-by-weighted-time.ts';

function makeJob(
  id: string,
  minutesLeft: number,
  lossCentsPerDay: number,
  blockedBy: string | null = null,
): WeightedJob {
  return { id, what: `job ${id}`, minutesLeft, lossCentsPerDay, blockedBy };
}

/** The least sum over all orders, by trying them all. */
function leastOverAllOrders(jobs: readonly WeightedJob[], minutes = 0): number {
  if (jobs.length === 0) return 0;
  let least = Number.POSITIVE_INFINITY;
  for (const job of jobs) {
    const end = minutes + job.minutesLeft;
    const rest = jobs.filter((other) => other !== job);
    least = Math.min(least, end * job.lossCentsPerDay + leastOverAllOrders(rest, end));
  }
  return least;
}

function jobsOf(maxLength: number): fc.Arbitrary<WeightedJob[]> {
  const one = fc.tuple(fc.nat({ max: 600 }), fc.nat({ max: 5000 }));
  return fc
    .array(one, { maxLength })
    .map((drafts) => drafts.map(([minutes, cents], at) => makeJob(`j${at}`, minutes, cents)));
}

describe('the order by weighted time', () => {
  it('puts the job that loses most for its hours first, and says why', () => {
    const { order } = orderByWeightedTime(
      [makeJob('long', 480, 30_00), makeJob('short', 30, 12_00), makeJob('dear', 90, 45_00)],
      showCents,
    );
    expect(order.map(({ job }) => job.id)).toEqual(['dear', 'short', 'long']);
    expect(order[0]).toMatchObject({
      centsPerDayPerHour: 30_00,
      why: '45.00 a day is lost while 1 h 30 min of work is left; more for each hour than job short (12.00 and 30 min).',
    });
    expect(order[2]?.why).toBe('30.00 a day is lost while 8 h of work is left.');
  });

  it('leaves blocked jobs out with their reason', () => {
    const { order, leftOut } = orderByWeightedTime(
      [makeJob('a', 10, 1), makeJob('b', 5, 9_00, 'the part is not here')],
      showCents,
    );
    expect(order.map(({ job }) => job.id)).toEqual(['a']);
    expect(leftOut.map(({ job, reason }) => [job.id, reason])).toEqual([['b', 'the part is not here']]);
  });

  it('keeps the order given among equals, and does what takes no time at once', () => {
    const jobs = [
      makeJob('a', 60, 10),
      makeJob('b', 120, 20),
      makeJob('c', 0, 5),
      makeJob('d', 0, 0),
      makeJob('e', 30, 0),
    ];
    const { order } = orderByWeightedTime(jobs, showCents);
    expect(order.map(({ job }) => job.id)).toEqual(['c', 'd', 'a', 'b', 'e']);
    expect(order[2]?.why).toContain('as pressing as job b');
  });

  it('is as good as the best of all orders of up to six jobs', () => {
    fc.assert(
      fc.property(jobsOf(6), (jobs) => {
        const { order } = orderByWeightedTime(jobs, showCents);
        expect(weightedCompletion(order.map(({ job }) => job))).toBe(leastOverAllOrders(jobs));
      }),
    );
  });

  it('is as good as the best of all 40,320 orders of eight jobs', () => {
    const eight = fc
      .array(fc.tuple(fc.integer({ min: 1, max: 600 }), fc.nat({ max: 5000 })), { minLength: 8, maxLength: 8 })
      .map((drafts) => drafts.map(([minutes, cents], at) => makeJob(`j${at}`, minutes, cents)));
    fc.assert(
      fc.property(eight, (jobs) => {
        const { order } = orderByWeightedTime(jobs, showCents);
        expect(weightedCompletion(order.map(({ job }) => job))).toBe(leastOverAllOrders(jobs));
      }),
      { numRuns: 12 },
    );
  });
});

/** The least sum over all ways of giving the jobs to people who can do everything; within one person by weighted time, which is best. */
function leastOverAllSharings(jobs: readonly WeightedJob[], count: number): number {
  let least = Number.POSITIVE_INFINITY;
  const piles: WeightedJob[][] = Array.from({ length: count }, () => []);
  const share = (at: number): void => {
    const job = jobs[at];
    if (!job) {
      least = Math.min(
        least,
        piles.reduce((sum, pile) => sum + weightedCompletion(pile), 0),
      );
      return;
    }
    for (const pile of piles) {
      pile.push(job);
      share(at + 1);
      pile.pop();
    }
  };
  share(0);
  return least;
}

describe('several technicians', () => {
  const anybody = (jobs: readonly WeightedJob[]) => jobs.map((job) => ({ ...job, people: null }));
  const staff = (count: number) => Array.from({ length: count }, (_, at) => ({ id: `p${at}`, freeInMinutes: 0 }));
  const ordered = (jobs: readonly WeightedJob[]) => orderByWeightedTime(jobs, showCents).order.map(({ job }) => job);

  it('take the jobs in order, whoever is free first', () => {
    const jobs = anybody([makeJob('a', 60, 90), makeJob('b', 30, 40), makeJob('c', 45, 40), makeJob('d', 10, 1)]);
    const { assignments } = listSchedule(jobs, [
      { id: 'ann', freeInMinutes: 0 },
      { id: 'bob', freeInMinutes: 20 },
    ]);
    expect(assignments).toEqual([
      { jobId: 'a', personId: 'ann', startsIn: 0, endsIn: 60 },
      { jobId: 'b', personId: 'bob', startsIn: 20, endsIn: 50 },
      { jobId: 'c', personId: 'bob', startsIn: 50, endsIn: 95 },
      { jobId: 'd', personId: 'ann', startsIn: 60, endsIn: 70 },
    ]);
  });

  it('get only what they can do; what nobody can is named', () => {
    const jobs = [
      { ...makeJob('volts', 60, 90), people: ['ann'] },
      { ...makeJob('paint', 60, 80), people: [] },
      { ...makeJob('more volts', 60, 70), people: ['ann'] },
    ];
    const found = listSchedule(jobs, staff(1).concat({ id: 'ann', freeInMinutes: 30 }));
    expect(found.assignments.map(({ personId, startsIn }) => [personId, startsIn])).toEqual([
      ['ann', 30],
      ['ann', 90],
    ]);
    expect(found.withoutPerson).toEqual(['paint']);
    expect(found.weightedCompletion).toBe(90 * 90 + 150 * 70);
  });

  it('alone, one does as well as the best order', () => {
    fc.assert(
      fc.property(jobsOf(6), (jobs) => {
        expect(listSchedule(anybody(ordered(jobs)), staff(1)).weightedCompletion).toBe(leastOverAllOrders(jobs));
      }),
    );
  });

  it('together lose at most 1.21 times what the best sharing loses, and never less than it', () => {
    fc.assert(
      fc.property(jobsOf(7), fc.integer({ min: 2, max: 3 }), (jobs, count) => {
        const list = ordered(jobs);
        const found = listSchedule(anybody(list), staff(count)).weightedCompletion;
        const best = leastOverAllSharings(list, count);
        expect(found).toBeGreaterThanOrEqual(best);
        expect(found).toBeLessThanOrEqual(((1 + Math.SQRT2) / 2) * best + 1e-6);
      }),
    );
  });

  it('are not always shared out best: the rule of thumb is one', () => {
    const jobs = [makeJob('a', 1, 1), makeJob('b', 1, 1), makeJob('c', 2, 2)];
    const found = listSchedule(anybody(jobs), staff(2)).weightedCompletion;
    expect(found).toBeGreaterThan(leastOverAllSharings(jobs, 2));
  });
});
