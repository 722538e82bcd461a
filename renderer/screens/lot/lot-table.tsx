// The lot as one table under one time axis. Long lots draw only the rows near the window and the one the cursor is on.
import { defaultRangeExtractor, useVirtualizer } from '@tanstack/react-virtual';
import { type KeyboardEvent, type MouseEvent, useEffect, useLayoutEffect, useMemo, useRef } from 'react';
import type { LotRow as Row } from '../../../app/contract/views.ts';
import type { Day } from '../../../app/domain/shared/day.ts';
import { useStore } from '../../state/store.ts';
import { lotText } from '../../text/lot.ts';
import { GapRow } from '../../ui/gap-row.tsx';
import { indexAfterKey } from '../../ui/row-keys.ts';
import { useWidth } from '../../ui/use-width.ts';
import { focusRow } from './focus-row.ts';
import { lotAxis } from './lot-axis.ts';
import { headHeight, LotHead } from './lot-head.tsx';
import { LotRow, openRow, rowHeight } from './lot-row.tsx';
import { changeLotView, lotViewStore } from './lot-view.ts';

/** Up to here all rows are drawn; beyond, this many on each side of the window. */
const allUpTo = 80;
const drawnBeyond = 30;

export function LotTable({
  rows,
  today,
  seesMoney,
}: {
  readonly rows: readonly Row[];
  readonly today: Day;
  readonly seesMoney: boolean;
}) {
  const { sort, span, cursorId } = useStore(lotViewStore);
  const scroller = useRef<HTMLDivElement>(null);
  const stripHead = useRef<HTMLTableCellElement>(null);
  const stripWidth = useWidth(stripHead);
  const axis = useMemo(() => lotAxis(span, today), [span, today]);
  const cursorAt = rows.findIndex((row) => row.id === cursorId);
  const cursorIndex = Math.max(0, cursorAt);
  const columns = seesMoney ? 9 : 6;
  const virtualizer = useVirtualizer({
    count: rows.length,
    getScrollElement: () => scroller.current,
    estimateSize: () => rowHeight,
    getItemKey: (index) => rows[index]?.id ?? index,
    overscan: rows.length <= allUpTo ? rows.length : drawnBeyond,
    scrollMargin: headHeight,
    scrollPaddingStart: headHeight,
    initialOffset: () => lotViewStore.read().scrollTop,
    rangeExtractor: (range) => [...new Set([...defaultRangeExtractor(range), cursorIndex])].sort((a, b) => a - b),
  });

  const moveTo = (index: number) => {
    const row = rows[index];
    if (row === undefined) return;
    changeLotView({ cursorId: row.id });
    virtualizer.scrollToIndex(index, { align: 'auto' });
    focusRow(row.id);
  };

  // Coming back from a vehicle, the cursor and the focus are on it again.
  useLayoutEffect(() => {
    const { cursorId: id, scrollTop } = lotViewStore.read();
    if (scroller.current !== null) scroller.current.scrollTop = scrollTop;
    const focused = document.activeElement;
    // The rows themselves are drawn a moment later, once the table knows its height.
    if (id !== null && (focused === document.body || focused?.id === 'screen'))
      requestAnimationFrame(() => focusRow(id));
    const scrolled = scroller.current;
    return () => changeLotView({ scrollTop: scrolled?.scrollTop ?? 0 });
  }, []);

  // When the row that has the focus leaves the lot, its neighbour takes over.
  const focusedAt = useRef<number | null>(null);
  useEffect(() => {
    if (focusedAt.current === null) return;
    if (cursorAt >= 0) {
      focusedAt.current = cursorAt;
      return;
    }
    const neighbour = rows[Math.min(focusedAt.current, rows.length - 1)];
    if (neighbour !== undefined && document.activeElement === document.body) {
      changeLotView({ cursorId: neighbour.id });
      requestAnimationFrame(() => focusRow(neighbour.id));
    }
  }, [rows, cursorAt]);

  const onKeyDown = (event: KeyboardEvent) => {
    if (event.ctrlKey || event.altKey || event.metaKey || !(event.target instanceof HTMLAnchorElement)) return;
    const index = indexAfterKey(event.key, cursorIndex, rows.length);
    if (index === null) return;
    event.preventDefault();
    moveTo(index);
  };
  const onClick = (event: MouseEvent) => {
    const id =
      event.target instanceof Element ? event.target.closest<HTMLElement>('tr[data-id]')?.dataset.id : undefined;
    // Text that is being marked to be copied is no wish to open anything.
    if (id !== undefined && document.getSelection()?.isCollapsed !== false) openRow(id);
  };

  const items = virtualizer.getVirtualItems();
  const bodyHeight = rows.length * rowHeight;
  let drawnTo = 0;
  return (
    <div className="lot-scroll" ref={scroller}>
      <table
        className={`lot-table${seesMoney ? '' : ' is-without-money'}`}
        aria-rowcount={rows.length + 1}
        onKeyDown={onKeyDown}
        onClick={onClick}
        onFocus={() => {
          focusedAt.current = cursorIndex;
        }}
        onBlur={(event) => {
          if (event.relatedTarget !== null) focusedAt.current = null;
        }}
      >
        <caption className="unseen">{lotText.caption(lotText.columnTips[sort.column])}</caption>
        <colgroup>
          <col className="col-stock" />
          <col className="col-vehicle" />
          <col className="col-standing" />
          <col className="col-strip" />
          <col className="col-held" />
          {seesMoney && (
            <>
              <col className="col-amount" />
              <col className="col-amount" />
              <col className="col-amount" />
            </>
          )}
          <col className="col-move" />
        </colgroup>
        <LotHead
          sort={sort}
          axis={axis}
          today={today}
          stripWidth={stripWidth}
          stripHead={stripHead}
          seesMoney={seesMoney}
        />
        <tbody>
          {items.flatMap(({ index }) => {
            const row = rows[index];
            if (row === undefined) return [];
            const start = index * rowHeight;
            const gap = start - drawnTo;
            drawnTo = start + rowHeight;
            const line = (
              <LotRow
                key={row.id}
                row={row}
                rowIndex={index + 2}
                isCursor={index === cursorIndex}
                axis={axis}
                stripWidth={stripWidth}
                today={today}
                seesMoney={seesMoney}
              />
            );
            return gap > 0 ? [<GapRow key={`gap-${row.id}`} height={gap} columns={columns} />, line] : [line];
          })}
          {drawnTo < bodyHeight && <GapRow height={bodyHeight - drawnTo} columns={columns} />}
        </tbody>
      </table>
    </div>
  );
}
