// Costs that are neither purchase, part, labour, sublet work nor a code fee.
import { type OtherCostDraft, otherCostDraftSchema } from '../../../../app/domain/money/other-cost.ts';
import { showCents } from '../../../../app/domain/shared/cents.ts';
import { sayDay } from '../../../text/say-day.ts';
import { sectionNames } from '../../../text/vehicle-entries.ts';
import { costText } from '../../../text/vehicle-work.ts';
import { DayField } from '../../../ui/day-field.tsx';
import { MoneyField } from '../../../ui/money-field.tsx';
import { TextField } from '../../../ui/text-field.tsx';
import { asTyped, type FactKind } from '../ledger/fact-kind.ts';
import { Ledger } from '../ledger/ledger.tsx';
import { useVehicle } from '../page/vehicle-context.ts';

const costKind: FactKind<OtherCostDraft> = {
  list: 'otherCosts',
  schema: otherCostDraftSchema,
  toChange: (item) => ({ kind: 'put', list: 'otherCosts', item }),
  // A new cost carries nothing until it is typed; the field then starts empty.
  toValue: (cost) => ({ ...asTyped(cost), amountCents: cost.amountCents === 0 ? null : cost.amountCents }),
};

export function CostsSection() {
  const { vehicle, today, currency } = useVehicle();
  const costs = vehicle.otherCosts.toSorted((a, b) => (a.spentOn < b.spentOn ? 1 : a.spentOn > b.spentOn ? -1 : 0));
  return (
    <Ledger
      section="costs"
      title={sectionNames.costs}
      kind={costKind}
      facts={costs}
      nameOf={(cost) => cost.what}
      addLabel={costText.add}
      emptySentence={costText.empty}
      makeNew={(id) => ({ id, spentOn: today, what: '', amountCents: 0 })}
      columns={[
        { title: costText.what, cell: (cost) => cost.what },
        { title: costText.spentOn, cell: (cost) => sayDay(cost.spentOn, today), isTight: true },
        { title: costText.amount, align: 'right', cell: (cost) => showCents(cost.amountCents) },
      ]}
      form={(edit) => (
        <div className="field-grid">
          <TextField label={costText.what} {...edit.at('what')} isRequired />
          <MoneyField
            label={costText.amount}
            {...edit.centsAt('amountCents')}
            currency={currency}
            mayBeNegative
            hint={costText.amountHint}
            isRequired
          />
          <DayField label={costText.spentOn} {...edit.at('spentOn')} today={today} isRequired />
        </div>
      )}
    />
  );
}
