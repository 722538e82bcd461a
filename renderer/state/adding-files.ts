// Files that are being added to vehicles, one after the other, so that only one is in memory. What was refused stays in the list with its
// reason and its file, to be tried again; goes on while other screens are looked at, and stops when somebody else is at the desk.
import type { AppError } from '../../app/contract/app-error.ts';
import { mostAttachmentBytes } from '../../app/domain/vehicle/attachment.ts';
import { attachmentsText } from '../text/attachments.ts';
import { errorSentence } from '../text/errors.ts';
import { deskStore } from './desk-store.ts';
import { notify } from './notice-store.ts';
import { makeCopies } from './picture-copies.ts';
import { createStore } from './store.ts';
import { addToVehicle } from './vehicle-store.ts';

export type AddingFile = {
  readonly id: number;
  readonly vehicleId: string;
  readonly file: File;
  /** Who handed it over: it is added under no other name. */
  readonly askedBy: string | null;
  /** Why it was not added, in a sentence; null while it waits or is under way. */
  readonly refusal: string | null;
};

export type Adding = {
  readonly files: readonly AddingFile[];
  /** Of those handed over since the list was last worked off: how many are through, and how many of these were added. */
  readonly done: number;
  readonly added: number;
};

export const addingStore = createStore<Adding>({ files: [], done: 0, added: 0 });

let lastId = 0;
let isAtWork = false;

export function waitingIn({ files }: Adding): readonly AddingFile[] {
  return files.filter(({ refusal }) => refusal === null);
}

function withoutFile(state: Adding, id: number): Adding {
  return { ...state, files: state.files.filter((one) => one.id !== id) };
}

function withRefusal(state: Adding, id: number, refusal: string): Adding {
  return { ...state, files: state.files.map((one) => (one.id === id ? { ...one, refusal } : one)) };
}

function sentenceOf(error: AppError): string {
  return error.problems[0]?.sentence ?? errorSentence(error);
}

/** Why it was not added; null when it was. */
async function addOne({ vehicleId, file }: AddingFile, on: string): Promise<string | null> {
  // Larger ones are not even read; the main process says the same of what comes near it.
  if (file.size > mostAttachmentBytes) return attachmentsText.tooLarge(file.size);
  if (file.size === 0) return attachmentsText.isEmpty;
  const bytes = await file.arrayBuffer().then(
    (read) => new Uint8Array(read),
    () => null,
  );
  if (bytes === null) return attachmentsText.unread;
  const answer = await addToVehicle(vehicleId, {
    name: file.name,
    bytes,
    ...(await makeCopies(file)),
    on,
    caption: '',
  });
  return answer.ok ? null : sentenceOf(answer.error);
}

function personHere(): string | null {
  return deskStore.read()?.person.id ?? null;
}

async function workOff(on: string): Promise<void> {
  if (isAtWork) return;
  isAtWork = true;
  for (;;) {
    const [next] = waitingIn(addingStore.read());
    if (next === undefined) break;
    const refusal = next.askedBy === personHere() ? await addOne(next, on) : attachmentsText.somebodyElse;
    addingStore.update((state) => {
      const after = refusal === null ? withoutFile(state, next.id) : withRefusal(state, next.id, refusal);
      return { ...after, done: state.done + 1, added: state.added + (refusal === null ? 1 : 0) };
    });
  }
  isAtWork = false;
  const { added } = addingStore.read();
  addingStore.update((state) => ({ ...state, done: 0, added: 0 }));
  if (added > 0) notify('done', attachmentsText.added(added));
}

/** `on`: the day that they are noted under. */
export function addFiles(vehicleId: string, files: readonly File[], on: string): void {
  const wanted = files.map((file): AddingFile => {
    lastId += 1;
    return { id: lastId, vehicleId, file, askedBy: personHere(), refusal: null };
  });
  addingStore.update((state) => ({ ...state, files: [...state.files, ...wanted] }));
  void workOff(on);
}

export function tryAgain(id: number, on: string): void {
  addingStore.update((state) => ({
    ...state,
    files: state.files.map((one) => (one.id === id ? { ...one, askedBy: personHere(), refusal: null } : one)),
  }));
  void workOff(on);
}

/** Takes a refused file off the list. */
export function leaveOut(id: number): void {
  addingStore.update((state) => withoutFile(state, id));
}
