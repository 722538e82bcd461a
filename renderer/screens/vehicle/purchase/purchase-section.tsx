// Where it was bought and for how much, when it came, its paper and its keys.

import type { Desk } from '../../../../app/contract/views.ts';
import { showCents } from '../../../../app/domain/shared/cents.ts';
import type { SetChange } from '../../../../app/domain/vehicle/change.ts';
import { type Arrival, arrivalSchema, type Purchase, purchaseSchema } from '../../../../app/domain/vehicle/purchase.ts';
import { notify } from '../../../state/notice-store.ts';
import { errorSentence } from '../../../text/errors.ts';
import { sayDay, sayWholeDaysIn } from '../../../text/say-day.ts';
import { purchaseText, sectionNames } from '../../../text/vehicle-entries.ts';
import { Button } from '../../../ui/button.tsx';
import { DayField } from '../../../ui/day-field.tsx';
import { Facts } from '../../../ui/facts.tsx';
import { MoneyField } from '../../../ui/money-field.tsx';
import { NumberField } from '../../../ui/number-field.tsx';
import { SelectField } from '../../../ui/select-field.tsx';
import { TextField } from '../../../ui/text-field.tsx';
import { asTypedSection } from '../ledger/fact-kind.ts';
import { FieldPlace } from '../ledger/field-place.tsx';
import { SectionForm } from '../ledger/section-form.tsx';
import { useVehicle } from '../page/vehicle-context.ts';
import { VehicleSection } from '../page/vehicle-section.tsx';

function SetToday({ label, change }: { readonly label: string; readonly change: SetChange }) {
  const state = useVehicle();
  const set = async () => {
    const answer = await state.change(change);
    if (answer.ok) return;
    const sentences = answer.error.problems.map((problem) => problem.sentence);
    notify('problem', sentences.length > 0 ? sayWholeDaysIn(sentences.join(' ')) : errorSentence(answer.error));
  };
  return <Button onPress={() => void set()}>{label}</Button>;
}

function planName({ fundingPlans }: Desk, id: string | null): string {
  if (id === null) return purchaseText.ownMoney;
  return fundingPlans.find((plan) => plan.id === id)?.name ?? purchaseText.planGone;
}

/** Own money, the shop's plans, and the one that is kept even when the settings no longer have it. */
function planOptions(desk: Desk, kept: string | null) {
  const ids = new Set(['', ...desk.fundingPlans.map(({ id }) => id), ...(kept === null ? [] : [kept])]);
  return [...ids].map((value) => ({ value, label: planName(desk, value === '' ? null : value) }));
}

function PurchaseForm() {
  const { vehicle, view, today, currency, desk } = useVehicle();
  const { purchase } = vehicle;
  const showsMoney = view.costs !== null;
  const amount = (cents: number) => (cents === 0 ? null : showCents(cents));
  const paperName = purchase.paperKind || desk.shop?.dealer.paperName || '';
  return (
    <SectionForm<Purchase>
      part="purchase"
      label={purchaseText.purchase}
      schema={purchaseSchema}
      base={asTypedSection(purchase)}
      toChange={(value) => ({ kind: 'set', section: 'purchase', value })}
      actions={
        purchase.paperReceivedOn === null ? (
          <SetToday
            label={purchaseText.paperToday}
            change={{ kind: 'set', section: 'purchase', value: { ...purchase, paperReceivedOn: today } }}
          />
        ) : undefined
      }
      shown={
        <Facts
          rows={[
            { label: purchaseText.boughtOn, value: sayDay(purchase.boughtOn, today) },
            { label: purchaseText.source, value: purchase.source },
            ...(showsMoney
              ? [
                  { label: purchaseText.price, value: amount(purchase.priceCents) },
                  { label: purchaseText.fees, value: amount(purchase.feesCents) },
                  { label: purchaseText.transport, value: amount(purchase.transportCents) },
                  { label: purchaseText.fundingPlan, value: planName(desk, purchase.fundingPlanId) },
                ]
              : []),
            {
              label: paperName,
              value:
                purchase.paperReceivedOn !== null
                  ? sayDay(purchase.paperReceivedOn, today)
                  : `${purchaseText.paperNotHere}${
                      purchase.paperExpectedOn === null ? '' : `, ${sayDay(purchase.paperExpectedOn, today)}`
                    }`,
            },
            { label: purchaseText.keysReceived, value: purchase.keysReceived },
          ]}
        />
      }
      form={(edit) => (
        <div className="field-grid">
          <DayField label={purchaseText.boughtOn} {...edit.at('boughtOn')} today={today} isRequired />
          <TextField label={purchaseText.source} {...edit.at('source')} />
          <MoneyField label={purchaseText.price} {...edit.centsAt('priceCents')} currency={currency} />
          <MoneyField label={purchaseText.fees} {...edit.centsAt('feesCents')} currency={currency} />
          <MoneyField label={purchaseText.transport} {...edit.centsAt('transportCents')} currency={currency} />
          <SelectField
            label={purchaseText.fundingPlan}
            value={edit.value.fundingPlanId ?? ''}
            onChange={(id) => edit.set({ fundingPlanId: id === '' ? null : id })}
            options={planOptions(desk, purchase.fundingPlanId)}
          />
          <TextField label={purchaseText.paperKind} {...edit.at('paperKind')} />
          <DayField label={purchaseText.paperExpectedOn} {...edit.at('paperExpectedOn')} today={today} />
          <FieldPlace name="paperReceivedOn">
            <DayField label={purchaseText.paperReceivedOn} {...edit.at('paperReceivedOn')} today={today} />
          </FieldPlace>
          <NumberField label={purchaseText.keysReceived} {...edit.at('keysReceived')} maximum={20} />
        </div>
      )}
    />
  );
}

function ArrivalForm() {
  const { vehicle, today } = useVehicle();
  const { arrival } = vehicle;
  return (
    <SectionForm<Arrival>
      part="arrival"
      label={purchaseText.arrival}
      schema={arrivalSchema}
      base={arrival}
      toChange={(value) => ({ kind: 'set', section: 'arrival', value })}
      actions={
        arrival.arrivedOn === null ? (
          <SetToday
            label={purchaseText.arrivedToday}
            change={{ kind: 'set', section: 'arrival', value: { ...arrival, arrivedOn: today } }}
          />
        ) : undefined
      }
      shown={
        <Facts
          rows={[
            {
              label: purchaseText.arrivedOn,
              value: arrival.arrivedOn === null ? purchaseText.notArrived : sayDay(arrival.arrivedOn, today),
            },
            {
              label: purchaseText.expectedOn,
              value: arrival.expectedOn === null ? null : sayDay(arrival.expectedOn, today),
            },
          ]}
        />
      }
      form={(edit) => (
        <div className="field-grid">
          <DayField label={purchaseText.arrivedOn} {...edit.at('arrivedOn')} today={today} />
          <DayField label={purchaseText.expectedOn} {...edit.at('expectedOn')} today={today} />
        </div>
      )}
    />
  );
}

export function PurchaseSection() {
  return (
    <VehicleSection section="purchase" title={sectionNames.purchase}>
      <div className="section-columns">
        <PurchaseForm />
        <ArrivalForm />
      </div>
    </VehicleSection>
  );
}
