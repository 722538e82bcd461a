// A field for a secret: covered, never remembered by the page, with its problem under it.
import type { Ref } from 'react';
import { Field } from '../../ui/field.tsx';

export function SecretField({
  label,
  value,
  onChange,
  problem,
  hint,
  inputRef,
}: {
  readonly label: string;
  readonly value: string;
  readonly onChange: (value: string) => void;
  readonly problem?: string | undefined;
  readonly hint?: string;
  readonly inputRef?: Ref<HTMLInputElement>;
}) {
  return (
    <Field label={label} problem={problem} hint={hint}>
      {(wiring) => (
        <input
          {...wiring}
          ref={inputRef}
          type="password"
          className="field-input"
          value={value}
          autoComplete="off"
          spellCheck={false}
          onChange={(event) => onChange(event.currentTarget.value)}
        />
      )}
    </Field>
  );
}
