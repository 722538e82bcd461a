// Which dialog about a kept code is open, and for which request. Identities only; the code itself is never here.
import { createStore } from '../../../state/store.ts';

export type CodeDialog = {
  readonly kind: 'keep' | 'replace' | 'see' | 'hand-over' | 'about';
  readonly requestId: string;
  /** As in a sentence: 'radio code for Radio'. */
  readonly name: string;
};

export const codeDialogStore = createStore<CodeDialog | null>(null);

export function closeCodeDialog(): void {
  codeDialogStore.set(null);
}
