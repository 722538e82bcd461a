// Names of backups: when they were made and why, readable in a file browser and sortable as text. Pure.
import { z } from 'zod';

export const backupReasonSchema = z.enum(['daily', 'before-migration', 'before-restore', 'by-hand']);
export type BackupReason = z.infer<typeof backupReasonSchema>;

const namePattern =
  /^(\d{4}-\d\d-\d\d)T(\d\d)-(\d\d)-(\d\d)-(daily|before-migration|before-restore|by-hand)(?:-([2-9]|[1-9]\d+))?$/;

/** 'YYYY-MM-DDTHH-MM-SS' in UTC: an instant as it can stand in a file name on every system (no colons). */
export function stampOf(instant: string): string {
  return instant.slice(0, 19).replaceAll(':', '-');
}

/** `number` is 1 for the first backup of this second and reason; later ones get '-2', '-3', … */
export function backupName(madeAt: string, reason: BackupReason, number = 1): string {
  return `${stampOf(madeAt)}-${reason}${number > 1 ? `-${number}` : ''}`;
}

export type BackupName = {
  readonly id: string;
  readonly day: string;
  readonly madeAt: string;
  readonly reason: BackupReason;
  readonly number: number;
};

/** Null when it is not a name that `backupName` makes: such a folder is left alone. */
export function readBackupName(id: string): BackupName | null {
  const match = namePattern.exec(id);
  if (!match) return null;
  const [, day = '', hour, minute, second, reason, number] = match;
  const madeAt = `${day}T${hour}:${minute}:${second}.000Z`;
  if (Number.isNaN(Date.parse(madeAt))) return null;
  return { id, day, madeAt, reason: backupReasonSchema.parse(reason), number: number ? Number(number) : 1 };
}

/** Oldest first. */
export function compareBackupNames(a: BackupName, b: BackupName): number {
  if (a.madeAt !== b.madeAt) return a.madeAt < b.madeAt ? -1 : 1;
  return a.number - b.number || (a.id < b.id ? -1 : a.id > b.id ? 1 : 0);
}
