// What the program has just done or could not do, in a sentence each, with at most one action. Not for problems at a field.
import { createStore } from './store.ts';

export type Notice = {
  readonly id: number;
  readonly kind: 'done' | 'problem';
  readonly sentence: string;
  readonly action: { readonly label: string; readonly onPress: () => void } | null;
};

export const noticeStore = createStore<readonly Notice[]>([]);

let lastId = 0;
const mostNotices = 4;
const doneShownMs = 7000;

export function closeNotice(id: number): void {
  noticeStore.update((notices) => notices.filter((notice) => notice.id !== id));
}

/** Problems stay until they are closed; what was done goes by itself. The same problem is not said twice at once. */
export function notify(kind: Notice['kind'], sentence: string, action: Notice['action'] = null): void {
  if (noticeStore.read().some((notice) => notice.kind === 'problem' && notice.sentence === sentence)) return;
  lastId += 1;
  const id = lastId;
  noticeStore.update((notices) => [...notices.slice(1 - mostNotices), { id, kind, sentence, action }]);
  if (kind === 'done') setTimeout(() => closeNotice(id), doneShownMs);
}
