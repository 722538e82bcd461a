// The Lot: every vehicle as a hold strip under one time axis, what each waits for, and how to find the one that is looked for.
import './lot.css';
import { useMemo, useRef } from 'react';
import { showCents } from '../../../app/domain/shared/cents.ts';
import { useDesk } from '../../state/desk-store.ts';
import { lotStore, readLot } from '../../state/lot-store.ts';
import { useStore } from '../../state/store.ts';
import { lotText } from '../../text/lot.ts';
import { tableText } from '../../text/tables.ts';
import { Button } from '../../ui/button.tsx';
import { CsvButton } from '../../ui/csv-button.tsx';
import { EmptyFleet, useIsFleetEmpty } from '../../ui/empty-fleet.tsx';
import { EmptyState } from '../../ui/empty-state.tsx';
import { LiveRegion } from '../../ui/live-region.tsx';
import { ScreenPurpose } from '../../ui/screen-purpose.tsx';
import { showWholeUnits } from '../../ui/whole-units.ts';
import { focusRow } from './focus-row.ts';
import { filterRows } from './lot-filter.ts';
import { sortRows } from './lot-sort.ts';
import { LotTable } from './lot-table.tsx';
import { LotLegend, LotTools } from './lot-tools.tsx';
import { type LotTotals, totalsOf } from './lot-totals.ts';
import { changeLotView, lotViewStore } from './lot-view.ts';

function NothingFound({ search, among }: { readonly search: string; readonly among: number }) {
  return (
    <EmptyState
      sentence={search.trim() === '' ? lotText.nothingOfStanding : lotText.nothingFound(search.trim())}
      action={
        <>
          {among > 0 && (
            <Button onPress={() => changeLotView({ standings: new Set(['sold']) })}>
              {`${lotText.foundAmongSold(among)}: ${lotText.showSold}`}
            </Button>
          )}
          <Button onPress={() => changeLotView({ search: '', standings: new Set() })}>{lotText.showAll}</Button>
        </>
      }
    />
  );
}

function Totals({ totals, currency }: { readonly totals: LotTotals; readonly currency: string }) {
  return (
    <div className="lot-totals">
      <b>{lotText.totals(totals.vehicles)}</b>
      {totals.tiedUpCents !== null && (
        <span title={`${showCents(totals.tiedUpCents)} ${currency}`}>
          <b>{showWholeUnits(totals.tiedUpCents)}</b> {currency} {lotText.tiedUp}
        </span>
      )}
      {totals.heldDays > 0 && <span>{lotText.idleOfHeld(totals.idleDays, totals.heldDays)}</span>}
    </div>
  );
}

export function LotScreen() {
  const desk = useDesk();
  const lot = useStore(lotStore);
  const { search, standings, sort } = useStore(lotViewStore);
  const isEmpty = useIsFleetEmpty();
  const input = useRef<HTMLInputElement>(null);
  const { today, seesMoney } = desk;
  const found = useMemo(() => filterRows(lot.rows, { search, standings }), [lot.rows, search, standings]);
  const sorted = useMemo(() => sortRows(found.shown, sort, today), [found.shown, sort, today]);
  const totals = useMemo(() => totalsOf(sorted), [sorted]);
  const goToFirst = () => {
    const first = sorted[0];
    if (first === undefined) return;
    changeLotView({ cursorId: first.id });
    focusRow(first.id, { preventScroll: false });
  };
  if (lot.state === 'failed')
    return (
      <div className="lot" role="alert">
        <EmptyState
          sentence={lot.trouble}
          action={<Button onPress={() => void readLot()}>{lotText.tryAgain}</Button>}
        />
      </div>
    );
  if (isEmpty)
    return (
      <div className="lot">
        <h1>{lotText.title}</h1>
        <ScreenPurpose screen="lot" />
        <EmptyFleet />
      </div>
    );
  if (lot.state === 'reading') return <p className="lot quiet">{lotText.reading}</p>;
  const soldElsewhere = standings.size === 0 && search.trim() !== '' ? (found.counts.sold ?? 0) : 0;
  return (
    <div className="lot">
      <LotTools
        input={input}
        onGoToFirst={goToFirst}
        whyNoTakeIn={desk.person.role === 'manager' ? desk.readOnlyReason : lotText.onlyManagersTakeIn}
        seesMoney={seesMoney}
      />
      <LotLegend counts={found.counts} />
      <LiveRegion text={lotText.found(sorted.length)} />
      {sorted.length === 0 && lot.toCome > 0 ? (
        <p className="quiet">{lotText.soldToCome(lot.toCome)}</p>
      ) : sorted.length === 0 ? (
        <NothingFound search={search} among={soldElsewhere} />
      ) : (
        <>
          <LotTable rows={sorted} today={today} seesMoney={seesMoney} />
          <div className="lot-foot">
            <Totals totals={totals} currency={desk.shop?.dealer.currency ?? ''} />
            <CsvButton what={tableText.lot} table={() => ({ table: 'lot', ids: sorted.map(({ id }) => id) })} />
            {lot.toCome > 0 && <span className="quiet">{lotText.soldToCome(lot.toCome)}</span>}
            {soldElsewhere > 0 && (
              <Button kind="quiet" onPress={() => changeLotView({ standings: new Set(['sold']) })}>
                {`${lotText.foundAmongSold(soldElsewhere)}: ${lotText.showSold}`}
              </Button>
            )}
          </div>
        </>
      )}
    </div>
  );
}
