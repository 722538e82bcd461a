// The rows as they would be taken in, with what stands against each; good ones can be left out.
import { memo, useMemo, useState } from 'react';
import type { TriedRowView } from '../../../app/contract/list-import-channels.ts';
import { showCents } from '../../../app/domain/shared/cents.ts';
import type { Day } from '../../../app/domain/shared/day.ts';
import { useDesk } from '../../state/desk-store.ts';
import { factNames, importListText as text } from '../../text/import-list.ts';
import { sayDay } from '../../text/say-day.ts';
import { Button } from '../../ui/button.tsx';
import { CheckField } from '../../ui/check-field.tsx';
import { LiveRegion } from '../../ui/live-region.tsx';
import { SectionHead } from '../../ui/section-head.tsx';
import { changeLeftOut, type OpenList } from './list-store.ts';

function toggle(row: number): void {
  changeLeftOut((leftOut) => {
    const next = new Set(leftOut);
    if (!next.delete(row)) next.add(row);
    return next;
  });
}

const Row = memo(function Row({ tried, isChosen, today }: { tried: TriedRowView; isChosen: boolean; today: Day }) {
  const { row, stockNumber, vin, title, boughtOn, priceCents, problems } = tried;
  const isGood = problems.length === 0;
  return (
    <tr className={isGood ? undefined : 'is-bad'}>
      <td>
        {isGood && (
          <input type="checkbox" aria-label={text.chooseRow(row + 1)} checked={isChosen} onChange={() => toggle(row)} />
        )}
      </td>
      <td className="is-number">{row + 1}</td>
      <td>
        <b>{stockNumber}</b> {title} <span className="code quiet">{vin}</span>
      </td>
      <td>{boughtOn === null ? '' : sayDay(boughtOn, today)}</td>
      <td className="is-number">{priceCents === null ? '' : showCents(priceCents)}</td>
      <td className="list-against">{problems.join(' ')}</td>
    </tr>
  );
});

export function RowTable({ list }: { readonly list: OpenList }) {
  const { tried, leftOut } = list;
  const { today } = useDesk();
  const [onlyBad, setOnlyBad] = useState(false);
  const bad = useMemo(() => tried.filter(({ problems }) => problems.length > 0), [tried]);
  const said = `${text.good(tried.length - bad.length)} ${text.bad(bad.length)}`;
  return (
    <section aria-labelledby="list-rows">
      <SectionHead id="list-rows" title={text.rows} count={tried.length} />
      <div className="list-row-tools">
        <p>{said}</p>
        <Button onPress={() => changeLeftOut(() => new Set())}>{text.chooseAll}</Button>
        <Button onPress={() => changeLeftOut(() => new Set(tried.map(({ row }) => row)))}>{text.chooseNone}</Button>
        {bad.length > 0 && <CheckField label={text.onlyBad} value={onlyBad} onChange={setOnlyBad} />}
      </div>
      <LiveRegion text={said} />
      <table className="list-rows">
        <thead>
          <tr>
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
        <tbody>
          {(onlyBad ? bad : tried).map((row) => (
            <Row key={row.row} tried={row} today={today} isChosen={!leftOut.has(row.row)} />
          ))}
        </tbody>
      </table>
    </section>
  );
}
