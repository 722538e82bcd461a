// The fields of taking a vehicle in, in the order in which they are known: which vehicle, what it cost, what came with it.
import type { LotRow } from '../../../app/contract/views.ts';
import type { Day } from '../../../app/domain/shared/day.ts';
import { driveKindSchema } from '../../../app/domain/vehicle/identity.ts';
import { useDesk } from '../../state/desk-store.ts';
import type { Editing } from '../../state/use-edit-draft.ts';
import { takeInText } from '../../text/take-in.ts';
import { driveNames } from '../../text/vehicle-entries.ts';
import { CheckField } from '../../ui/check-field.tsx';
import { DayField } from '../../ui/day-field.tsx';
import { MoneyField } from '../../ui/money-field.tsx';
import { NumberField } from '../../ui/number-field.tsx';
import { SelectField } from '../../ui/select-field.tsx';
import { TextField } from '../../ui/text-field.tsx';
import type { TakeInDraft } from './take-in-draft.ts';

export type TakeInFieldsProps = {
  readonly edit: Editing<TakeInDraft>;
  readonly rows: readonly LotRow[];
  readonly today: Day;
  readonly currency: string;
  readonly suggestedStockNumber: string;
};

/** Words that the fleet uses already, each once. */
function wordsOf(rows: readonly LotRow[], pick: (identity: LotRow['identity']) => string): readonly string[] {
  return [...new Set(rows.map((row) => pick(row.identity)).filter((word) => word !== ''))].sort();
}

export function WhichFields({ edit, rows, suggestedStockNumber }: TakeInFieldsProps) {
  const { value } = edit;
  const ofMake = rows.filter((row) => value.make === '' || row.identity.make === value.make);
  const isSuggested = suggestedStockNumber !== '' && value.stockNumber === suggestedStockNumber;
  return (
    <div className="field-grid take-in-fields">
      <TextField
        label={takeInText.stockNumber}
        {...edit.at('stockNumber')}
        hint={isSuggested ? takeInText.stockNumberHint : undefined}
        code
        isRequired
      />
      <NumberField label={takeInText.modelYear} {...edit.at('modelYear')} minimum={1900} maximum={2100} />
      <TextField label={takeInText.make} {...edit.at('make')} list={wordsOf(rows, ({ make }) => make)} />
      <TextField label={takeInText.model} {...edit.at('model')} list={wordsOf(ofMake, ({ model }) => model)} />
      <TextField label={takeInText.body} {...edit.at('body')} />
      <TextField label={takeInText.colour} {...edit.at('colour')} list={wordsOf(rows, ({ colour }) => colour)} />
      <SelectField
        label={takeInText.drive}
        {...edit.at('drive')}
        options={driveKindSchema.options.map((drive) => ({ value: drive, label: driveNames[drive] }))}
      />
      <NumberField label={takeInText.odometer} {...edit.at('odometer')} maximum={3_000_000} unit={value.odometerUnit} />
    </div>
  );
}

export function PurchaseFields({ edit, today, currency }: TakeInFieldsProps) {
  const { fundingPlans } = useDesk();
  return (
    <div className="field-grid take-in-fields">
      <DayField label={takeInText.boughtOn} {...edit.at('boughtOn')} today={today} isRequired />
      <TextField label={takeInText.source} {...edit.at('source')} />
      <MoneyField label={takeInText.price} {...edit.centsAt('priceCents')} currency={currency} isRequired />
      <MoneyField label={takeInText.fees} {...edit.centsAt('feesCents')} currency={currency} />
      <MoneyField label={takeInText.transport} {...edit.centsAt('transportCents')} currency={currency} />
      <MoneyField
        label={takeInText.askingPrice}
        {...edit.centsAt('askingCents')}
        currency={currency}
        hint={takeInText.askingHint}
      />
      {fundingPlans.length > 0 && (
        <SelectField
          label={takeInText.fundingPlan}
          value={edit.value.fundingPlanId ?? ''}
          onChange={(id) => edit.set({ fundingPlanId: id === '' ? null : id })}
          options={[
            { value: '', label: takeInText.ownMoney },
            ...fundingPlans.map(({ id, name }) => ({ value: id, label: name })),
          ]}
        />
      )}
    </div>
  );
}

export function ArrivalFields({ edit, rows, today }: TakeInFieldsProps) {
  const { value } = edit;
  return (
    <div className="field-grid take-in-fields">
      <CheckField
        label={takeInText.isHere}
        value={value.isHere}
        onChange={(isHere) => edit.set({ isHere, arrivalOn: isHere ? today : null })}
      />
      <DayField
        label={value.isHere ? takeInText.arrivedOn : takeInText.expectedOn}
        {...edit.at('arrivalOn')}
        today={today}
      />
      <TextField
        label={takeInText.location}
        {...edit.at('location')}
        list={wordsOf(rows, ({ location }) => location)}
      />
      <TextField label={takeInText.keyTag} {...edit.at('keyTag')} />
      <TextField label={takeInText.paperKind} {...edit.at('paperKind')} />
      <CheckField label={takeInText.paperIsHere} {...edit.at('paperIsHere')} />
      {!value.paperIsHere && (
        <DayField label={takeInText.paperExpectedOn} {...edit.at('paperExpectedOn')} today={today} />
      )}
      <NumberField label={takeInText.keysReceived} {...edit.at('keysReceived')} maximum={20} />
    </div>
  );
}
