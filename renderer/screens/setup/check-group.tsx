// Several boxes to tick under one name, in one row that wraps.
import { CheckField } from '../../ui/check-field.tsx';
import { toggled } from './rule-pack-draft.ts';

export type CheckGroupProps<Value extends string> = {
  readonly label: string;
  readonly all: readonly Value[];
  readonly names: Readonly<Record<Value, string>>;
  readonly chosen: readonly Value[];
  readonly isReadOnly: boolean;
  readonly problem: string | undefined;
  readonly onChange: (chosen: Value[]) => void;
};

export function CheckGroup<Value extends string>(props: CheckGroupProps<Value>) {
  const { label, all, names, chosen, isReadOnly, problem, onChange } = props;
  return (
    <fieldset className="check-group">
      <legend className="field-label">{label}</legend>
      <div>
        {all.map((value) => (
          <CheckField
            key={value}
            label={names[value]}
            value={chosen.includes(value)}
            onChange={(isIn) => onChange(toggled(all, chosen, value, isIn))}
            isReadOnly={isReadOnly}
          />
        ))}
      </div>
      {problem !== undefined && (
        <div className="field-problem" role="alert">
          {problem}
        </div>
      )}
    </fieldset>
  );
}
