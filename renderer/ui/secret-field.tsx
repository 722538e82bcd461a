// A pass phrase as it is typed: drawn as dots, offered to nobody for keeping. Holds no value of its own; the caller forgets it at once.
import type { Ref } from 'react';
import { Field, type FieldProps } from './field.tsx';

export type SecretFieldProps = FieldProps & {
  readonly value: string;
  readonly onChange: (value: string) => void;
  readonly inputRef?: Ref<HTMLInputElement>;
};

export function SecretField({ value, onChange, inputRef, isReadOnly = false, ...field }: SecretFieldProps) {
  return (
    <Field {...field}>
      {(wiring) => (
        <input
          {...wiring}
          ref={inputRef}
          type="password"
          className="field-input"
          value={value}
          readOnly={isReadOnly}
          autoComplete="off"
          spellCheck={false}
          maxLength={400}
          onChange={(event) => onChange(event.currentTarget.value)}
        />
      )}
    </Field>
  );
}
