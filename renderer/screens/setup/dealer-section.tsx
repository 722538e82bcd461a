// Who the dealer is, and what holds where it works.
import type { Dealer } from '../../../app/domain/fleet/shop.ts';
import { dayFormSchema } from '../../../app/domain/shared/show-day.ts';
import { marketSchema } from '../../../app/domain/vehicle/market.ts';
import { typeIntoShop } from '../../state/shop-store.ts';
import { setupText } from '../../text/setup.ts';
import { CheckField } from '../../ui/check-field.tsx';
import { SelectField } from '../../ui/select-field.tsx';
import { ParagraphField, TextField } from '../../ui/text-field.tsx';
import { LogoField } from './logo-field.tsx';
import { problemAt, SectionForm, type SectionProps } from './section-form.tsx';

export function DealerSection({ kept, ...section }: SectionProps & { readonly kept: Dealer }) {
  const { state } = section;
  const dealer = state.drafts.dealer ?? kept;
  const isReadOnly = section.readOnlyReason !== null;
  const field = <Name extends keyof Dealer>(name: Name) => ({
    value: dealer[name],
    onChange: (value: Dealer[Name]) => typeIntoShop('dealer', { ...dealer, [name]: value }, name),
    problem: problemAt(state, 'dealer', name),
    isReadOnly,
  });
  return (
    <SectionForm {...section} part="dealer" hint={setupText.dealerHint}>
      <div className="field-grid">
        <TextField label={setupText.name} {...field('name')} hint={setupText.nameHint} isRequired />
        <TextField label={setupText.phone} {...field('phone')} />
        <ParagraphField label={setupText.address} {...field('address')} rows={2} isWide />
        <SelectField
          label={setupText.market}
          {...field('market')}
          hint={setupText.marketHint}
          options={marketSchema.options.map((value) => ({ value, label: setupText.markets[value] }))}
        />
        <TextField
          label={setupText.currency}
          {...field('currency')}
          onChange={(text) => field('currency').onChange(text.toUpperCase())}
          hint={setupText.currencyHint}
          isRequired
          code
        />
        <SelectField
          label={setupText.distanceUnit}
          {...field('distanceUnit')}
          options={(['km', 'mi'] as const).map((value) => ({ value, label: setupText.distanceUnits[value] }))}
        />
        <SelectField
          label={setupText.dayForm}
          {...field('dayForm')}
          hint={setupText.dayFormHint}
          options={dayFormSchema.options.map((value) => ({ value, label: setupText.dayForms[value] }))}
        />
        <SelectField
          label={setupText.paper}
          {...field('paper')}
          options={(['a4', 'letter'] as const).map((value) => ({ value, label: setupText.papers[value] }))}
        />
        <TextField label={setupText.paperName} {...field('paperName')} hint={setupText.paperNameHint} isRequired />
        <ParagraphField
          label={setupText.buyerNotice}
          {...field('buyerNotice')}
          hint={setupText.buyerNoticeHint}
          rows={3}
          isWide
        />
        <CheckField label={setupText.priceInWindow} {...field('showsPriceInWindow')} isWide />
      </div>
      <LogoField readOnlyReason={section.readOnlyReason} />
    </SectionForm>
  );
}
