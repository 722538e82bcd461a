// The bands of days by which Money shows how old the stock is.
import type { AgeingBands } from '../../../app/domain/fleet/ageing.ts';
import { typeIntoShop } from '../../state/shop-store.ts';
import { setupMoneyText as text } from '../../text/setup-money.ts';
import { Button } from '../../ui/button.tsx';
import { NumberField } from '../../ui/number-field.tsx';
import { problemAt, SectionForm, type SectionProps } from './section-form.tsx';

export function AgeingSection({ kept, ...section }: SectionProps & { readonly kept: AgeingBands }) {
  const { state } = section;
  const bands = state.drafts.ageingBands ?? kept;
  const isReadOnly = section.readOnlyReason !== null;
  return (
    <SectionForm
      {...section}
      part="ageingBands"
      hint={text.bandsHint}
      extraAction={
        !isReadOnly && (
          <>
            <Button kind="quiet" onPress={() => typeIntoShop('ageingBands', [...bands, null], '')}>
              {text.addBand}
            </Button>
            {bands.length > 1 && (
              <Button kind="quiet" onPress={() => typeIntoShop('ageingBands', bands.slice(0, -1), '')}>
                {text.removeBand}
              </Button>
            )}
          </>
        )
      }
    >
      <div className="field-grid">
        {bands.map((end, index) => (
          <NumberField
            // biome-ignore lint/suspicious/noArrayIndexKey: a band is known by its place only.
            key={index}
            label={text.band(index + 1)}
            value={end}
            onChange={(value) =>
              typeIntoShop(
                'ageingBands',
                bands.map((other, at) => (at === index ? value : other)),
                `${index}`,
              )
            }
            maximum={3650}
            problem={problemAt(state, 'ageingBands', `${index}`)}
            isReadOnly={isReadOnly}
            isRequired
          />
        ))}
      </div>
    </SectionForm>
  );
}
