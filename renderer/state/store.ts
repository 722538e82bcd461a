// A value that components follow. The whole of the page's state handling: no library, no magic.
import { useSyncExternalStore } from 'react';

export type Store<Value> = {
  readonly read: () => Value;
  readonly set: (value: Value) => void;
  readonly update: (change: (value: Value) => Value) => void;
  readonly subscribe: (listener: () => void) => () => void;
};

const forgetters = new Map<object, () => void>();

/** Puts every store back to its first value, but those: somebody else is at the desk. */
export function forgetStores(kept: readonly object[]): void {
  for (const [store, forget] of forgetters) if (!kept.includes(store)) forget();
}

export function createStore<Value>(first: Value): Store<Value> {
  let value = first;
  const listeners = new Set<() => void>();
  const set = (next: Value) => {
    if (Object.is(next, value)) return;
    value = next;
    for (const listener of [...listeners]) listener();
  };
  const store: Store<Value> = {
    read: () => value,
    set,
    update: (change) => set(change(value)),
    subscribe: (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
  };
  forgetters.set(store, () => set(first));
  return store;
}

/** The store's value; the component is drawn again when it changes. */
export function useStore<Value>(store: Store<Value>): Value {
  return useSyncExternalStore(store.subscribe, store.read);
}
