// Yes or no, with its words beside the box.
import { type Ref, useId } from 'react';
import type { FieldProps } from './field.tsx';

export type CheckFieldProps = FieldProps & {
  readonly value: boolean;
  readonly onChange: (value: boolean) => void;
  readonly inputRef?: Ref<HTMLInputElement>;
};

export function CheckField({
  label,
  value,
  onChange,
  problem,
  hint,
  isWide = false,
  isLabelUnseen = false,
  isReadOnly = false,
  inputRef,
}: CheckFieldProps) {
  const id = useId();
  const hasProblem = problem !== undefined && problem !== '';
  return (
    <div className={`field${isWide ? ' is-wide' : ''}${hasProblem ? ' has-problem' : ''}`}>
      <div className="check-field">
        <input
          id={id}
          ref={inputRef}
          type="checkbox"
          checked={value}
          aria-disabled={isReadOnly || undefined}
          aria-invalid={hasProblem || undefined}
          aria-describedby={hasProblem ? `${id}-problem` : hint ? `${id}-hint` : undefined}
          onChange={(event) => {
            if (!isReadOnly) onChange(event.currentTarget.checked);
          }}
        />
        <label htmlFor={id} className={isLabelUnseen ? 'unseen' : undefined}>
          {label}
        </label>
      </div>
      {hint && (
        <div id={`${id}-hint`} className="field-hint">
          {hint}
        </div>
      )}
      {hasProblem && (
        <div id={`${id}-problem`} className="field-problem" role="alert">
          {problem}
        </div>
      )}
    </div>
  );
}
