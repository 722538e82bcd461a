// How long somebody must wait after wrong pass phrases. Counted in a file, so that starting the program again does not help.
import { z } from 'zod';
import { instantSchema } from '../shared/day.ts';
import { plural } from '../shared/text.ts';

/** Wrong tries in a row, and when the last one was. */
export const triesSchema = z.strictObject({
  failures: z.int().min(0).max(1_000_000),
  lastAt: instantSchema.nullable(),
});
export type Tries = z.infer<typeof triesSchema>;

export const noTries: Tries = { failures: 0, lastAt: null };

const freeTries = 2;
const firstWaitMilliseconds = 5_000;
const longestWaitMilliseconds = 3_600_000;

/** Two slips are free; then 5 s, doubled by each further wrong try, at most an hour. Own definition ("common practice, no source"). */
export function waitMillisecondsAfter(failures: number): number {
  if (failures <= freeTries) return 0;
  // Beyond this the doubling has passed the hour long since.
  const doublings = Math.min(failures - freeTries - 1, 20);
  return Math.min(firstWaitMilliseconds * 2 ** doublings, longestWaitMilliseconds);
}

/**
 * What is left of the wait at `now` (ISO instant), and the tries as they must be kept. A clock that was set back does not shorten the
 * wait: it begins anew from now. (Nor does it lengthen it beyond that: a clock that once ran years ahead would lock people out for
 * years.) A clock set forward cannot be told from time gone by.
 */
export function waitLeft(tries: Tries, now: string): { readonly waitMilliseconds: number; readonly tries: Tries } {
  const whole = waitMillisecondsAfter(tries.failures);
  if (tries.lastAt === null || whole === 0) return { waitMilliseconds: 0, tries };
  const gone = Date.parse(now) - Date.parse(tries.lastAt);
  if (gone < 0) return { waitMilliseconds: whole, tries: { ...tries, lastAt: now } };
  return { waitMilliseconds: Math.max(0, whole - gone), tries };
}

/** The tries with one more wrong one at `now`. */
export function oneMoreTry(tries: Tries, now: string): Tries {
  return { failures: Math.min(tries.failures + 1, 1_000_000), lastAt: now };
}

/** 'Wait 40 seconds before the next try.'; empty when there is nothing to wait for. */
export function waitSentence(waitMilliseconds: number): string {
  if (waitMilliseconds <= 0) return '';
  const seconds = Math.ceil(waitMilliseconds / 1000);
  const time =
    seconds < 120 ? plural(seconds, 'second', 'seconds') : plural(Math.ceil(seconds / 60), 'minute', 'minutes');
  return `Wait ${time} before the next try.`;
}
