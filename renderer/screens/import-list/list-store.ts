// The purchase list being taken in: its text, how it is read, what came of trying it. Survives going to another screen and back.
import type { ListLook, TriedRowView } from '../../../app/contract/list-import-channels.ts';
import { type ListEncoding, largestListBytes, readListText } from '../../../app/domain/import/list-text.ts';
import type { ListReading } from '../../../app/domain/import/try-list.ts';
import { ask } from '../../bridge.ts';
import { createStore } from '../../state/store.ts';
import { errorSentence } from '../../text/errors.ts';
import { importListText as words } from '../../text/import-list.ts';

export type OpenList = {
  readonly fileName: string;
  readonly encoding: ListEncoding;
  readonly text: string;
  readonly look: ListLook;
  readonly reading: ListReading;
  readonly tried: readonly TriedRowView[];
  /** Good rows that the person has left out. */
  readonly leftOut: ReadonlySet<number>;
};

export const listStore = createStore<OpenList | null>(null);
/** Why the last file was not opened, or the list not tried; empty when it was. */
export const listTroubleStore = createStore('');

let latest = 0;

async function tryOut(): Promise<void> {
  const list = listStore.read();
  if (list === null) return;
  latest += 1;
  const trying = latest;
  const { text, reading } = list;
  const answer = await ask('list:try', { text, reading });
  if (trying !== latest) return;
  if (answer.ok) listStore.update((now) => now && { ...now, tried: answer.value });
  listTroubleStore.set(answer.ok ? '' : errorSentence(answer.error));
}

export async function openList(file: File, odometerUnit: 'km' | 'mi'): Promise<void> {
  const refuse = (sentence: string) => listTroubleStore.set(sentence);
  if (file.size > largestListBytes) return refuse(words.tooLarge);
  let bytes: Uint8Array;
  try {
    bytes = new Uint8Array(await file.arrayBuffer());
  } catch {
    return refuse(words.notRead);
  }
  const found = readListText(bytes);
  if (found === null) return refuse(words.noText);
  const looked = await ask('list:look', { text: found.text });
  if (!looked.ok) return refuse(errorSentence(looked.error));
  const look = looked.value;
  const { match, decimalForms, dayForms } = look;
  const reading: ListReading = {
    match,
    decimalForms,
    dayForms,
    odometerUnit,
    boughtOn: null,
    vinReason: '',
    numbersStock: true,
  };
  listStore.set({ ...found, fileName: file.name, look, reading, tried: [], leftOut: new Set() });
  await tryOut();
}

export function closeList(): void {
  latest += 1;
  listStore.set(null);
  listTroubleStore.set('');
}

let soon: ReturnType<typeof setTimeout> | undefined;

/** Tried anew a moment after the last change, so that typing a reason does not try two thousand rows at each letter. */
export function changeReading(part: Partial<ListReading>): void {
  listStore.update((list) => list && { ...list, reading: { ...list.reading, ...part } });
  clearTimeout(soon);
  soon = setTimeout(() => void tryOut(), 150);
}

export function changeLeftOut(change: (leftOut: ReadonlySet<number>) => ReadonlySet<number>): void {
  listStore.update((list) => list && { ...list, leftOut: change(list.leftOut) });
}

/** The good rows that are not left out. */
export function chosenRows({ tried, leftOut }: Pick<OpenList, 'tried' | 'leftOut'>): number[] {
  return tried.filter(({ row, problems }) => problems.length === 0 && !leftOut.has(row)).map(({ row }) => row);
}
