// The targets of a vehicle: price and since when, budgets of the whole and by group, trade value, least margin.
import { budgetGroups } from '../../../../app/domain/money/budget.ts';
import { showCents } from '../../../../app/domain/shared/cents.ts';
import { type Targets, targetsSchema } from '../../../../app/domain/vehicle/purchase.ts';
import type { Typed } from '../../../state/edit-draft.ts';
import type { Editing } from '../../../state/use-edit-draft.ts';
import { budgetText } from '../../../text/budget.ts';
import { moneyText } from '../../../text/vehicle.ts';
import { DayField } from '../../../ui/day-field.tsx';
import { Facts } from '../../../ui/facts.tsx';
import { MoneyField } from '../../../ui/money-field.tsx';
import { FieldPlace } from '../ledger/field-place.tsx';
import { SectionForm } from '../ledger/section-form.tsx';
import { useVehicle } from '../page/vehicle-context.ts';

function GroupBudgetFields({ edit }: { readonly edit: Editing<Typed<Targets>> }) {
  const { currency } = useVehicle();
  const { budgetByGroup } = edit.value;
  return (
    <fieldset className="group-budgets">
      <legend>{budgetText.byGroup}</legend>
      <p className="quiet">{budgetText.byGroupHint}</p>
      <div className="field-grid">
        {budgetGroups.map((group) => (
          <MoneyField
            key={group}
            label={moneyText.group[group]}
            valueCents={budgetByGroup[group]}
            onChange={(cents) => edit.set({ budgetByGroup: { ...budgetByGroup, [group]: cents } })}
            currency={currency}
            problem={edit.problemAt(`budgetByGroup.${group}`)}
          />
        ))}
      </div>
    </fieldset>
  );
}

export function TargetsForm() {
  const { vehicle, currency, today } = useVehicle();
  const { targets } = vehicle;
  const amount = (cents: number | null) => (cents === null ? null : showCents(cents));
  return (
    <SectionForm<Targets>
      part="targets"
      label={moneyText.targets}
      schema={targetsSchema}
      base={targets}
      toChange={(value) => ({ kind: 'set', section: 'targets', value })}
      shown={
        <Facts
          rows={[
            {
              label: moneyText.asking,
              value: budgetText.priceWords(targets.askingCents, targets.pricedOn, today),
              isAmount: true,
            },
            { label: moneyText.budget, value: amount(targets.budgetCents), isAmount: true },
            { label: moneyText.tradeValue, value: amount(targets.tradeValueCents), isAmount: true },
            { label: moneyText.marginFloor, value: amount(targets.marginFloorCents), isAmount: true },
          ]}
        />
      }
      form={(edit) => (
        <>
          <div className="field-grid">
            <FieldPlace name="askingCents">
              <MoneyField label={moneyText.asking} {...edit.centsAt('askingCents')} currency={currency} />
            </FieldPlace>
            <DayField
              label={budgetText.pricedOn}
              {...edit.at('pricedOn')}
              today={today}
              hint={budgetText.pricedOnHint}
            />
            <MoneyField label={moneyText.budget} {...edit.centsAt('budgetCents')} currency={currency} />
            <MoneyField label={moneyText.tradeValue} {...edit.centsAt('tradeValueCents')} currency={currency} />
            <MoneyField label={moneyText.marginFloor} {...edit.centsAt('marginFloorCents')} currency={currency} />
          </div>
          <GroupBudgetFields edit={edit} />
        </>
      )}
    />
  );
}
