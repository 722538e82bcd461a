// The ground of the number and money fields: keeps what was typed, also when it cannot be read, and says so. An unreadable text is
// never handed on as a value; it makes the field invalid, so that a Form does not save past it.
import { type Ref, useEffect, useRef, useState } from 'react';
import { Field, type FieldProps } from './field.tsx';

export type TypedFieldProps<Value> = FieldProps & {
  readonly value: Value | null;
  readonly onChange: (value: Value | null) => void;
  readonly onCommit?: ((value: Value | null) => void) | undefined;
  readonly inputRef?: Ref<HTMLInputElement>;
  /** What an empty field stands for. */
  readonly placeholder?: string | undefined;
};

type Reading<Value> = { readonly ok: true; readonly value: Value | null } | { readonly ok: false };

export function TypedField<Value>({
  value,
  onChange,
  onCommit,
  inputRef,
  placeholder,
  read,
  show,
  whenUnreadable,
  unit,
  inputMode,
  isReadOnly = false,
  problem,
  ...field
}: TypedFieldProps<Value> & {
  readonly read: (text: string) => Reading<Value>;
  readonly show: (value: Value) => string;
  readonly whenUnreadable: string;
  readonly unit?: string | undefined;
  readonly inputMode: 'numeric' | 'decimal';
}) {
  const shown = value === null ? '' : show(value);
  const [text, setText] = useState(shown);
  const [isBeingTyped, setIsBeingTyped] = useState(false);
  const ownInput = useRef<HTMLInputElement | null>(null);
  const committed = useRef(value);
  const reading: Reading<Value> = text.trim() === '' ? { ok: true, value: null } : read(text);
  // A value that came from outside replaces the text, unless the person is at it or left something unreadable there.
  const visible = isBeingTyped || !reading.ok ? text : shown;
  const isUnreadable = !reading.ok;
  useEffect(() => {
    ownInput.current?.setCustomValidity(isUnreadable ? whenUnreadable : '');
  }, [isUnreadable, whenUnreadable]);
  const commit = () => {
    if (!reading.ok || Object.is(committed.current, reading.value)) return;
    committed.current = reading.value;
    onCommit?.(reading.value);
  };
  const spokenProblem = isUnreadable && !isBeingTyped ? whenUnreadable : problem;
  return (
    <Field {...field} problem={spokenProblem}>
      {(wiring) => (
        <div className="field-with-unit">
          <input
            {...wiring}
            ref={(element) => {
              ownInput.current = element;
              if (typeof inputRef === 'function') inputRef(element);
              else if (inputRef) inputRef.current = element;
            }}
            type="text"
            inputMode={inputMode}
            className="field-input is-number"
            value={visible}
            readOnly={isReadOnly}
            autoComplete="off"
            placeholder={placeholder}
            spellCheck={false}
            onFocus={(event) => {
              committed.current = value;
              setText(visible);
              event.currentTarget.select();
            }}
            onChange={(event) => {
              const typed = event.currentTarget.value;
              setIsBeingTyped(true);
              setText(typed);
              const next: Reading<Value> = typed.trim() === '' ? { ok: true, value: null } : read(typed);
              // What cannot be read counts as not typed: half of it must not be kept in its place.
              onChange(next.ok ? next.value : committed.current);
            }}
            onBlur={() => {
              setIsBeingTyped(false);
              commit();
            }}
            onKeyDown={(event) => {
              if (event.key !== 'Enter') return;
              setIsBeingTyped(false);
              commit();
            }}
          />
          {unit !== undefined && <span className="field-unit">{unit}</span>}
        </div>
      )}
    </Field>
  );
}
