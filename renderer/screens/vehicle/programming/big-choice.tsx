// One of a few as large buttons in a row: radio buttons that a gloved hand can hit. Arrow keys go through them as the system does it.
import { useId } from 'react';

export type BigChoiceProps<Value extends string> = {
  readonly label: string;
  readonly value: Value;
  readonly onChange: (value: Value) => void;
  readonly problem?: string | undefined;
  readonly options: readonly { readonly value: Value; readonly label: string; readonly detail?: string }[];
};

export function BigChoice<Value extends string>({ label, value, onChange, problem, options }: BigChoiceProps<Value>) {
  const id = useId();
  return (
    <fieldset className="big-choice" aria-describedby={problem === undefined ? undefined : `${id}-problem`}>
      <legend className="field-label">{label}</legend>
      <div className="big-choice-options">
        {options.map((option) => (
          <label key={option.value} className={option.value === value ? 'is-chosen' : undefined}>
            <input
              type="radio"
              name={id}
              value={option.value}
              checked={option.value === value}
              aria-invalid={problem === undefined ? undefined : true}
              aria-describedby={option.detail === undefined ? undefined : `${id}-${option.value}`}
              onChange={() => onChange(option.value)}
            />
            <span>
              <b>{option.label}</b>
              {option.detail !== undefined && (
                <span id={`${id}-${option.value}`} className="big-choice-detail">
                  {option.detail}
                </span>
              )}
            </span>
          </label>
        ))}
      </div>
      {problem !== undefined && (
        <div id={`${id}-problem`} className="field-problem" role="alert">
          {problem}
        </div>
      )}
    </fieldset>
  );
}
