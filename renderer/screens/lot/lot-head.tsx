// The head of the lot's table: each column's name sorts by it; over the strips runs the time axis.
import type { RefObject } from 'react';
import type { Day } from '../../../app/domain/shared/day.ts';
import { lotText } from '../../text/lot.ts';
import type { Axis } from '../../ui/strip-geometry.ts';
import { TimeAxis } from '../../ui/time-axis.tsx';
import type { LotColumn, LotSort } from './lot-sort.ts';
import { sortBy } from './lot-view.ts';

export const headHeight = 44;

function SortHead({
  column,
  sort,
  isAmount = false,
}: {
  readonly column: LotColumn;
  readonly sort: LotSort;
  readonly isAmount?: boolean;
}) {
  const isSorted = sort.column === column;
  const direction = sort.isDescending ? 'descending' : 'ascending';
  return (
    <th scope="col" className={isAmount ? 'lot-amount' : undefined} aria-sort={isSorted ? direction : undefined}>
      <button type="button" className="lot-sort" title={lotText.columnTips[column]} onClick={() => sortBy(column)}>
        {lotText.columns[column]}
        {isSorted && column === 'standing' && (
          <span className="quiet">{`, ${sort.isDescending ? lotText.longestFirst : lotText.longestLast}`}</span>
        )}
        {isSorted && (
          <span className="lot-sort-mark" aria-hidden="true">
            {sort.isDescending ? '\u25bc' : '\u25b2'}
          </span>
        )}
      </button>
    </th>
  );
}

export function LotHead({
  sort,
  axis,
  today,
  stripWidth,
  stripHead,
  seesMoney,
}: {
  readonly sort: LotSort;
  readonly axis: Axis;
  readonly today: Day;
  readonly stripWidth: number;
  readonly stripHead: RefObject<HTMLTableCellElement | null>;
  readonly seesMoney: boolean;
}) {
  return (
    <thead>
      <tr aria-rowindex={1}>
        <SortHead column="stock" sort={sort} />
        <SortHead column="vehicle" sort={sort} />
        <SortHead column="standing" sort={sort} />
        <th scope="col" className="lot-strip" ref={stripHead}>
          <span className="unseen">{lotText.columns.strip}</span>
          <TimeAxis axis={axis} width={stripWidth} today={today} />
        </th>
        <SortHead column="held" sort={sort} isAmount />
        {seesMoney && (
          <>
            <SortHead column="spent" sort={sort} isAmount />
            <SortHead column="left" sort={sort} isAmount />
            <SortHead column="expected" sort={sort} isAmount />
          </>
        )}
        <SortHead column="move" sort={sort} />
      </tr>
    </thead>
  );
}
