// The sheets that are being made, how far they are, and what was written: kept while other screens are looked at.
import type { SheetOrder, SheetProgress } from '../../app/contract/sheet-channels.ts';
import { ask, on } from '../bridge.ts';
import { errorSentence } from '../text/errors.ts';
import { sheetJobText } from '../text/sheet-job.ts';
import { notify } from './notice-store.ts';
import { openPrinted, showSheetsFolder } from './print-sheets.ts';
import { createStore } from './store.ts';

export type WrittenFile = {
  readonly fileName: string;
  readonly pages: number;
  readonly sheets: number;
  /** Only those in the fleet's own folder can be opened by their name. */
  readonly isInFolder: boolean;
};

export type SheetJobState = {
  /** Null: nothing is being made. */
  readonly progress: SheetProgress | null;
  readonly isCancelling: boolean;
  readonly files: readonly WrittenFile[];
};

const mostShown = 200;

export const sheetJobStore = createStore<SheetJobState>({ progress: null, isCancelling: false, files: [] });

/** The newest first; a file written again stands once. */
function noteFiles(written: readonly WrittenFile[]): void {
  const names = new Set(written.map(({ fileName }) => fileName));
  sheetJobStore.update((state) => ({
    ...state,
    files: [...written, ...state.files.filter(({ fileName }) => !names.has(fileName))].slice(0, mostShown),
  }));
}

/** One order at a time; a second one is refused by the main process and said. */
export async function makeSheets(order: SheetOrder): Promise<void> {
  sheetJobStore.update((state) => ({ ...state, progress: { done: 0, total: 0, now: '' }, isCancelling: false }));
  const stop = on('sheet:progress', (progress) => sheetJobStore.update((state) => ({ ...state, progress })));
  const answer = await ask('sheet:make', order);
  stop();
  sheetJobStore.update((state) => ({ ...state, progress: null, isCancelling: false }));
  if (!answer.ok) {
    notify('problem', errorSentence(answer.error));
    return;
  }
  const { end, files, sentence, isInFolder } = answer.value;
  noteFiles(files.map((file) => ({ ...file, isInFolder })));
  if (end === 'not-begun') return;
  if (end === 'failed' || sentence !== '') notify('problem', sentence);
  if (end === 'failed') return;
  const [only] = files;
  const words = end === 'cancelled' ? sheetJobText.cancelled(files.length) : sheetJobText.written(files, order.to);
  if (files.length === 1 && only !== undefined && isInFolder)
    notify('done', words, { label: sheetJobText.open, onPress: () => void openPrinted(only.fileName) });
  else if (files.length > 0 && isInFolder)
    notify('done', words, { label: sheetJobText.showFolder, onPress: () => void showSheetsFolder() });
  else notify('done', words);
}

export async function cancelSheets(): Promise<void> {
  sheetJobStore.update((state) => ({ ...state, isCancelling: true }));
  await ask('sheet:cancel', {});
}
