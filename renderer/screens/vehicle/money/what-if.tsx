// Tries out a price, a promised day, a decision or a cost: the date and the margin move before anything is kept. Keep makes the real
// changes one by one; Put back drops them.
import { useEffect, useMemo, useRef, useState } from 'react';
import type { VehicleView } from '../../../../app/contract/views.ts';
import type { WhatIfView } from '../../../../app/contract/what-if-view.ts';
import { decisionKindSchema } from '../../../../app/domain/diagnosis/fault.ts';
import { ask } from '../../../bridge.ts';
import { newIdentifier } from '../../../state/new-identifier.ts';
import { notify } from '../../../state/notice-store.ts';
import { budgetText } from '../../../text/budget.ts';
import { errorSentence } from '../../../text/errors.ts';
import { prospectText, whatIfText as text } from '../../../text/prospect.ts';
import { sayDay } from '../../../text/say-day.ts';
import { faultText } from '../../../text/vehicle-entries.ts';
import { Button } from '../../../ui/button.tsx';
import { DayField } from '../../../ui/day-field.tsx';
import { MoneyField } from '../../../ui/money-field.tsx';
import { SelectField } from '../../../ui/select-field.tsx';
import { TextField } from '../../../ui/text-field.tsx';
import { useVehicle } from '../page/vehicle-context.ts';
import { Amount } from './margin-facts.tsx';
import { nothingTried, openFaultsOf, openWaitsOf, type Tried, whatIfChanges } from './what-if-changes.ts';

type Outcome = Pick<VehicleView, 'costs' | 'forecast' | 'prospect'>;

function Compared({ before, after }: { readonly before: Outcome; readonly after: Outcome | null }) {
  const { today } = useVehicle();
  const ready = ({ forecast }: Outcome) =>
    forecast === null ? '–' : prospectText.readyWords(forecast.likelyOn, forecast.safeOn, today);
  const verdict = ({ prospect }: Outcome) =>
    prospect?.weighed.ok ? prospectText.verdictWord[prospect.weighed.value.verdict] : text.notWeighed;
  const budget = ({ costs }: Outcome) => budgetText.ofAll(costs?.budgets ?? []);
  const sale = ({ prospect }: Outcome) => (prospect?.saleOn ? sayDay(prospect.saleOn, today) : '–');
  const rows = [
    [prospectText.ready, ready(before), after && ready(after)],
    [prospectText.saleOn, sale(before), after && sale(after)],
    [
      text.margin,
      <Amount key="before" cents={before.costs?.marginExpectedCents ?? null} />,
      after && <Amount key="after" cents={after.costs?.marginExpectedCents ?? null} />,
    ],
    [
      prospectText.marginAtSale,
      <Amount key="before" cents={before.prospect?.marginAtSaleCents ?? null} />,
      after && <Amount key="after" cents={after.prospect?.marginAtSaleCents ?? null} />,
    ],
    [budgetText.title, budget(before), after && budget(after)],
    [prospectText.title, verdict(before), after && verdict(after)],
  ] as const;
  return (
    <table className="cost-figures" aria-live="polite">
      <caption className="unseen">{text.title}</caption>
      <thead>
        <tr>
          <td />
          <th scope="col" className="amount">
            {text.now}
          </th>
          <th scope="col" className="amount">
            {text.changed}
          </th>
        </tr>
      </thead>
      <tbody>
        {rows.map(([label, was, becomes]) => (
          <tr key={label}>
            <th scope="row">{label}</th>
            <td className="amount">{was}</td>
            <td className="amount">
              <b>{becomes ?? ''}</b>
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

export function WhatIf() {
  const { id, view, vehicle, today, currency, canSet, change, desk } = useVehicle();
  const [tried, setTried] = useState<Tried>(nothingTried);
  const [outcome, setOutcome] = useState<WhatIfView | null>(null);
  const [trouble, setTrouble] = useState('');
  const newId = useRef(newIdentifier());
  const waits = useMemo(() => openWaitsOf(vehicle, desk.shop?.codeKinds), [vehicle, desk.shop?.codeKinds]);
  const faults = openFaultsOf(vehicle);
  const changes = useMemo(
    () => whatIfChanges(vehicle, tried, { today, newId: newId.current }),
    [vehicle, tried, today],
  );
  useEffect(() => {
    setTrouble('');
    setOutcome(null);
    if (changes.length === 0) return;
    let isGone = false;
    void ask('vehicle:what-if', { id, changes }).then((answer) => {
      if (isGone) return;
      if (answer.ok) setOutcome(answer.value);
      else setTrouble(answer.error.problems.map(({ sentence }) => sentence).join(' ') || errorSentence(answer.error));
    });
    return () => {
      isGone = true;
    };
  }, [changes, id]);
  const set = (fields: Partial<Tried>) => setTried((before) => ({ ...before, ...fields }));
  const putBack = () => {
    newId.current = newIdentifier();
    setTried(nothingTried);
  };
  const keep = async () => {
    for (const one of changes) {
      const answer = await change(one);
      if (!answer.ok) {
        notify(
          'problem',
          answer.error.problems.map(({ sentence }) => sentence).join(' ') || errorSentence(answer.error),
        );
        return;
      }
    }
    putBack();
  };
  const none = { value: '' as const, label: text.asItIs };
  const whyNotKept = changes.length === 0 ? text.nothingTried : trouble === '' ? undefined : trouble;
  return (
    <details className="what-if">
      <summary>{text.title}</summary>
      <p className="quiet">{text.hint}</p>
      <div className="field-grid">
        <MoneyField
          label={text.asking}
          valueCents={tried.askingCents}
          onChange={(askingCents) => set({ askingCents })}
          currency={currency}
        />
        <MoneyField
          label={text.extra}
          valueCents={tried.extraCents}
          onChange={(extraCents) => set({ extraCents })}
          currency={currency}
        />
        <TextField label={text.extraWhat} value={tried.extraWhat} onChange={(extraWhat) => set({ extraWhat })} />
        {waits.length > 0 && (
          <>
            <SelectField
              label={text.wait}
              value={tried.waitKey}
              onChange={(waitKey: string) => set({ waitKey })}
              options={[none, ...waits.map(({ key, what }) => ({ value: key, label: what }))]}
            />
            <DayField
              label={text.expectedOn}
              value={tried.expectedOn}
              onChange={(expectedOn) => set({ expectedOn })}
              today={today}
            />
          </>
        )}
        {faults.length > 0 && (
          <>
            <SelectField
              label={text.fault}
              value={tried.faultId}
              onChange={(faultId: string) => set({ faultId })}
              options={[none, ...faults.map((fault) => ({ value: fault.id, label: fault.what }))]}
            />
            <SelectField
              label={text.decision}
              value={tried.decision}
              onChange={(decision) => set({ decision })}
              options={[
                none,
                ...decisionKindSchema.options.map((kind) => ({ value: kind, label: faultText.decisions[kind] })),
              ]}
            />
            {tried.decision === 'leave' && (
              <TextField label={text.reason} value={tried.reason} onChange={(reason) => set({ reason })} />
            )}
          </>
        )}
      </div>
      {trouble !== '' && (
        <p role="alert" className="money-warning">
          {trouble}
        </p>
      )}
      <Compared before={view} after={outcome} />
      <div className="what-if-foot">
        <Button
          kind="main"
          onPress={() => void keep()}
          isDisabled={whyNotKept !== undefined || !canSet('targets')}
          whyDisabled={whyNotKept ?? text.mayNotKeep}
        >
          {text.keep}
        </Button>
        <Button onPress={putBack} isDisabled={tried === nothingTried} whyDisabled={text.nothingTried}>
          {text.putBack}
        </Button>
      </div>
    </details>
  );
}
