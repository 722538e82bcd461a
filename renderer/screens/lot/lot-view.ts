// How the person looks at the lot: search, filter, order, span, cursor. Kept while another screen is shown, gone with the window.
import type { Standing } from '../../../app/domain/time/cause.ts';
import { createStore } from '../../state/store.ts';
import type { LotSpan } from './lot-axis.ts';
import { firstSort, type LotColumn, type LotSort, startsDescending } from './lot-sort.ts';

export type LotView = {
  readonly search: string;
  readonly standings: ReadonlySet<Standing>;
  readonly sort: LotSort;
  readonly span: LotSpan;
  /** The vehicle the cursor is on, by its identity, so that it stays there when rows move. */
  readonly cursorId: string | null;
  readonly scrollTop: number;
};

export const lotViewStore = createStore<LotView>({
  search: '',
  standings: new Set(),
  sort: firstSort,
  span: 'six-weeks',
  cursorId: null,
  scrollTop: 0,
});

export function changeLotView(change: Partial<LotView>): void {
  lotViewStore.update((view) => ({ ...view, ...change }));
}

/** The other direction on the column already sorted by, else this column in the direction it starts in. */
export function sortBy(column: LotColumn): void {
  const { sort } = lotViewStore.read();
  const isDescending = sort.column === column ? !sort.isDescending : startsDescending(column);
  changeLotView({ sort: { column, isDescending } });
}
