// The forms that schemes want filed about codes, and after how many days a kept code is destroyed once its vehicle is sold.
import type { FilingRule } from '../../../app/domain/codes/filing-limit.ts';
import { newIdentifier } from '../../state/new-identifier.ts';
import type { Blankable } from '../../state/shop-parts.ts';
import { typeIntoShop } from '../../state/shop-store.ts';
import { setupCodesText as text } from '../../text/setup-codes.ts';
import { Button } from '../../ui/button.tsx';
import { NumberField } from '../../ui/number-field.tsx';
import { TextField } from '../../ui/text-field.tsx';
import { RemoveCell } from './remove-cell.tsx';
import { problemAt, SectionForm, type SectionProps } from './section-form.tsx';

type Row = Blankable<FilingRule>;

export function FilingSection({ kept, ...section }: SectionProps & { readonly kept: readonly FilingRule[] }) {
  const { state } = section;
  const rows: readonly Row[] = state.drafts.filingRules ?? kept;
  const isReadOnly = section.readOnlyReason !== null;
  const change = (index: number, fields: Partial<Row>, field: string) =>
    typeIntoShop(
      'filingRules',
      rows.map((row, at) => (at === index ? { ...row, ...fields } : row)),
      `${index}.${field}`,
    );
  const at = (label: string, index: number, field: string) => ({
    label: text.ofFiling(label, index + 1),
    problem: problemAt(state, 'filingRules', `${index}.${field}`),
    isReadOnly,
    isLabelUnseen: true,
  });
  const add = () =>
    typeIntoShop(
      'filingRules',
      [...rows, { id: newIdentifier(), name: '', withinDays: null, otherwise: '', source: '' }],
      '',
    );
  return (
    <SectionForm
      {...section}
      part="filingRules"
      count={rows.length}
      hint={text.filingHint}
      extraAction={
        !isReadOnly && (
          <Button kind="quiet" onPress={add}>
            {text.addFiling}
          </Button>
        )
      }
    >
      {rows.length > 0 && (
        <table className="setup-table">
          <thead>
            <tr>
              <th scope="col">{text.filingName}</th>
              <th scope="col">{text.withinDays}</th>
              <th scope="col">{text.otherwise}</th>
              <th scope="col">{text.source}</th>
              <td />
            </tr>
          </thead>
          <tbody>
            {rows.map((row, index) => (
              <tr key={row.id}>
                <td>
                  <TextField
                    value={row.name}
                    onChange={(name) => change(index, { name }, 'name')}
                    {...at(text.filingName, index, 'name')}
                  />
                </td>
                <td className="setup-volts">
                  <NumberField
                    value={row.withinDays}
                    onChange={(withinDays) => change(index, { withinDays }, 'withinDays')}
                    maximum={365}
                    {...at(text.withinDays, index, 'withinDays')}
                  />
                </td>
                <td>
                  <TextField
                    value={row.otherwise}
                    onChange={(otherwise) => change(index, { otherwise }, 'otherwise')}
                    {...at(text.otherwise, index, 'otherwise')}
                  />
                </td>
                <td>
                  <TextField
                    value={row.source}
                    onChange={(source) => change(index, { source }, 'source')}
                    {...at(text.source, index, 'source')}
                  />
                </td>
                <RemoveCell
                  isReadOnly={isReadOnly}
                  label={text.removeFiling(row.name || text.newFiling)}
                  word={text.remove}
                  onRemove={() =>
                    typeIntoShop(
                      'filingRules',
                      rows.filter((_, other) => other !== index),
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

export function CodesAfterSaleSection({ kept, ...section }: SectionProps & { readonly kept: number }) {
  const { state } = section;
  const draft = state.drafts.daysUntilCodesAreDestroyed;
  const days = draft === '' ? null : (draft ?? kept);
  return (
    <SectionForm {...section} part="daysUntilCodesAreDestroyed" hint={text.daysHint}>
      <div className="field-grid">
        <NumberField
          label={text.days}
          value={days}
          onChange={(value) => typeIntoShop('daysUntilCodesAreDestroyed', value ?? '', '')}
          maximum={3650}
          unit={text.daysUnit(days ?? 0)}
          problem={problemAt(state, 'daysUntilCodesAreDestroyed', '')}
          isReadOnly={section.readOnlyReason !== null}
          isRequired
        />
      </div>
    </SectionForm>
  );
}
