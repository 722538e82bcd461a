// Tax on the sale of a vehicle: none, or on the margin.
import type { SaleTax } from '../../../app/domain/money/margin-tax.ts';
import { taxRoundingSchema } from '../../../app/domain/money/margin-tax.ts';
import { typeIntoShop } from '../../state/shop-store.ts';
import { setupMoneyText as text } from '../../text/setup-money.ts';
import { SelectField } from '../../ui/select-field.tsx';
import { PercentField } from './number-in-setup.tsx';
import { problemAt, SectionForm, type SectionProps } from './section-form.tsx';

const whole = 1_000_000;

export function TaxSection({ kept, ...section }: SectionProps & { readonly kept: SaleTax }) {
  const { state } = section;
  const tax = state.drafts.saleTax ?? kept;
  const isReadOnly = section.readOnlyReason !== null;
  const onMargin = tax.kind === 'on-margin' ? tax : null;
  const { numerator = null, denominator = null } = onMargin?.rate ?? {};
  return (
    <SectionForm {...section} part="saleTax" hint={text.taxHint}>
      <div className="field-grid">
        <SelectField
          label={text.taxKind}
          value={tax.kind}
          isReadOnly={isReadOnly}
          options={(['none', 'on-margin'] as const).map((value) => ({ value, label: text.taxKinds[value] }))}
          onChange={(kind) =>
            typeIntoShop(
              'saleTax',
              kind === 'none' ? { kind } : { kind, rate: { numerator: null, denominator: whole }, rounding: 'nearest' },
              'kind',
            )
          }
        />
        {onMargin !== null && (
          <>
            <PercentField
              label={text.taxRate}
              ppm={numerator === null || denominator === null ? null : (numerator * whole) / denominator}
              onChange={(ppm) =>
                typeIntoShop('saleTax', { ...onMargin, rate: { numerator: ppm, denominator: whole } }, 'rate.numerator')
              }
              hint={text.taxRateHint}
              problem={problemAt(state, 'saleTax', 'rate.numerator')}
              isReadOnly={isReadOnly}
              isRequired
            />
            <SelectField
              label={text.rounding}
              value={onMargin.rounding}
              isReadOnly={isReadOnly}
              options={taxRoundingSchema.options.map((value) => ({ value, label: text.roundings[value] }))}
              onChange={(rounding) => typeIntoShop('saleTax', { ...onMargin, rounding }, 'rounding')}
            />
          </>
        )}
      </div>
    </SectionForm>
  );
}
