// What every field has around it: its label above, its hint and its problem below, wired so that they are read with it.
import './field.css';
import { type ReactNode, useId } from 'react';
import { commonText } from '../text/common.ts';

export type FieldProps = {
  readonly label: string;
  /** What stands against the value, in a sentence. */
  readonly problem?: string | undefined;
  readonly hint?: ReactNode;
  readonly isRequired?: boolean;
  /** Takes a whole line of a form. */
  readonly isWide?: boolean;
  /** The label is read aloud and not drawn: for a field in a table whose column head says it. */
  readonly isLabelUnseen?: boolean;
  readonly isReadOnly?: boolean;
};

type Wiring = {
  readonly id: string;
  readonly 'aria-describedby': string | undefined;
  readonly 'aria-invalid': true | undefined;
  readonly 'aria-required': true | undefined;
};

export function Field({
  label,
  problem,
  hint,
  isRequired = false,
  isWide = false,
  isLabelUnseen = false,
  children,
}: FieldProps & { readonly children: (wiring: Wiring) => ReactNode }) {
  const id = useId();
  const hasHint = hint !== undefined && hint !== null && hint !== '' && hint !== false;
  const hasProblem = problem !== undefined && problem !== '';
  const describedBy = [hasProblem ? `${id}-problem` : '', hasHint ? `${id}-hint` : ''].filter((part) => part !== '');
  return (
    <div className={`field${isWide ? ' is-wide' : ''}${hasProblem ? ' has-problem' : ''}`}>
      <label htmlFor={id} className={isLabelUnseen ? 'unseen' : 'field-label'}>
        {label}
        {isRequired && (
          <span className="field-required" title={commonText.required} aria-hidden="true">
            {' *'}
          </span>
        )}
      </label>
      {children({
        id,
        'aria-describedby': describedBy.length > 0 ? describedBy.join(' ') : undefined,
        'aria-invalid': hasProblem || undefined,
        'aria-required': isRequired || undefined,
      })}
      {hasProblem && (
        <div id={`${id}-problem`} className="field-problem" role="alert">
          {problem}
        </div>
      )}
      {hasHint && (
        <div id={`${id}-hint`} className="field-hint">
          {hint}
        </div>
      )}
    </div>
  );
}
