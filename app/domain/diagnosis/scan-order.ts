// The order in which scans were taken, and which of them are held against each other. Nothing is compared here.
import type { Scan } from './scan.ts';

/** Negative where `a` was taken before `b`: by day, within a day by when it was entered. */
export function byTimeTaken(a: Scan, b: Scan): number {
  if (a.takenOn !== b.takenOn) return a.takenOn < b.takenOn ? -1 : 1;
  if (a.entered.at === b.entered.at) return 0;
  return a.entered.at < b.entered.at ? -1 : 1;
}

/** The first scan that was no post-repair scan, and the last that was one; either may be missing. */
export function scansBeforeAndAfter(scans: readonly Scan[]): {
  readonly before: Scan | null;
  readonly after: Scan | null;
} {
  const sorted = [...scans].sort(byTimeTaken);
  const after = sorted.filter((scan) => scan.kind === 'post-repair');
  return { before: sorted.find((scan) => scan.kind !== 'post-repair') ?? null, after: after[after.length - 1] ?? null };
}
