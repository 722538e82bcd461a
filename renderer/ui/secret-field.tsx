// A PIN or pass phrase as it is typed: drawn as dots, offered to nobody for keeping. Holds no value of its own; the caller forgets it at once.
import type { KeyboardEventHandler, Ref } from 'react';
import { Field, type FieldProps } from './field.tsx';

export type SecretFieldProps = FieldProps & {
  readonly value: string;
  readonly onChange: (value: string) => void;
  readonly inputRef?: Ref<HTMLInputElement>;
  readonly onKeyDown?: KeyboardEventHandler<HTMLInputElement>;
  /** What is typed into it, where that is known beforehand. */
  readonly isNumeric?: boolean;
  readonly mostCharacters?: number;
};

export function SecretField({
  value,
  onChange,
  inputRef,
  onKeyDown,
  isNumeric = false,
  mostCharacters,
  isReadOnly = false,
  ...field
}: SecretFieldProps) {
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
          inputMode={isNumeric ? 'numeric' : 'text'}
          autoComplete="off"
          spellCheck={false}
          maxLength={mostCharacters}
          onChange={(event) => onChange(event.currentTarget.value)}
          onKeyDown={onKeyDown}
        />
      )}
    </Field>
  );
}
