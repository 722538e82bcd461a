// What selling costs and how long it takes, to a retail buyer and to the trade.
import type { SellingTerms } from '../../../app/domain/fleet/shop.ts';
import { typeIntoShop } from '../../state/shop-store.ts';
import { setupMoneyText as text } from '../../text/setup-money.ts';
import { MoneyField } from '../../ui/money-field.tsx';
import { NumberField } from '../../ui/number-field.tsx';
import { problemAt, SectionForm, type SectionProps } from './section-form.tsx';

export function SellingSection({
  kept,
  currency,
  ...section
}: SectionProps & { readonly kept: SellingTerms; readonly currency: string }) {
  const { state } = section;
  const selling = state.drafts.selling ?? kept;
  const at = (name: keyof SellingTerms) => ({
    onChange: (value: number | null) => typeIntoShop('selling', { ...selling, [name]: value }, name),
    problem: problemAt(state, 'selling', name),
    isReadOnly: section.readOnlyReason !== null,
  });
  return (
    <SectionForm {...section} part="selling" hint={text.sellingHint}>
      <div className="field-grid">
        <MoneyField
          label={text.retailCost}
          valueCents={selling.retailCents}
          currency={currency}
          {...at('retailCents')}
        />
        <NumberField
          label={text.daysToSell}
          value={selling.daysToSell}
          hint={text.daysToSellHint}
          maximum={365}
          {...at('daysToSell')}
        />
        <MoneyField label={text.tradeCost} valueCents={selling.tradeCents} currency={currency} {...at('tradeCents')} />
        <NumberField label={text.daysToTrade} value={selling.daysToTrade} maximum={365} {...at('daysToTrade')} />
      </div>
    </SectionForm>
  );
}
