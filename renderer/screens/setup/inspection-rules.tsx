// The rules of one inspection as a table: for which fuels and years, what may be incomplete, and where that was read.
import {
  type InspectionRule,
  type InspectionScheme,
  inspectionFuelSchema,
} from '../../../app/domain/diagnosis/inspection-schemes.ts';
import {
  continuousMonitors,
  type MonitorName,
  monitorNames,
  monitorWords,
} from '../../../app/domain/diagnosis/readiness-monitors.ts';
import type { Blankable } from '../../state/shop-parts.ts';
import { setupDiagnosisText as text } from '../../text/setup-diagnosis.ts';
import { NumberField } from '../../ui/number-field.tsx';
import { SelectField } from '../../ui/select-field.tsx';
import { TextField } from '../../ui/text-field.tsx';
import { RemoveCell } from './remove-cell.tsx';

export type TypedScheme = Blankable<InspectionScheme>;
type TypedRule = Blankable<InspectionRule>;
type Allowance = TypedRule['allowance'];

export const newRule: TypedRule = {
  fuels: ['petrol'],
  fromModelYear: null,
  toModelYear: null,
  allowance: { kind: 'any', most: null },
  source: '',
  sourceDated: '',
  remark: '',
};

const kinds = ['any', 'only', 'not-looked-at'] as const;
const countable = monitorNames.filter((name) => !(continuousMonitors as readonly MonitorName[]).includes(name));

function withKind(kind: (typeof kinds)[number]): Allowance {
  if (kind === 'any') return { kind, most: null };
  return kind === 'only' ? { kind, monitors: [] } : { kind };
}

type TicksProps<Value extends string> = {
  readonly options: readonly Value[];
  readonly chosen: readonly Value[];
  readonly words: Readonly<Record<Value, string>>;
  readonly labelOf: (words: string) => string;
  readonly isReadOnly: boolean;
  readonly onChange: (chosen: readonly Value[]) => void;
};

function Ticks<Value extends string>(props: TicksProps<Value>) {
  const { options, chosen, words, labelOf, isReadOnly, onChange } = props;
  return (
    <div className="setup-touches">
      {options.map((option) => (
        <label key={option}>
          <input
            type="checkbox"
            checked={chosen.includes(option)}
            aria-label={labelOf(words[option])}
            aria-disabled={isReadOnly || undefined}
            onChange={(event) => {
              if (isReadOnly) return;
              const isWanted = event.currentTarget.checked;
              onChange(options.filter((other) => (other === option ? isWanted : chosen.includes(other))));
            }}
          />
          {words[option]}
        </label>
      ))}
    </div>
  );
}

export type SchemeFieldsProps = {
  readonly scheme: TypedScheme;
  readonly isReadOnly: boolean;
  /** The sentence at a field inside this scheme. */
  readonly problemAt: (field: string) => string | undefined;
  readonly onChange: (scheme: TypedScheme, field: string) => void;
};

export function InspectionRules({ scheme, isReadOnly, problemAt, onChange }: SchemeFieldsProps) {
  const { rules, name } = scheme;
  const set = (index: number, rule: TypedRule, field: string) =>
    onChange({ ...scheme, rules: rules.map((other, at) => (at === index ? rule : other)) }, `rules.${index}.${field}`);
  const at = (index: number, field: string) => ({
    problem: problemAt(`rules.${index}.${field}`),
    isReadOnly,
    isLabelUnseen: true,
  });
  return (
    <table className="setup-table setup-rules">
      <thead>
        <tr>
          <th scope="col">{text.fuel}</th>
          <th scope="col">{text.years}</th>
          <th scope="col">{text.allowed}</th>
          <th scope="col">
            {text.source}, {text.sourceDated.toLowerCase()}, {text.remark.toLowerCase()}
          </th>
          <td />
        </tr>
      </thead>
      <tbody>
        {rules.map((rule, index) => {
          const numbered = (label: string) => text.numbered(label, index + 1, name);
          const { allowance } = rule;
          return (
            // biome-ignore lint/suspicious/noArrayIndexKey: a rule is known by its place only.
            <tr key={index}>
              <td>
                <Ticks
                  options={inspectionFuelSchema.options.filter((fuel) => fuel !== 'electric')}
                  chosen={rule.fuels}
                  words={text.fuels}
                  labelOf={(fuel) => text.fuelOf(fuel, index + 1, name)}
                  isReadOnly={isReadOnly}
                  onChange={(fuels) => set(index, { ...rule, fuels }, 'fuels')}
                />
                {at(index, 'fuels').problem !== undefined && (
                  <p className="field-problem">{at(index, 'fuels').problem}</p>
                )}
              </td>
              <td className="setup-years">
                <NumberField
                  label={numbered(text.from)}
                  value={rule.fromModelYear}
                  onChange={(fromModelYear) => set(index, { ...rule, fromModelYear }, 'fromModelYear')}
                  minimum={1980}
                  maximum={2100}
                  {...at(index, 'fromModelYear')}
                />
                <NumberField
                  label={numbered(text.to)}
                  value={rule.toModelYear}
                  onChange={(toModelYear) => set(index, { ...rule, toModelYear }, 'toModelYear')}
                  minimum={1980}
                  maximum={2100}
                  placeholder="…"
                  {...at(index, 'toModelYear')}
                />
              </td>
              <td className="setup-allowed">
                <div className="setup-pair">
                  <SelectField
                    label={numbered(text.allowed)}
                    value={allowance.kind}
                    options={kinds.map((value) => ({ value, label: text.allowances[value] }))}
                    onChange={(kind) => set(index, { ...rule, allowance: withKind(kind) }, 'allowance')}
                    {...at(index, 'allowance')}
                  />
                  {allowance.kind === 'any' && (
                    <NumberField
                      label={numbered(text.most)}
                      value={allowance.most}
                      onChange={(most) => set(index, { ...rule, allowance: { kind: 'any', most } }, 'allowance.most')}
                      maximum={8}
                      {...at(index, 'allowance.most')}
                    />
                  )}
                </div>
                {allowance.kind === 'only' && (
                  <Ticks
                    options={countable}
                    chosen={allowance.monitors}
                    words={monitorWords}
                    labelOf={(monitor) => text.monitorOf(monitor, index + 1, name)}
                    isReadOnly={isReadOnly}
                    onChange={(monitors) => set(index, { ...rule, allowance: { kind: 'only', monitors } }, 'allowance')}
                  />
                )}
              </td>
              <td>
                <TextField
                  label={numbered(text.source)}
                  value={rule.source}
                  onChange={(source) => set(index, { ...rule, source }, 'source')}
                  {...at(index, 'source')}
                />
                <div className="setup-pair">
                  <TextField
                    label={numbered(text.sourceDated)}
                    value={rule.sourceDated}
                    onChange={(sourceDated) => set(index, { ...rule, sourceDated }, 'sourceDated')}
                    placeholder={text.sourceDated}
                    {...at(index, 'sourceDated')}
                  />
                  <TextField
                    label={numbered(text.remark)}
                    value={rule.remark}
                    onChange={(remark) => set(index, { ...rule, remark }, 'remark')}
                    placeholder={text.remark}
                    {...at(index, 'remark')}
                  />
                </div>
              </td>
              <RemoveCell
                isReadOnly={isReadOnly}
                label={text.removeRule(index + 1, name)}
                word={text.remove}
                onRemove={() => onChange({ ...scheme, rules: rules.filter((_, other) => other !== index) }, 'rules')}
              />
            </tr>
          );
        })}
      </tbody>
    </table>
  );
}
