// The order in which one technician loses the shop least money to holding. Several technicians are in list-schedule.ts.
import type { Cents } from '../shared/cents.ts';

export type WeightedJob = {
  readonly id: string;
  readonly what: string;
  /** Work left, in minutes of one person. */
  readonly minutesLeft: number;
  /** What one more day of holding the vehicle costs. */
  readonly lossCentsPerDay: Cents;
  /** Why it cannot be done now; null when it can. */
  readonly blockedBy: string | null;
};

export type OrderedJob = {
  readonly job: WeightedJob;
  /** Loss a day saved by each hour of work on it; null for a job that takes no time. */
  readonly centsPerDayPerHour: number | null;
  /** Why it stands where it stands, for people; amounts as the caller writes them. */
  readonly why: string;
};

export type JobOrder = {
  readonly order: readonly OrderedJob[];
  readonly leftOut: readonly { readonly job: WeightedJob; readonly reason: string }[];
};

/** Negative when `a` comes first: more loss for its minutes. Products of whole numbers, so no ratio is rounded. */
function byWeightedTime(a: WeightedJob, b: WeightedJob): number {
  return b.lossCentsPerDay * a.minutesLeft - a.lossCentsPerDay * b.minutesLeft;
}

/**
 * Jobs that can be done, by money lost a day divided by work left, the most first: no other order of them makes the sum of each job's
 * daily loss times its day of completion smaller (W. E. Smith, "Various optimizers for single-stage production", 1956). Equals keep
 * the order given; jobs without minutes come first, among them those that lose more. Blocked jobs are left out with their reason.
 * `showCents` writes an amount for the sentence. Minutes and cents are whole and not negative.
 */
export function orderByWeightedTime(jobs: readonly WeightedJob[], showCents: (cents: Cents) => string): JobOrder {
  const free = jobs.filter(({ blockedBy }) => blockedBy === null);
  const instant = free.filter(({ minutesLeft }) => minutesLeft === 0);
  const timed = free.filter(({ minutesLeft }) => minutesLeft > 0);
  const order = [...instant.sort((a, b) => b.lossCentsPerDay - a.lossCentsPerDay), ...timed.sort(byWeightedTime)];
  return {
    order: order.map((job, place) => ({
      job,
      centsPerDayPerHour: perHour(job),
      why: whyHere(order, place, showCents),
    })),
    leftOut: jobs.flatMap((job) => (job.blockedBy === null ? [] : [{ job, reason: job.blockedBy }])),
  };
}

function perHour({ lossCentsPerDay, minutesLeft }: WeightedJob): number | null {
  return minutesLeft === 0 ? null : Math.round((lossCentsPerDay * 60) / minutesLeft);
}

function duration(minutes: number): string {
  if (minutes < 60) return `${minutes} min`;
  const rest = minutes % 60;
  return rest === 0 ? `${minutes / 60} h` : `${Math.floor(minutes / 60)} h ${rest} min`;
}

function whyHere(order: readonly WeightedJob[], place: number, showCents: (cents: Cents) => string): string {
  const job = order[place];
  if (!job) return '';
  const own = `${showCents(job.lossCentsPerDay)} a day is lost while ${duration(job.minutesLeft)} of work is left`;
  const next = order[place + 1];
  if (!next) return `${own}.`;
  const compared = `${showCents(next.lossCentsPerDay)} and ${duration(next.minutesLeft)}`;
  return byWeightedTime(job, next) === 0
    ? `${own}; as pressing as ${next.what} (${compared}).`
    : `${own}; more for each hour than ${next.what} (${compared}).`;
}

/** Sum over the jobs, done one after the other from now, of loss a day times minutes until done: what the order keeps small. */
export function weightedCompletion(jobs: readonly Pick<WeightedJob, 'minutesLeft' | 'lossCentsPerDay'>[]): number {
  let minutes = 0;
  let sum = 0;
  for (const job of jobs) {
    minutes += job.minutesLeft;
    sum += minutes * job.lossCentsPerDay;
  }
  return sum;
}
