// The rows of a purchase list as one table of which only the rows near the window and the one with the cursor are drawn: five thousand
// rows are as quick as fifty. One stop for Tab; the arrow keys move in it.
import { defaultRangeExtractor, useVirtualizer } from '@tanstack/react-virtual';
import { type KeyboardEvent, memo, type Ref, useImperativeHandle, useRef, useState } from 'react';
import type { TriedRowView } from '../../../app/contract/list-import-channels.ts';
import { showCents } from '../../../app/domain/shared/cents.ts';
import type { Day } from '../../../app/domain/shared/day.ts';
import { useDayForm } from '../../state/day-form-store.ts';
import { factNames, importListText as text } from '../../text/import-list.ts';
import { sayDay, sayDaysIn } from '../../text/say-day.ts';
import { GapRow } from '../../ui/gap-row.tsx';
import { indexAfterKey } from '../../ui/row-keys.ts';
import { changeLeftOut } from './list-store.ts';
import { nextBad } from './next-bad.ts';

/** Of a row with one line; the true height is measured when it is drawn. */
const usualRowHeight = 27;
const drawnBeyond = 20;
const columns = 6;

function toggle(row: number): void {
  changeLeftOut((leftOut) => {
    const next = new Set(leftOut);
    if (!next.delete(row)) next.add(row);
    return next;
  });
}

type RowProps = {
  readonly tried: TriedRowView;
  readonly index: number;
  readonly isChosen: boolean;
  readonly isCursor: boolean;
  readonly today: Day;
  readonly measure: (element: HTMLTableRowElement | null) => void;
};

const Row = memo(function Row({ tried, index, isChosen, isCursor, today, measure }: RowProps) {
  const { row, stockNumber, vin, title, boughtOn, priceCents, problems } = tried;
  useDayForm();
  const isGood = problems.length === 0;
  return (
    <tr
      ref={measure}
      data-index={index}
      aria-rowindex={index + 2}
      aria-selected={isGood && isChosen}
      tabIndex={isCursor ? 0 : -1}
      className={isGood ? undefined : 'is-bad'}
    >
      <td>
        {isGood && (
          <input
            type="checkbox"
            tabIndex={-1}
            aria-label={text.chooseRow(row + 1)}
            checked={isChosen}
            onChange={() => toggle(row)}
          />
        )}
      </td>
      <td className="is-number">{row + 1}</td>
      <td>
        <b>{stockNumber}</b> {title} <span className="code quiet">{vin}</span>
      </td>
      <td>{boughtOn === null ? '' : sayDay(boughtOn, today)}</td>
      <td className="is-number">{priceCents === null ? '' : showCents(priceCents)}</td>
      <td className="list-against">{sayDaysIn(problems.join(' '), today)}</td>
    </tr>
  );
});

function Head() {
  return (
    <thead>
      <tr aria-rowindex={1}>
        <th scope="col">{text.take}</th>
        <th scope="col" className="is-number">
          {text.row}
        </th>
        <th scope="col">{text.vehicle}</th>
        <th scope="col">{factNames.boughtOn}</th>
        <th scope="col" className="is-number">
          {text.price}
        </th>
        <th scope="col">{text.against}</th>
      </tr>
    </thead>
  );
}

/** What the buttons above the rows ask for. */
export type RowGridHandle = { readonly goToBad: (direction: 1 | -1) => void };

export function RowGrid({
  rows,
  leftOut,
  today,
  handle,
}: {
  readonly rows: readonly TriedRowView[];
  readonly leftOut: ReadonlySet<number>;
  readonly today: Day;
  readonly handle: Ref<RowGridHandle>;
}) {
  const scroller = useRef<HTMLDivElement>(null);
  const [cursor, setCursor] = useState(0);
  const cursorIndex = Math.max(0, Math.min(cursor, rows.length - 1));
  const virtualizer = useVirtualizer({
    count: rows.length,
    getScrollElement: () => scroller.current,
    estimateSize: () => usualRowHeight,
    getItemKey: (index) => rows[index]?.row ?? index,
    overscan: drawnBeyond,
    scrollPaddingStart: usualRowHeight,
    rangeExtractor: (range) => [...new Set([...defaultRangeExtractor(range), cursorIndex])].sort((a, b) => a - b),
  });
  const focusRow = (index: number) => {
    const row = scroller.current?.querySelector<HTMLElement>(`tr[data-index="${index}"]`);
    row?.focus({ preventScroll: true });
    // The page around the rows follows too.
    row?.scrollIntoView({ block: 'nearest' });
  };
  const moveTo = (index: number | null, align: 'auto' | 'center' = 'auto') => {
    if (index === null) return;
    setCursor(index);
    virtualizer.scrollToIndex(index, { align });
    // A row that was out of sight is drawn only with the next picture.
    requestAnimationFrame(() => focusRow(index));
  };
  const goToBad = (direction: 1 | -1) => moveTo(nextBad(rows, cursorIndex, direction), 'center');
  useImperativeHandle(handle, () => ({ goToBad }));

  const onKeyDown = (event: KeyboardEvent) => {
    if (event.altKey || event.metaKey) return;
    const isArrow = event.key === 'ArrowDown' || event.key === 'ArrowUp';
    if (event.ctrlKey && isArrow) {
      event.preventDefault();
      goToBad(event.key === 'ArrowDown' ? 1 : -1);
      return;
    }
    const row = rows[cursorIndex];
    if (event.key === ' ' && event.target instanceof HTMLTableRowElement && row !== undefined) {
      event.preventDefault();
      if (row.problems.length === 0) toggle(row.row);
      return;
    }
    const index = event.ctrlKey ? null : indexAfterKey(event.key, cursorIndex, rows.length);
    if (index === null) return;
    event.preventDefault();
    moveTo(index);
  };
  const onFocus = (event: { readonly target: EventTarget }) => {
    const focused = event.target instanceof Element ? event.target.closest<HTMLElement>('tr[data-index]') : null;
    if (focused !== null) setCursor(Number(focused.dataset.index));
  };

  const items = virtualizer.getVirtualItems();
  let drawnTo = 0;
  const drawn = items.flatMap(({ index, start, end }) => {
    const tried = rows[index];
    if (tried === undefined) return [];
    const gap = start - drawnTo;
    drawnTo = end;
    const row = (
      <Row
        key={tried.row}
        tried={tried}
        index={index}
        today={today}
        isChosen={!leftOut.has(tried.row)}
        isCursor={index === cursorIndex}
        measure={virtualizer.measureElement}
      />
    );
    return gap > 0 ? [<GapRow key={`gap-${tried.row}`} height={gap} columns={columns} />, row] : [row];
  });
  const rest = virtualizer.getTotalSize() - drawnTo;
  return (
    <div className="list-rows-scroll" ref={scroller}>
      <table
        // biome-ignore lint/a11y/noNoninteractiveElementToInteractiveRole: its rows are chosen and moved in by keys, which is a grid.
        role="grid"
        aria-label={text.grid}
        aria-multiselectable="true"
        className="list-rows"
        aria-rowcount={rows.length + 1}
        onKeyDown={onKeyDown}
        onFocus={onFocus}
      >
        <Head />
        <tbody>
          {drawn}
          {rest > 0 && <GapRow height={rest} columns={columns} />}
        </tbody>
      </table>
    </div>
  );
}
