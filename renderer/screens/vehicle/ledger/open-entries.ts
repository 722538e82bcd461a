// Which entry of which list is open for writing, and where the writing begins. Outlives the screen, as the drafts do.
import { createStore, useStore } from '../../../state/store.ts';

export type OpenEntry = {
  readonly id: string;
  readonly isNew: boolean;
  /** Name of the field to begin in; null for the first. */
  readonly focusOn: string | null;
  /** Counts up with each asking, so that asking again takes the person there again. */
  readonly asked: number;
};

/** By '<vehicle>/<list>' or '<vehicle>/<section>'. */
const entries = createStore<ReadonlyMap<string, OpenEntry>>(new Map());
let lastAsked = 0;

export function openEntry(
  place: string,
  id: string,
  { isNew = false, focusOn = null }: { readonly isNew?: boolean; readonly focusOn?: string | null } = {},
): void {
  lastAsked += 1;
  entries.update((all) => new Map(all).set(place, { id, isNew, focusOn, asked: lastAsked }));
}

export function closeEntry(place: string): void {
  entries.update((all) => {
    if (!all.has(place)) return all;
    const rest = new Map(all);
    rest.delete(place);
    return rest;
  });
}

export function useOpenEntry(place: string): OpenEntry | null {
  return useStore(entries).get(place) ?? null;
}

/** For a jump to a list: what is open there already is left as it is. */
export function entryOpenAt(place: string): OpenEntry | null {
  return entries.read().get(place) ?? null;
}
