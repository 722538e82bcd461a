// Which backups have served their time. Pure: it names them, it removes nothing.
import type { Day } from '../shared/day.ts';
import { dayNumber } from '../shared/day.ts';
import type { BackupName } from './backup-name.ts';
import { compareBackupNames } from './backup-name.ts';

export type BackupEntry = BackupName & {
  /** Its table of contents reads and counts right. One that does not is never removed: a person has to look at it. */
  readonly isGood: boolean;
  /** It holds the last good copy of a record that is damaged or missing at present. */
  readonly isNeeded: boolean;
};

export type Retention = {
  /** How many of the newest days (weeks, months) that have a backup keep their newest one. */
  readonly days: number;
  readonly weeks: number;
  readonly months: number;
  /** For how many days a backup made before a restore or a migration is kept whatever else there is. */
  readonly safetyDays: number;
};

export const usualRetention: Retention = { days: 7, weeks: 4, months: 6, safetyDays: 30 };

/** Weeks begin on Monday (ISO 8601); day 0 was a Thursday. */
function weekOf(day: Day): string {
  return `${Math.floor((dayNumber(day) + 3) / 7)}`;
}

/** The newest entry of each of the newest `count` groups. `newestFirst` must be sorted. */
function newestOfEach(newestFirst: readonly BackupEntry[], groupOf: (day: Day) => string, count: number): string[] {
  const newest = new Map<string, string>();
  for (const entry of newestFirst) {
    const group = groupOf(entry.day);
    if (!newest.has(group)) newest.set(group, entry.id);
  }
  return [...newest.values()].slice(0, count);
}

/**
 * The ids to remove, oldest first. Days are counted among days that have a backup, so a shop that was closed for a month keeps its
 * old copies. Never named: the newest good backup, one made by hand, one that is needed, one that does not read, one dated after
 * `today` (the clock was wrong once). The numbers are common practice, no source.
 */
export function backupsToRemove(
  entries: readonly BackupEntry[],
  today: Day,
  retention: Retention = usualRetention,
): readonly string[] {
  const newestFirst = entries.filter((entry) => entry.isGood).sort((a, b) => compareBackupNames(b, a));
  const rotating = newestFirst.filter((entry) => entry.reason !== 'by-hand');
  const isSafety = (entry: BackupEntry) => entry.reason === 'before-migration' || entry.reason === 'before-restore';
  const kept = new Set([
    ...newestFirst.slice(0, 1).map((entry) => entry.id),
    ...newestOfEach(rotating, (day) => day, retention.days),
    ...newestOfEach(rotating, weekOf, retention.weeks),
    ...newestOfEach(rotating, (day) => day.slice(0, 7), retention.months),
  ]);
  return rotating
    .filter((entry) => !kept.has(entry.id) && !entry.isNeeded && entry.day <= today)
    .filter((entry) => !isSafety(entry) || dayNumber(today) - dayNumber(entry.day) > retention.safetyDays)
    .map((entry) => entry.id)
    .reverse();
}
