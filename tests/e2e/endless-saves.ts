// Saves as fast as the program takes them until its process is gone, and what lies on the disk then. Judges nothing.
import { readdir, readFile } from 'node:fs/promises';
import path from 'node:path';
import type { Vehicle } from '../../app/domain/vehicle/vehicle.ts';
import { type ReadRecord, readRecord } from '../../app/storage/record-file.ts';
import { recordKinds } from '../../app/storage/record-kind.ts';
import type { Program } from './fixtures.ts';

/** `noteId` and `text` of the note that was saved; the page tells it by the exposed function `acknowledged`. */
export type Acknowledged = {
  readonly id: string;
  readonly noteId: string;
  readonly text: string;
  readonly revision: number;
};

/**
 * Notes on all these vehicles at once. With `noteId` one note of each is written over again and again, so that records stay small however
 * long this goes on; without, each save adds one. `padding` stands behind the words of each.
 */
export async function saveWithoutEnd(
  { page }: Program,
  how: { readonly ids: readonly string[]; readonly round: number; readonly noteId?: string; readonly padding?: string },
): Promise<void> {
  await page.evaluate(async ({ ids, round, noteId: oneNote, padding = '' }) => {
    const { ask } = window.lotwright;
    const { acknowledged } = window as unknown as { acknowledged(told: Acknowledged): Promise<void> };
    const saveOn = async (id: string) => {
      for (let number = 1; ; number += 1) {
        const open = await ask['vehicle:open']({ id });
        if (!open.ok) throw new Error(open.error.code);
        const noteId = oneNote ?? `note-${round}-${number}`;
        const text = `Round ${round}, number ${number}. ${padding}`.trim();
        const change = { kind: 'put', list: 'notes', item: { id: noteId, on: open.value.today, text } } as const;
        const answer = await ask['vehicle:change']({ id, baseRevision: open.value.revision, change });
        if (!answer.ok) throw new Error(answer.error.code);
        void acknowledged({ id, noteId, text, revision: answer.value.view.revision });
      }
    };
    await Promise.all(ids.map(saveOn));
  }, how);
}

/** Every vehicle file of the folder, read as the program reads it; a file that does not read fails the test. */
export async function vehiclesOnDisk({ fleetFolder }: Program): Promise<ReadonlyMap<string, ReadRecord<Vehicle>>> {
  const folder = path.join(fleetFolder, 'vehicles');
  const found = new Map<string, ReadRecord<Vehicle>>();
  for (const name of await readdir(folder)) {
    // What was being written when the process died lies beside the file it was to replace, under another name.
    if (!name.endsWith('.json')) continue;
    const id = name.slice(0, -'.json'.length);
    const read = readRecord(await readFile(path.join(folder, name)), recordKinds.vehicle, id);
    if (!read.ok) throw new Error(`${name}: ${read.error.reason}`);
    found.set(id, read.value);
  }
  return found;
}
