// One vehicle as one line of the lot. Its link is the place the cursor stands on; the whole line opens the vehicle.
import { memo } from 'react';
import type { LotRow as Row } from '../../../app/contract/views.ts';
import { showCents } from '../../../app/domain/shared/cents.ts';
import { type Day, daysBetween } from '../../../app/domain/shared/day.ts';
import { standingNames } from '../../../app/domain/time/cause.ts';
import { vehicleTitle } from '../../../app/domain/vehicle/identity.ts';
import { vinTail } from '../../../app/domain/vehicle/vin.ts';
import { useDayForm } from '../../state/day-form-store.ts';
import { goTo } from '../../state/route-store.ts';
import { actorNames, commonText } from '../../text/common.ts';
import { lotText } from '../../text/lot.ts';
import { sayDay, sayDaysIn } from '../../text/say-day.ts';
import { stripLabel } from '../../text/strip.ts';
import { CauseSwatch } from '../../ui/cause-swatch.tsx';
import { HoldStrip } from '../../ui/hold-strip.tsx';
import type { Axis } from '../../ui/strip-geometry.ts';
import { showWholeUnits } from '../../ui/whole-units.ts';
import { daysStanding } from './lot-sort.ts';
import { changeLotView } from './lot-view.ts';

export const rowHeight = 30;

export function rowElementId(id: string): string {
  return `lot-${id}`;
}

export function openRow(id: string): void {
  changeLotView({ cursorId: id });
  goTo({ screen: 'vehicle', id });
}

type RowProps = {
  readonly row: Row;
  /** Its place among all rows, counted from 1 with the head as the first. */
  readonly rowIndex: number;
  readonly isCursor: boolean;
  readonly axis: Axis;
  readonly stripWidth: number;
  readonly today: Day;
  readonly seesMoney: boolean;
};

function Standing({ row, today }: { readonly row: Row; readonly today: Day }) {
  const { standing, since, expectedOn } = row.held.now;
  const what = sayDaysIn(row.held.now.what, today);
  const days = daysStanding(row, today);
  const late = expectedOn === null || standing === 'sold' ? 0 : daysBetween(expectedOn, today);
  const promise =
    expectedOn === null ? '' : late > 0 ? lotText.overdue(late) : lotText.expectedOn(sayDay(expectedOn, today));
  const tip = [standingNames[standing], what, promise, lotText.sinceTip(days, sayDay(since, today))].filter(
    (part) => part !== '',
  );
  return (
    <div className="lot-standing" title={tip.join(' · ')}>
      <CauseSwatch standing={standing} />
      <span className="lot-standing-name">{standingNames[standing]}</span>
      <span className="lot-standing-what">
        {late > 0 && <span className="is-below-nought">{`${promise}${what === '' ? '' : ', '}`}</span>}
        {what}
      </span>
      <span className="lot-standing-days">{lotText.since(days)}</span>
    </div>
  );
}

function Amount({ cents }: { readonly cents: number | null }) {
  if (cents === null) return <td className="lot-amount quiet">{commonText.none}</td>;
  return (
    <td className={`lot-amount${cents < 0 ? ' is-below-nought' : ''}`} title={showCents(cents)}>
      {showWholeUnits(cents)}
    </td>
  );
}

export const LotRow = memo(function LotRow(props: RowProps) {
  const { row, rowIndex, isCursor, axis, stripWidth, today, seesMoney } = props;
  useDayForm();
  const { id, identity, held, nextMove, money, boughtOn, forecast } = row;
  const paymentsOn = money?.paymentsOn ?? [];
  const title = vehicleTitle(identity);
  const tail = [
    identity.vin === '' ? '' : vinTail(identity.vin),
    identity.location,
    identity.keyTag === '' ? '' : lotText.key(identity.keyTag),
  ].filter((part) => part !== '');
  const breakEvenOn = money?.breakEvenOn ?? null;
  const { standing, since, expectedOn } = held.now;
  const move = nextMove === null ? '' : sayDaysIn(nextMove.what, today);
  return (
    <tr className={`lot-row${isCursor ? ' is-cursor' : ''}`} aria-rowindex={rowIndex} data-id={id}>
      <th scope="row" className="lot-stock">
        <a
          id={rowElementId(id)}
          href={`#${rowElementId(id)}`}
          tabIndex={isCursor ? 0 : -1}
          aria-label={lotText.open(identity.stockNumber, title)}
          onFocus={() => changeLotView({ cursorId: id })}
          onClick={(event) => {
            event.preventDefault();
            event.stopPropagation();
            openRow(id);
          }}
        >
          {identity.stockNumber}
        </a>
      </th>
      <td
        className="lot-vehicle"
        title={[title, identity.colour, identity.vin, ...tail.slice(1)].filter((part) => part !== '').join(' · ')}
      >
        <div className="lot-vehicle-line">
          <span className="lot-vehicle-title">{title}</span>
          {tail.map((part) => (
            <span key={part} className="lot-tail code">
              {part}
            </span>
          ))}
        </div>
      </td>
      <td>
        <Standing row={row} today={today} />
      </td>
      <td className="lot-strip">
        <HoldStrip
          stretches={held.stretches}
          boughtOn={boughtOn}
          today={today}
          soldOn={standing === 'sold' ? since : null}
          expectedOn={expectedOn}
          standing={standing}
          breakEvenOn={breakEvenOn}
          ready={forecast}
          paymentsOn={paymentsOn}
          axis={axis}
          width={stripWidth}
          height={rowHeight - 1}
          label={stripLabel({ held, boughtOn, breakEvenOn, ready: forecast, paymentsOn, today })}
        />
      </td>
      <td className="lot-amount">{held.heldDays}</td>
      {seesMoney && (
        <>
          <Amount cents={money?.spentCents ?? null} />
          <Amount cents={money?.marginLeftCents ?? null} />
          <Amount cents={money?.marginExpectedCents ?? null} />
        </>
      )}
      <td className="lot-move" title={nextMove === null ? undefined : `${actorNames[nextMove.who]}: ${move}`}>
        {nextMove !== null && (
          <>
            <span className="lot-who">{actorNames[nextMove.who]}</span> {move}
          </>
        )}
      </td>
    </tr>
  );
});
