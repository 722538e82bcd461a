// One thing that is owed, as one line of two rows of text. Its link is where the cursor stands; the whole line opens the vehicle.
import { memo } from 'react';
import type { WaitingLineView } from '../../../app/contract/waiting-view.ts';
import type { Day } from '../../../app/domain/shared/day.ts';
import { useDayForm } from '../../state/day-form-store.ts';
import { listOfKind } from '../../state/record-chase.ts';
import { goTo } from '../../state/route-store.ts';
import { waitingText as text } from '../../text/waiting.ts';
import { Button } from '../../ui/button.tsx';
import { CauseSwatch } from '../../ui/cause-swatch.tsx';
import { changeWaitingLook, keyOf } from './waiting-view.ts';

export function rowElementId(key: string): string {
  return `waiting-${key.replace('/', '-')}`;
}

export function openLine(line: WaitingLineView): void {
  changeWaitingLook({ cursorKey: keyOf(line) });
  goTo({ screen: 'vehicle', id: line.vehicleId, place: { list: listOfKind[line.kind], id: line.factId } });
}

export type WaitingRowProps = {
  readonly line: WaitingLineView;
  readonly today: Day;
  readonly isCursor: boolean;
  readonly seesMoney: boolean;
  readonly mayChase: boolean;
  readonly onChase: (line: WaitingLineView) => void;
};

export const WaitingRow = memo(function WaitingRow(props: WaitingRowProps) {
  const { line, today, isCursor, seesMoney, mayChase, onChase } = props;
  useDayForm();
  const key = keyOf(line);
  const id = rowElementId(key);
  const last = text.lastChase(line, today);
  return (
    <tr className="waiting-row" data-key={key}>
      <th scope="row">
        <a
          id={id}
          href={`#${id}`}
          tabIndex={isCursor ? 0 : -1}
          aria-label={text.open(line)}
          onFocus={() => changeWaitingLook({ cursorKey: key })}
          onClick={(event) => {
            event.preventDefault();
            event.stopPropagation();
            openLine(line);
          }}
        >
          {line.stockNumber}
        </a>
        <span className="waiting-second">{line.title}</span>
      </th>
      <td>
        <span className="waiting-what" title={line.what}>
          <CauseSwatch standing={line.kind} /> {line.what}
        </span>
        <span className="waiting-second">{text.from(line)}</span>
      </td>
      <td>
        {text.waited(line.waitedDays)}
        <span className="waiting-second">{text.since(line.askedOn, today)}</span>
      </td>
      <td>
        {line.promisedOn === null ? (
          <span className="quiet">{text.noPromise}</span>
        ) : (
          text.since(line.promisedOn, today)
        )}
        <span className={`waiting-second${line.overdueDays > 0 ? ' is-overdue' : ''}`}>
          {line.overdueDays > 0
            ? text.overdue(line.overdueDays)
            : line.promisedOn !== null && text.inDays(line.promisedOn, today)}
        </span>
      </td>
      <td title={text.expectedTip(line, today)}>
        {text.expected(line, today)}
        <span className="waiting-second">{text.basis(line)}</span>
      </td>
      <td className="waiting-chase">
        <div>
          <span className={line.chaseOn <= today ? 'is-due' : undefined}>{text.chaseOn(line.chaseOn, today)}</span>
          {mayChase && (
            <Button kind="quiet" label={text.chaseFor(line)} shortcut="C" onPress={() => onChase(line)}>
              {text.chase}
            </Button>
          )}
        </div>
        <span className="waiting-second" title={line.lastChase?.note || undefined}>
          {[text.why(line.chaseWhy, today), last].filter((part) => part !== '').join(' · ')}
        </span>
      </td>
      <td title={text.besidesTip(line)}>
        {text.decides(line)}
        <span className="waiting-second">{text.besides(line)}</span>
      </td>
      {seesMoney && (
        <td className="amount">
          {text.share(line)}
          <span className="waiting-second">{text.ofDay(line)}</span>
        </td>
      )}
    </tr>
  );
});
