// The rows as they would be taken in, with what stands against each: how many are good, which are shown, jumping to what is wrong.
import { useMemo, useRef, useState } from 'react';
import { useDesk } from '../../state/desk-store.ts';
import { importListText as text } from '../../text/import-list.ts';
import { Button } from '../../ui/button.tsx';
import { CheckField } from '../../ui/check-field.tsx';
import { LiveRegion } from '../../ui/live-region.tsx';
import { SectionHead } from '../../ui/section-head.tsx';
import { changeLeftOut, type OpenList } from './list-store.ts';
import { RowGrid, type RowGridHandle } from './row-grid.tsx';

export function RowTable({ list }: { readonly list: OpenList }) {
  const { tried, leftOut } = list;
  const { today } = useDesk();
  const [onlyBad, setOnlyBad] = useState(false);
  const grid = useRef<RowGridHandle>(null);
  const bad = useMemo(() => tried.filter(({ problems }) => problems.length > 0), [tried]);
  const said = `${text.good(tried.length - bad.length)} ${text.bad(bad.length)}`;
  // When the last problem is gone, so is the box that would show all rows again.
  const isOnlyBad = onlyBad && bad.length > 0;
  return (
    <section aria-labelledby="list-rows">
      <SectionHead id="list-rows" title={text.rows} count={tried.length} />
      <div className="list-row-tools">
        <p>{said}</p>
        <Button onPress={() => changeLeftOut(() => new Set())}>{text.chooseAll}</Button>
        <Button onPress={() => changeLeftOut(() => new Set(tried.map(({ row }) => row)))}>{text.chooseNone}</Button>
        {bad.length > 0 && (
          <>
            <CheckField label={text.onlyBad} value={onlyBad} onChange={setOnlyBad} />
            <Button label={text.previousBadLabel} onPress={() => grid.current?.goToBad(-1)}>
              {text.previousBad}
            </Button>
            <Button onPress={() => grid.current?.goToBad(1)}>{text.nextBad}</Button>
          </>
        )}
      </div>
      <LiveRegion text={said} />
      <RowGrid rows={isOnlyBad ? bad : tried} leftOut={leftOut} today={today} handle={grid} />
    </section>
  );
}
