// Which backups go: automatic ones that others stand in for, and never the last way back.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  type BackupReason,
  backupName,
  backupReasonSchema,
  compareBackupNames,
  readBackupName,
} from '../../../app/domain/backup/backup-name.ts';
import { type BackupEntry, backupsToRemove } from '../../../app/domain/backup/retention.ts';
import { addDays } from '../../../app/domain/shared/day.ts';

function entry(day: string, reason: BackupReason = 'daily', more: Partial<BackupEntry> = {}, number = 1): BackupEntry {
  const name = readBackupName(backupName(`${day}T09:00:00.000Z`, reason, number));
  if (!name) throw new Error('The name does not read back.');
  return { ...name, isGood: true, isNeeded: false, ...more };
}
const dailies = (first: string, count: number) =>
  Array.from({ length: count }, (_, index) => entry(addDays(first, index)));
const kept = (entries: readonly BackupEntry[], today: string) => {
  const removed = new Set(backupsToRemove(entries, today));
  return entries.filter(({ id }) => !removed.has(id)).map(({ day }) => day);
};

describe('names', () => {
  it('read back what they were made from', () => {
    const id = backupName('2026-03-04T17:08:09.123Z', 'before-restore', 3);
    expect(id).toBe('2026-03-04T17-08-09-before-restore-3');
    expect(readBackupName(id)).toEqual({
      id,
      day: '2026-03-04',
      madeAt: '2026-03-04T17:08:09.000Z',
      reason: 'before-restore',
      number: 3,
    });
  });

  it.each([
    '',
    'notes',
    '2026-03-04T17-08-09',
    '2026-03-04T17-08-09-weekly',
    '2026-13-04T17-08-09-daily',
    '.unfinished-x',
  ])('leaves %j alone', (name) => expect(readBackupName(name)).toBeNull());

  it('sort by time, then by number, not as text', () => {
    const entries = [
      entry('2026-03-04', 'by-hand', {}, 10),
      entry('2026-03-04', 'by-hand', {}, 2),
      entry('2026-03-03'),
    ];
    expect(entries.sort(compareBackupNames).map(({ day, number }) => [day, number])).toEqual([
      ['2026-03-03', 1],
      ['2026-03-04', 2],
      ['2026-03-04', 10],
    ]);
  });
});

describe('what is kept', () => {
  it('is seven days, four weeks (Monday first) and six months', () => {
    expect(kept(dailies('2025-09-01', 200), '2026-03-19')).toEqual([
      '2025-10-31',
      '2025-11-30',
      '2025-12-31',
      '2026-01-31',
      '2026-02-28',
      '2026-03-01', // a Sunday: the newest of its week
      '2026-03-08',
      ...['13', '14', '15', '16', '17', '18', '19'].map((day) => `2026-03-${day}`),
    ]);
  });

  it('is still the newest one when nothing at all is to be kept', () => {
    const nothing = { days: 0, weeks: 0, months: 0, safetyDays: 0 };
    const removed = backupsToRemove(dailies('2026-03-01', 5), '2026-03-05', nothing);
    expect(removed.map((id) => id.slice(0, 10))).toEqual(['2026-03-01', '2026-03-02', '2026-03-03', '2026-03-04']);
  });

  it('is everything of a shop that was closed for long: days without a backup do not count', () => {
    const entries = dailies('2025-01-01', 7);
    expect(backupsToRemove(entries, '2026-03-19')).toEqual([]);
  });

  it('is the newest of a day with several, and those before a restore or migration for thirty days', () => {
    const entries = [
      entry('2026-03-04', 'before-restore'),
      entry('2026-03-04', 'before-restore', {}, 2),
      ...dailies('2026-03-05', 30),
    ];
    expect(backupsToRemove(entries, '2026-04-03').filter((id) => id.includes('restore'))).toEqual([]);
    expect(backupsToRemove(entries, '2026-04-04').filter((id) => id.includes('restore'))).toHaveLength(2);
  });

  it('is what a damaged record still needs, what does not read, and what lies in the future', () => {
    const old = '2024-01-01';
    const pinned = [
      entry(old, 'daily', { isNeeded: true }),
      entry(addDays(old, 1), 'daily', { isGood: false }),
      entry(addDays(old, 2), 'by-hand'),
    ];
    const future = Array.from({ length: 9 }, (_, index) => entry(addDays('2030-01-01', index)));
    const removed = backupsToRemove([...pinned, ...future, ...dailies('2025-06-01', 250)], '2026-03-01');
    expect(removed.length).toBeGreaterThan(200);
    for (const { id } of [...pinned, ...future]) expect(removed).not.toContain(id);
  });
});

const entries = fc.uniqueArray(
  fc
    .record({
      offset: fc.integer({ min: 0, max: 900 }),
      reason: fc.constantFrom(...backupReasonSchema.options),
      isGood: fc.boolean(),
      isNeeded: fc.boolean(),
    })
    .map(({ offset, reason, isGood, isNeeded }) => entry(addDays('2024-01-01', offset), reason, { isGood, isNeeded })),
  { selector: ({ id }) => id, maxLength: 60 },
);
const today = fc.integer({ min: 0, max: 1200 }).map((offset) => addDays('2024-01-01', offset));

describe('whatever there is', () => {
  it('never removes the newest good one, one made by hand, a needed one or one that does not read', () => {
    fc.assert(
      fc.property(entries, today, (all, day) => {
        const removed = new Set(backupsToRemove(all, day));
        const newestGood = all
          .filter(({ isGood }) => isGood)
          .sort(compareBackupNames)
          .at(-1);
        for (const { id, reason, isGood, isNeeded } of all) {
          const isPinned = id === newestGood?.id || reason === 'by-hand' || !isGood || isNeeded;
          if (isPinned) expect(removed.has(id)).toBe(false);
        }
      }),
    );
  });

  it('has nothing more to remove after removing', () => {
    fc.assert(
      fc.property(entries, today, (all, day) => {
        const removed = new Set(backupsToRemove(all, day));
        expect(
          backupsToRemove(
            all.filter(({ id }) => !removed.has(id)),
            day,
          ),
        ).toEqual([]);
      }),
    );
  });

  it('holds at most seventeen automatic ones when tidied each day, and still reaches four months back', () => {
    let present: BackupEntry[] = [];
    for (let day = 0; day < 500; day++) {
      const now = addDays('2025-01-01', day);
      present = [...present, entry(now)];
      const removed = new Set(backupsToRemove(present, now));
      present = present.filter(({ id }) => !removed.has(id));
      expect(present.length).toBeLessThanOrEqual(17);
      if (day > 180) expect((present[0]?.day ?? now) <= addDays(now, -120)).toBe(true);
    }
  });
});
