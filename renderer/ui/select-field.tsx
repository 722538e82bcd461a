// One of a few. The system's own list.
import type { Ref } from 'react';
import { Field, type FieldProps } from './field.tsx';

export type SelectFieldProps<Value extends string> = FieldProps & {
  readonly value: Value;
  readonly onChange: (value: Value) => void;
  readonly options: readonly { readonly value: Value; readonly label: string }[];
  readonly inputRef?: Ref<HTMLSelectElement>;
};

export function SelectField<Value extends string>({
  value,
  onChange,
  options,
  inputRef,
  isReadOnly = false,
  ...field
}: SelectFieldProps<Value>) {
  return (
    <Field {...field}>
      {(wiring) => (
        <select
          {...wiring}
          ref={inputRef}
          className="field-input"
          value={value}
          aria-disabled={isReadOnly || undefined}
          onChange={(event) => {
            const chosen = options.find((option) => option.value === event.currentTarget.value);
            if (chosen !== undefined && !isReadOnly) onChange(chosen.value);
          }}
        >
          {options.map((option) => (
            <option key={option.value} value={option.value}>
              {option.label}
            </option>
          ))}
        </select>
      )}
    </Field>
  );
}
