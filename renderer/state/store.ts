// A value that components follow. The whole of the page's state handling: no library, no magic.
import { useSyncExternalStore } from 'react';

export type Store<Value> = {
  readonly read: () => Value;
  readonly set: (value: Value) => void;
  readonly update: (change: (value: Value) => Value) => void;
  readonly subscribe: (listener: () => void) => () => void;
};

export function createStore<Value>(first: Value): Store<Value> {
  let value = first;
  const listeners = new Set<() => void>();
  const set = (next: Value) => {
    if (Object.is(next, value)) return;
    value = next;
    for (const listener of [...listeners]) listener();
  };
  return {
    read: () => value,
    set,
    update: (change) => set(change(value)),
    subscribe: (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
  };
}

/** The store's value; the component is drawn again when it changes. */
export function useStore<Value>(store: Store<Value>): Value {
  return useSyncExternalStore(store.subscribe, store.read);
}
