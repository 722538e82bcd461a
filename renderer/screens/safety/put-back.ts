// Asks for something to be put back, or for the last putting back to be taken back. Says what stands against it in a notice.
import { ask } from '../../bridge.ts';
import { takeDesk } from '../../state/desk-store.ts';
import { notify } from '../../state/notice-store.ts';
import { errorSentence } from '../../text/errors.ts';
import { safetyText as text } from '../../text/safety.ts';

export type DonePutBack = {
  readonly what: string;
  /** The backup of what was there before. */
  readonly undoBackupId: string;
  /** Null: all of it was put back. */
  readonly vehicleId: string | null;
};

async function ofVehicle(backupId: string, vehicleId: string, what: string, said: string): Promise<DonePutBack | null> {
  const answer = await ask('safety:restore-vehicle', { backupId, vehicleId });
  if (!answer.ok) {
    notify('problem', errorSentence(answer.error));
    return null;
  }
  takeDesk(answer.value.desk, new Date().toISOString());
  notify('done', said);
  return { what, undoBackupId: answer.value.undoBackupId, vehicleId };
}

async function ofAll(
  backupId: string,
  leaving: readonly string[],
  what: string,
  said: (restored: number, withdrawn: number) => string,
): Promise<DonePutBack | null> {
  const answer = await ask('safety:restore-all', { backupId, leaving: [...leaving] });
  if (!answer.ok) {
    notify('problem', errorSentence(answer.error));
    return null;
  }
  const { desk, restored, withdrawn, undoBackupId } = answer.value;
  takeDesk(desk, new Date().toISOString());
  notify('done', said(restored, withdrawn));
  return { what, undoBackupId, vehicleId: null };
}

export function putBackVehicle(backupId: string, vehicleId: string, name: string): Promise<DonePutBack | null> {
  return ofVehicle(backupId, vehicleId, name, text.doneOne(name));
}

/** `leaving`: paths of damaged files of the backup, as they were shown. */
export function putBackAll(backupId: string, leaving: readonly string[], day: string): Promise<DonePutBack | null> {
  return ofAll(backupId, leaving, text.wholeFleet(day), (restored, withdrawn) =>
    text.doneAll(restored, withdrawn, leaving.length),
  );
}

export async function takeBack({ undoBackupId, vehicleId, what }: DonePutBack): Promise<boolean> {
  const done =
    vehicleId === null
      ? await ofAll(undoBackupId, [], what, () => text.takenBack)
      : await ofVehicle(undoBackupId, vehicleId, what, text.takenBack);
  return done !== null;
}
