// The rows of one funding plan: payments on the principal, and the days on which the rate changed.
import type { Curtailment } from '../../../app/domain/money/funding-plan.ts';
import type { Blankable } from '../../state/shop-parts.ts';
import { setupMoneyText as text } from '../../text/setup-money.ts';
import { Button } from '../../ui/button.tsx';
import { DayField } from '../../ui/day-field.tsx';
import { MoneyField } from '../../ui/money-field.tsx';
import { NumberField } from '../../ui/number-field.tsx';
import { SelectField } from '../../ui/select-field.tsx';
import { PercentField } from './number-in-setup.tsx';
import type { PlanFieldsProps } from './plan-fields.tsx';
import { RemoveCell } from './remove-cell.tsx';

type TypedCurtailment = Blankable<Curtailment>;
const kinds = ['percent-of-original', 'percent-of-balance', 'amount'] as const;

function withKind({ dayMark, every }: TypedCurtailment, kind: Curtailment['kind']): TypedCurtailment {
  return kind === 'amount' ? { kind, dayMark, every, valueCents: null } : { kind, dayMark, every, valuePpm: null };
}

function replaced<Entry>(entries: readonly Entry[], index: number, entry: Entry): readonly Entry[] {
  return entries.map((other, at) => (at === index ? entry : other));
}

export function CurtailmentRows({ plan, currency, isReadOnly, problemAt, onChange }: PlanFieldsProps) {
  const rows = plan.curtailments;
  const set = (index: number, row: TypedCurtailment, field: string) =>
    onChange({ ...plan, curtailments: replaced(rows, index, row) }, `curtailments.${index}.${field}`);
  const at = (index: number, field: string) => ({
    problem: problemAt(`curtailments.${index}.${field}`),
    isReadOnly,
    isLabelUnseen: true,
  });
  return (
    <>
      <h3 className="setup-part">{text.curtailments}</h3>
      {rows.length > 0 && (
        <table className="setup-table">
          <thead>
            <tr>
              <th scope="col">{text.dayMark}</th>
              <th scope="col">{text.curtailmentKind}</th>
              <th scope="col">{text.value}</th>
              <th scope="col">{text.every}</th>
              <th scope="col">{text.unit}</th>
              <td />
            </tr>
          </thead>
          <tbody>
            {rows.map((row, index) => (
              // biome-ignore lint/suspicious/noArrayIndexKey: a row is known by its place only.
              <tr key={index}>
                <td>
                  <NumberField
                    label={text.numbered(text.dayMark, index + 1)}
                    value={row.dayMark}
                    onChange={(dayMark) => set(index, { ...row, dayMark }, 'dayMark')}
                    minimum={1}
                    maximum={3650}
                    {...at(index, 'dayMark')}
                  />
                </td>
                <td>
                  <SelectField
                    label={text.numbered(text.curtailmentKind, index + 1)}
                    value={row.kind}
                    options={kinds.map((value) => ({ value, label: text.curtailmentKinds[value] }))}
                    onChange={(kind) => set(index, withKind(row, kind), 'kind')}
                    {...at(index, 'kind')}
                  />
                </td>
                <td>
                  {row.kind === 'amount' ? (
                    <MoneyField
                      label={text.numbered(text.value, index + 1)}
                      valueCents={row.valueCents}
                      currency={currency}
                      onChange={(valueCents) => set(index, { ...row, valueCents }, 'valueCents')}
                      {...at(index, 'valueCents')}
                    />
                  ) : (
                    <PercentField
                      label={text.numbered(text.value, index + 1)}
                      ppm={row.valuePpm}
                      onChange={(valuePpm) => set(index, { ...row, valuePpm }, 'valuePpm')}
                      {...at(index, 'valuePpm')}
                    />
                  )}
                </td>
                <td>
                  <NumberField
                    label={text.numbered(text.every, index + 1)}
                    value={row.every?.count ?? null}
                    onChange={(count) =>
                      set(
                        index,
                        { ...row, every: count === null ? null : { count, unit: row.every?.unit ?? 'days' } },
                        'every',
                      )
                    }
                    minimum={1}
                    maximum={365}
                    {...at(index, 'every')}
                  />
                </td>
                <td>
                  {row.every !== null && (
                    <SelectField
                      label={text.numbered(text.unit, index + 1)}
                      value={row.every.unit}
                      options={(['days', 'months'] as const).map((value) => ({ value, label: text.units[value] }))}
                      onChange={(unit) =>
                        set(index, { ...row, every: { count: row.every?.count ?? null, unit } }, 'every')
                      }
                      {...at(index, 'every.unit')}
                    />
                  )}
                </td>
                <RemoveCell
                  isReadOnly={isReadOnly}
                  label={text.removeRow('curtailment', index + 1)}
                  word={text.remove}
                  onRemove={() =>
                    onChange({ ...plan, curtailments: rows.filter((_, other) => other !== index) }, 'curtailments')
                  }
                />
              </tr>
            ))}
          </tbody>
        </table>
      )}
      {!isReadOnly && (
        <div className="setup-rows-foot">
          <Button
            kind="quiet"
            onPress={() =>
              onChange(
                {
                  ...plan,
                  curtailments: [...rows, { kind: 'percent-of-original', valuePpm: null, dayMark: null, every: null }],
                },
                'curtailments',
              )
            }
          >
            {text.addCurtailment}
          </Button>
        </div>
      )}
    </>
  );
}

export function RateRows({ plan, today, isReadOnly, problemAt, onChange }: PlanFieldsProps) {
  const rows = plan.rateChanges;
  const set = (index: number, row: (typeof rows)[number], field: string) =>
    onChange({ ...plan, rateChanges: replaced(rows, index, row) }, `rateChanges.${index}.${field}`);
  return (
    <>
      <h3 className="setup-part">{text.rateChanges}</h3>
      {rows.map((row, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a row is known by its place only.
        <div key={index} className="field-grid">
          <DayField
            label={text.numbered(text.from, index + 1)}
            value={row.from === '' ? null : row.from}
            onChange={(from) => set(index, { ...row, from: from ?? '' }, 'from')}
            today={today}
            problem={problemAt(`rateChanges.${index}.from`)}
            isReadOnly={isReadOnly}
          />
          <PercentField
            label={text.numbered(text.rate, index + 1)}
            ppm={row.ratePpm}
            onChange={(ratePpm) => set(index, { ...row, ratePpm }, 'ratePpm')}
            problem={problemAt(`rateChanges.${index}.ratePpm`)}
            isReadOnly={isReadOnly}
          />
          {!isReadOnly && (
            <Button
              kind="quiet"
              label={text.removeRow('change of the rate', index + 1)}
              onPress={() =>
                onChange({ ...plan, rateChanges: rows.filter((_, other) => other !== index) }, 'rateChanges')
              }
            >
              {text.remove}
            </Button>
          )}
        </div>
      ))}
      {!isReadOnly && (
        <div className="setup-rows-foot">
          <Button
            kind="quiet"
            onPress={() => onChange({ ...plan, rateChanges: [...rows, { from: today, ratePpm: null }] }, 'rateChanges')}
          >
            {text.addRateChange}
          </Button>
        </div>
      )}
    </>
  );
}
