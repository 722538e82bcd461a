// Money: what the fleet ties up and costs, what is due, where the days and the margin went. For managers; reckoned by the program.
import './money.css';
import { useEffect, useState } from 'react';
import type { MoneyView } from '../../../app/contract/money-view.ts';
import { showCents } from '../../../app/domain/shared/cents.ts';
import { ask, on } from '../../bridge.ts';
import { useDesk } from '../../state/desk-store.ts';
import { errorSentence } from '../../text/errors.ts';
import { moneyScreenText as text } from '../../text/money.ts';
import { Button } from '../../ui/button.tsx';
import { EmptyFleet, useIsFleetEmpty } from '../../ui/empty-fleet.tsx';
import { EmptyState } from '../../ui/empty-state.tsx';
import { ScreenPurpose } from '../../ui/screen-purpose.tsx';
import { Budgets, OpenVehicles, Sold } from './margin-findings.tsx';
import { Ageing, DaysByCause, Due, LetGo, Slowest } from './money-findings.tsx';

type Reading = { readonly view: MoneyView | null; readonly trouble: string };

function Figures({ view }: { readonly view: MoneyView }) {
  const { overview, backTest } = view;
  const { measures, all } = overview;
  const { labels, ratio } = text;
  const rows = [
    [labels.tiedUp, text.tiedUp(overview.tiedUpCents, overview.open)],
    [labels.owed, text.owed(overview.owedToLendersCents, overview.owedOnSold)],
    [labels.nextDay, showCents(overview.nextDayCents)],
    [labels.idle, text.idle(all.idleDays, all.idleCents)],
    [labels.daysSupply, ratio(measures.daysSupply, 0)],
    [labels.turn, ratio(measures.turn, 1)],
    [labels.daysToSell, ratio(measures.daysToSell, 0)],
    [labels.grossReturn, ratio(measures.grossReturn, 2)],
    [labels.backTest, text.backTest(backTest)],
  ] as const;
  return (
    <section aria-label={text.figures}>
      <dl className="money-figures">
        {rows.map(([label, value]) => (
          <div key={label} className={label === labels.backTest ? 'is-wide' : undefined}>
            <dt>{label}</dt>
            <dd>{value ?? '–'}</dd>
          </div>
        ))}
      </dl>
      <p className="money-hint">
        {text.measuresHint(measures.overDays)} {text.measuresMadeOf(measures)}
      </p>
    </section>
  );
}

function Fleet({ currency }: { readonly currency: string }) {
  const [{ view, trouble }, setReading] = useState<Reading>({ view: null, trouble: '' });
  const isEmpty = useIsFleetEmpty();
  const [turn, setTurn] = useState(0);
  // biome-ignore lint/correctness/useExhaustiveDependencies: read again each time something changed.
  useEffect(() => {
    let isGone = false;
    void ask('money:read', {}).then((answer) => {
      if (isGone) return;
      setReading(
        answer.ok ? { view: answer.value, trouble: '' } : { view: null, trouble: errorSentence(answer.error) },
      );
    });
    return () => {
      isGone = true;
    };
  }, [turn]);
  useEffect(() => {
    const again = () => setTurn((before) => before + 1);
    const stops = [on('lot:all-changed', again), on('lot:row-changed', again)];
    return () => {
      for (const stop of stops) stop();
    };
  }, []);
  if (trouble !== '')
    return (
      <div role="alert">
        <EmptyState
          sentence={trouble}
          action={<Button onPress={() => setTurn((before) => before + 1)}>{text.tryAgain}</Button>}
        />
      </div>
    );
  if (isEmpty) return <EmptyFleet />;
  if (view === null) return <p className="quiet">{text.reading}</p>;
  const shown = { overview: view.overview, currency };
  return (
    <>
      <Figures view={view} />
      <div className="money-findings">
        <div>
          <LetGo {...shown} />
          <Due {...shown} />
          <OpenVehicles {...shown} />
          <Ageing {...shown} />
          <Slowest {...shown} />
        </div>
        <div>
          <DaysByCause {...shown} />
          <Sold {...shown} />
          <Budgets {...shown} />
        </div>
      </div>
    </>
  );
}

export function MoneyScreen() {
  const desk = useDesk();
  return (
    <div className="money-screen">
      <h1>{text.title}</h1>
      <ScreenPurpose screen="money" />
      {desk.seesMoney ? (
        <Fleet key={desk.fleetName} currency={desk.shop?.dealer.currency ?? ''} />
      ) : (
        <EmptyState sentence={text.onlyManagers} />
      )}
    </div>
  );
}
