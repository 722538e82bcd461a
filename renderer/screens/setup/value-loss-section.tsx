// The curve by which a vehicle loses value as it stands. Optional; without points nothing is lost.
import type { ValueLossCurve } from '../../../app/domain/money/value-loss.ts';
import { typeIntoShop } from '../../state/shop-store.ts';
import { setupMoneyText as text } from '../../text/setup-money.ts';
import { Button } from '../../ui/button.tsx';
import { NumberField } from '../../ui/number-field.tsx';
import { PercentField } from './number-in-setup.tsx';
import { RemoveCell } from './remove-cell.tsx';
import { problemAt, SectionForm, type SectionProps } from './section-form.tsx';

export function ValueLossSection({ kept, ...section }: SectionProps & { readonly kept: ValueLossCurve }) {
  const { state } = section;
  const points = state.drafts.valueLoss ?? kept;
  const isReadOnly = section.readOnlyReason !== null;
  const change = (index: number, fields: Partial<(typeof points)[number]>, field: string) =>
    typeIntoShop(
      'valueLoss',
      points.map((point, at) => (at === index ? { ...point, ...fields } : point)),
      `${index}.${field}`,
    );
  const at = (index: number, field: string) => ({
    problem: problemAt(state, 'valueLoss', `${index}.${field}`) ?? problemAt(state, 'valueLoss', `${index}`),
    isReadOnly,
    isLabelUnseen: true,
  });
  return (
    <SectionForm
      {...section}
      part="valueLoss"
      hint={text.lossHint}
      extraAction={
        !isReadOnly && (
          <Button
            kind="quiet"
            onPress={() => typeIntoShop('valueLoss', [...points, { heldDays: null, lostPpm: null }], '')}
          >
            {text.addPoint}
          </Button>
        )
      }
    >
      {points.length === 0 ? (
        <p className="quiet">{text.noLoss}</p>
      ) : (
        <table className="setup-table is-narrow">
          <thead>
            <tr>
              <th scope="col">{text.heldDays}</th>
              <th scope="col">{text.lost}</th>
              <td />
            </tr>
          </thead>
          <tbody>
            {points.map((point, index) => (
              // biome-ignore lint/suspicious/noArrayIndexKey: a point is known by its place only.
              <tr key={index}>
                <td>
                  <NumberField
                    label={text.numbered(text.heldDays, index + 1)}
                    value={point.heldDays}
                    onChange={(heldDays) => change(index, { heldDays }, 'heldDays')}
                    maximum={3650}
                    {...at(index, 'heldDays')}
                  />
                </td>
                <td>
                  <PercentField
                    label={text.numbered(text.lost, index + 1)}
                    ppm={point.lostPpm}
                    onChange={(lostPpm) => change(index, { lostPpm }, 'lostPpm')}
                    {...at(index, 'lostPpm')}
                  />
                </td>
                <RemoveCell
                  isReadOnly={isReadOnly}
                  label={text.removeRow(text.point, index + 1)}
                  word={text.remove}
                  onRemove={() =>
                    typeIntoShop(
                      'valueLoss',
                      points.filter((_, at) => at !== index),
                      '',
                    )
                  }
                />
              </tr>
            ))}
          </tbody>
        </table>
      )}
    </SectionForm>
  );
}
