// What an hour, a day and money cost the shop.
import type { Rates } from '../../../app/domain/fleet/shop.ts';
import type { TypedRates } from '../../state/shop-parts.ts';
import { typeIntoShop } from '../../state/shop-store.ts';
import { setupText } from '../../text/setup.ts';
import { CheckField } from '../../ui/check-field.tsx';
import { MoneyField } from '../../ui/money-field.tsx';
import { NumberField } from '../../ui/number-field.tsx';
import { SelectField } from '../../ui/select-field.tsx';
import { problemAt, SectionForm, type SectionProps } from './section-form.tsx';

/** Parts per million in one per cent. */
const ppmInPercent = 10_000;

export function RatesSection({
  kept,
  currency,
  ...section
}: SectionProps & { readonly kept: Rates; readonly currency: string }) {
  const { state } = section;
  const rates: TypedRates = state.drafts.rates ?? kept;
  const isReadOnly = section.readOnlyReason !== null;
  const type = <Name extends keyof TypedRates>(name: Name, value: TypedRates[Name]) =>
    typeIntoShop('rates', { ...rates, [name]: value }, name);
  const wiring = (name: keyof TypedRates) => ({ problem: problemAt(state, 'rates', name), isReadOnly });
  return (
    <SectionForm {...section} part="rates" hint={setupText.ratesHint}>
      <div className="field-grid">
        <MoneyField
          label={setupText.labour}
          valueCents={rates.labourCentsPerHour}
          onChange={(cents) => type('labourCentsPerHour', cents)}
          currency={currency}
          hint={setupText.labourHint}
          isRequired
          {...wiring('labourCentsPerHour')}
        />
        <MoneyField
          label={setupText.overhead}
          valueCents={rates.overheadCentsPerDay}
          onChange={(cents) => type('overheadCentsPerDay', cents)}
          currency={currency}
          hint={setupText.overheadHint}
          isRequired
          {...wiring('overheadCentsPerDay')}
        />
        <NumberField
          label={setupText.funding}
          value={rates.fundingRatePpm === null ? null : rates.fundingRatePpm / ppmInPercent}
          onChange={(percent) => type('fundingRatePpm', percent === null ? null : Math.round(percent * ppmInPercent))}
          unit={setupText.fundingUnit}
          decimals={4}
          maximum={100}
          hint={setupText.fundingHint}
          isRequired
          {...wiring('fundingRatePpm')}
        />
        <SelectField
          label={setupText.dayCount}
          value={rates.dayCount}
          onChange={(dayCount) => type('dayCount', dayCount)}
          options={(['actual-365', 'actual-360'] as const).map((value) => ({
            value,
            label: setupText.dayCounts[value],
          }))}
          hint={setupText.dayCountHint}
          {...wiring('dayCount')}
        />
        <CheckField
          label={setupText.countsFirstDay}
          value={rates.countsFirstDay}
          onChange={(counts) => type('countsFirstDay', counts)}
          isWide
          {...wiring('countsFirstDay')}
        />
      </div>
    </SectionForm>
  );
}
