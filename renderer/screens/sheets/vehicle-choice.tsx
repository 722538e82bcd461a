// The vehicles to print sheets of: found by words, chosen one by one or all at once, moved through with the arrow keys.
import { useVirtualizer } from '@tanstack/react-virtual';
import { type KeyboardEvent, useEffect, useRef } from 'react';
import type { LotRow } from '../../../app/contract/views.ts';
import { standingNames } from '../../../app/domain/time/cause.ts';
import { vehicleTitle } from '../../../app/domain/vehicle/identity.ts';
import { sheetsText } from '../../text/sheets.ts';
import { CauseSwatch } from '../../ui/cause-swatch.tsx';

const rowHeight = 30;

export type VehicleChoiceProps = {
  readonly rows: readonly LotRow[];
  readonly chosen: ReadonlySet<string>;
  /** The one that is seen beside the list. */
  readonly seenId: string | null;
  readonly onSee: (id: string) => void;
  readonly onToggle: (id: string) => void;
};

export function VehicleChoice({ rows, chosen, seenId, onSee, onToggle }: VehicleChoiceProps) {
  const scroller = useRef<HTMLDivElement>(null);
  const seenIndex = rows.findIndex((row) => row.id === seenId);
  const virtual = useVirtualizer({
    count: rows.length,
    getScrollElement: () => scroller.current,
    estimateSize: () => rowHeight,
    overscan: 12,
  });
  // biome-ignore lint/correctness/useExhaustiveDependencies: follows the row that is seen, not each measuring of the list.
  useEffect(() => {
    if (seenIndex >= 0) virtual.scrollToIndex(seenIndex, { align: 'auto' });
  }, [seenIndex]);
  const onKeyDown = (event: KeyboardEvent) => {
    const steps: Readonly<Record<string, number>> = { ArrowDown: 1, ArrowUp: -1, PageDown: 10, PageUp: -10 };
    const step = steps[event.key];
    if (event.key === ' ' && seenId !== null) {
      event.preventDefault();
      onToggle(seenId);
      return;
    }
    const target =
      event.key === 'Home' ? 0 : event.key === 'End' ? rows.length - 1 : step === undefined ? null : seenIndex + step;
    if (target === null) return;
    event.preventDefault();
    const row = rows[Math.min(rows.length - 1, Math.max(0, target))];
    if (row !== undefined) onSee(row.id);
  };
  const optionId = (id: string) => `sheet-vehicle-${id}`;
  return (
    <div
      ref={scroller}
      className="vehicle-choice"
      role="listbox"
      aria-label={sheetsText.vehicles}
      aria-multiselectable="true"
      aria-activedescendant={seenIndex < 0 || seenId === null ? undefined : optionId(seenId)}
      tabIndex={0}
      onKeyDown={onKeyDown}
    >
      <div className="vehicle-choice-rows" role="presentation" style={{ height: virtual.getTotalSize() }}>
        {virtual.getVirtualItems().map(({ index, start }) => {
          const row = rows[index];
          if (row === undefined) return null;
          const { standing } = row.held.now;
          return (
            // biome-ignore lint/a11y/useKeyWithClickEvents: the list box takes the keys for all of its options.
            <div
              key={row.id}
              id={optionId(row.id)}
              role="option"
              tabIndex={-1}
              aria-selected={chosen.has(row.id)}
              aria-posinset={index + 1}
              aria-setsize={rows.length}
              className={`vehicle-option${row.id === seenId ? ' is-seen' : ''}`}
              style={{ transform: `translateY(${start}px)` }}
              onClick={() => onSee(row.id)}
            >
              <span
                className={`vehicle-box${chosen.has(row.id) ? ' is-chosen' : ''}`}
                aria-hidden="true"
                onClick={(event) => {
                  event.stopPropagation();
                  onToggle(row.id);
                }}
              >
                {chosen.has(row.id) ? '✓' : ''}
              </span>
              <span className="code">{row.identity.stockNumber}</span>
              <span className="vehicle-option-title">{vehicleTitle(row.identity)}</span>
              <span className="vehicle-option-standing" title={standingNames[standing]}>
                <CauseSwatch standing={standing} />
                <span className="unseen">{standingNames[standing]}</span>
              </span>
            </div>
          );
        })}
      </div>
    </div>
  );
}
