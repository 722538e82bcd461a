// Between which volts the supply has to stay while a module is programmed, by make, with where that was read.

import type { SupportRange } from '../../../app/domain/diagnosis/support-voltage.ts';
import type { Blankable } from '../../state/shop-parts.ts';
import { typeIntoShop } from '../../state/shop-store.ts';
import { setupDiagnosisText as text } from '../../text/setup-diagnosis.ts';
import { Button } from '../../ui/button.tsx';
import { NumberField } from '../../ui/number-field.tsx';
import { TextField } from '../../ui/text-field.tsx';
import { RemoveCell } from './remove-cell.tsx';
import { problemAt, SectionForm, type SectionProps } from './section-form.tsx';

type Row = Blankable<SupportRange>;

const newRow: Row = { make: '', lowestVolts: null, highestVolts: null, source: '' };

export function SupportSection({ kept, ...section }: SectionProps & { readonly kept: readonly SupportRange[] }) {
  const { state } = section;
  const rows: readonly Row[] = state.drafts.supportRanges ?? kept;
  const isReadOnly = section.readOnlyReason !== null;
  const change = (index: number, fields: Partial<Row>, field: string) =>
    typeIntoShop(
      'supportRanges',
      rows.map((row, at) => (at === index ? { ...row, ...fields } : row)),
      `${index}.${field}`,
    );
  const at = (index: number, field: string) => ({
    problem: problemAt(state, 'supportRanges', `${index}.${field}`),
    isReadOnly,
    isLabelUnseen: true,
  });
  return (
    <SectionForm
      {...section}
      part="supportRanges"
      count={rows.length}
      hint={text.supportHint}
      extraAction={
        !isReadOnly && (
          <Button kind="quiet" onPress={() => typeIntoShop('supportRanges', [...rows, newRow], '')}>
            {text.addMake}
          </Button>
        )
      }
    >
      <table className="setup-table">
        <thead>
          <tr>
            <th scope="col">{text.make}</th>
            <th scope="col">{text.lowest}</th>
            <th scope="col">{text.highest}</th>
            <th scope="col">{text.source}</th>
            <td />
          </tr>
        </thead>
        <tbody>
          {rows.map((row, index) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: a row is known by its place only.
            <tr key={index}>
              <td className="setup-make">
                <TextField
                  label={text.ofRow(text.make, index + 1)}
                  value={row.make ?? ''}
                  onChange={(make) => change(index, { make: make === '' ? null : make }, 'make')}
                  placeholder={text.everyMake}
                  {...at(index, 'make')}
                />
              </td>
              <td className="setup-volts">
                <NumberField
                  label={text.ofRow(text.lowest, index + 1)}
                  value={row.lowestVolts}
                  onChange={(lowestVolts) => change(index, { lowestVolts }, 'lowestVolts')}
                  minimum={8}
                  maximum={18}
                  decimals={2}
                  unit={text.volts}
                  {...at(index, 'lowestVolts')}
                  problem={at(index, 'lowestVolts').problem ?? problemAt(state, 'supportRanges', `${index}`)}
                />
              </td>
              <td className="setup-volts">
                <NumberField
                  label={text.ofRow(text.highest, index + 1)}
                  value={row.highestVolts}
                  onChange={(highestVolts) => change(index, { highestVolts }, 'highestVolts')}
                  minimum={8}
                  maximum={18}
                  decimals={2}
                  unit={text.volts}
                  {...at(index, 'highestVolts')}
                />
              </td>
              <td>
                <TextField
                  label={text.ofRow(text.source, index + 1)}
                  value={row.source}
                  onChange={(source) => change(index, { source }, 'source')}
                  {...at(index, 'source')}
                />
              </td>
              <RemoveCell
                isReadOnly={isReadOnly}
                label={text.removeRow(index + 1)}
                word={text.remove}
                onRemove={() =>
                  typeIntoShop(
                    'supportRanges',
                    rows.filter((_, other) => other !== index),
                    '',
                  )
                }
              />
            </tr>
          ))}
        </tbody>
      </table>
    </SectionForm>
  );
}
