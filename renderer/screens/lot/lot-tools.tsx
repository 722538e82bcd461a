// Above the table: search, days shown, taking in; and the legend, whose words filter.
import { type RefObject, useLayoutEffect, useState } from 'react';
import { type Standing, standingMeanings, standingNames } from '../../../app/domain/time/cause.ts';
import { searchAskedStore } from '../../state/lot-store.ts';
import { goTo } from '../../state/route-store.ts';
import { useStore } from '../../state/store.ts';
import { lotText } from '../../text/lot.ts';
import { Button } from '../../ui/button.tsx';
import { CauseSwatch } from '../../ui/cause-swatch.tsx';
import { PurposeButton, ScreenPurpose } from '../../ui/screen-purpose.tsx';
import { lotSpans } from './lot-axis.ts';
import { type Found, standingsInOrder, withToggled } from './lot-filter.ts';
import { changeLotView, lotViewStore } from './lot-view.ts';

function Search({
  input,
  onGoToFirst,
}: {
  readonly input: RefObject<HTMLInputElement | null>;
  readonly onGoToFirst: () => void;
}) {
  const { search } = useStore(lotViewStore);
  const asked = useStore(searchAskedStore);
  // Before the next key arrives: whoever types on at once types into the search.
  useLayoutEffect(() => {
    if (!asked) return;
    searchAskedStore.set(false);
    input.current?.focus();
    input.current?.select();
  }, [asked, input]);
  return (
    <input
      ref={input}
      type="search"
      className="lot-search field-input"
      aria-label={lotText.search}
      aria-keyshortcuts="/ Control+F"
      title={`${lotText.searchHint} – /`}
      placeholder={lotText.searchHint}
      value={search}
      autoComplete="off"
      spellCheck={false}
      onChange={(event) => changeLotView({ search: event.currentTarget.value, scrollTop: 0 })}
      onKeyDown={(event) => {
        if (event.key === 'Enter' || event.key === 'ArrowDown') {
          event.preventDefault();
          onGoToFirst();
        } else if (event.key === 'Escape' && search !== '') {
          event.preventDefault();
          changeLotView({ search: '' });
        }
      }}
    />
  );
}

function SpanChoice() {
  const { span } = useStore(lotViewStore);
  return (
    <fieldset className="lot-spans">
      <legend className="unseen">{lotText.spanLabel}</legend>
      {lotSpans.map((choice) => (
        <Button key={choice} isPressed={choice === span} onPress={() => changeLotView({ span: choice })}>
          {lotText.spans[choice]}
        </Button>
      ))}
    </fieldset>
  );
}

/** What the strips mark besides the causes. */
function Marks({ seesMoney }: { readonly seesMoney: boolean }) {
  return (
    <div className="lot-marks">
      <span title={lotText.legendForecastTip}>
        <svg width="22" height="14" aria-hidden="true" focusable="false">
          <path className="strip-forecast" d="M0 1.5H12.5V12.5H0" />
          <path className="strip-forecast is-safe" d="M13 4.5H21V9.5H13" />
        </svg>
        {lotText.legendForecast}
      </span>
      {seesMoney && (
        <span title={lotText.legendEvenTip}>
          <svg width="10" height="14" aria-hidden="true" focusable="false">
            <path className="strip-even" d="M1 0.5H9L5 6.5ZM5 6V14" />
          </svg>
          {lotText.legendEven}
        </span>
      )}
      {seesMoney && (
        <span title={lotText.legendPaymentTip}>
          <svg width="10" height="14" aria-hidden="true" focusable="false">
            <path className="strip-payment" d="M5.5 4V13M2 13.5H9" />
          </svg>
          {lotText.legendPayment}
        </span>
      )}
    </div>
  );
}

export function LotTools({
  input,
  onGoToFirst,
  whyNoTakeIn,
  seesMoney,
}: {
  readonly input: RefObject<HTMLInputElement | null>;
  readonly onGoToFirst: () => void;
  /** Null: a vehicle can be taken in now. */
  readonly whyNoTakeIn: string | null;
  readonly seesMoney: boolean;
}) {
  const [isPurposeOpen, setIsPurposeOpen] = useState(false);
  return (
    <div className="lot-tools">
      <h1>{lotText.title}</h1>
      <PurposeButton isOpen={isPurposeOpen} onToggle={() => setIsPurposeOpen((before) => !before)} />
      <Search input={input} onGoToFirst={onGoToFirst} />
      <SpanChoice />
      <Marks seesMoney={seesMoney} />
      <div className="lot-take-in">
        <Button
          kind="main"
          shortcut="N"
          isDisabled={whyNoTakeIn !== null}
          whyDisabled={whyNoTakeIn ?? undefined}
          onPress={() => goTo({ screen: 'take-in' })}
        >
          {lotText.takeIn}
        </Button>
      </div>
      <ScreenPurpose screen="lot" isHidden={!isPurposeOpen} />
    </div>
  );
}

function Toggle({
  standing,
  count,
  isPressed,
}: {
  readonly standing: Standing;
  readonly count: number;
  readonly isPressed: boolean;
}) {
  return (
    <button
      type="button"
      className={`lot-toggle${count === 0 ? ' is-none' : ''}`}
      aria-pressed={isPressed}
      title={standingMeanings[standing]}
      onClick={() => {
        const { standings } = lotViewStore.read();
        changeLotView({ standings: withToggled(standings, standing), scrollTop: 0 });
      }}
    >
      <CauseSwatch standing={standing} />
      <span>{standingNames[standing]}</span>
      <span className="lot-toggle-count">{count}</span>
    </button>
  );
}

/** Explains the fills, and filters by what a vehicle stands at. */
export function LotLegend({ counts }: { readonly counts: Found['counts'] }) {
  const { standings } = useStore(lotViewStore);
  return (
    <div className="lot-legend">
      <fieldset>
        <legend className="unseen">{lotText.filter}</legend>
        {standingsInOrder.map((standing) => (
          <Toggle
            key={standing}
            standing={standing}
            count={counts[standing] ?? 0}
            isPressed={standings.has(standing)}
          />
        ))}
        {standings.size > 0 && (
          <Button kind="quiet" onPress={() => changeLotView({ standings: new Set() })}>
            {lotText.showAll}
          </Button>
        )}
      </fieldset>
    </div>
  );
}
