// The ground of the fields for numbers, money, days and moments: keeps what was typed, also when it cannot be read, and says so. An unreadable text is
// never handed on as a value; it makes the field invalid, so that a Form does not save past it.
import { type KeyboardEvent, type ReactNode, type Ref, useEffect, useRef, useState } from 'react';
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
  whileTyped,
  step,
  unit,
  inputMode,
  looks = 'is-number',
  tip,
  isReadOnly = false,
  problem,
  ...field
}: TypedFieldProps<Value> & {
  readonly read: (text: string) => Reading<Value>;
  readonly show: (value: Value) => string;
  readonly whenUnreadable: string;
  /** What is said of a text while it is being typed; empty for nothing. */
  readonly whileTyped?: (text: string) => string;
  /** The value that the arrow up (1) or down (-1) goes to. */
  readonly step?: (value: Value | null, by: 1 | -1) => Value | null;
  /** Shown behind the field: a word, or something that may give it a value. */
  readonly unit?: string | undefined | ((take: (value: Value) => void) => ReactNode);
  readonly inputMode: 'numeric' | 'decimal' | 'text';
  readonly looks?: 'is-number' | 'is-day';
  readonly tip?: string;
}) {
  const shown = value === null ? '' : show(value);
  const [text, setText] = useState(shown);
  const [isBeingTyped, setIsBeingTyped] = useState(false);
  const ownInput = useRef<HTMLInputElement | null>(null);
  const committed = useRef(value);
  const isEntered = useRef(false);
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
  const take = (next: Value | null) => {
    setText(next === null ? '' : show(next));
    setIsBeingTyped(false);
    onChange(next);
  };
  const onKeyDown = (event: KeyboardEvent<HTMLInputElement>) => {
    const by = event.key === 'ArrowUp' ? 1 : event.key === 'ArrowDown' ? -1 : null;
    if (event.key === 'Enter') {
      setIsBeingTyped(false);
      commit();
    } else if (by !== null && step !== undefined && !isReadOnly) {
      event.preventDefault();
      if (!event.altKey) take(step(reading.ok ? reading.value : value, by));
      else event.currentTarget.parentElement?.querySelector<HTMLButtonElement>('button[data-opens]')?.click();
    }
  };
  const said = isBeingTyped ? (whileTyped?.(text) ?? '') : '';
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
            className={`field-input ${looks}`}
            title={tip}
            value={visible}
            readOnly={isReadOnly}
            autoComplete="off"
            placeholder={placeholder}
            spellCheck={false}
            onFocus={(event) => {
              committed.current = value;
              setText(visible);
              event.currentTarget.select();
              isEntered.current = true;
            }}
            onMouseUp={(event) => {
              // The press that enters the field chooses all of it, as the Tab key does; the next one sets the cursor.
              if (isEntered.current) event.preventDefault();
              isEntered.current = false;
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
            onKeyDown={onKeyDown}
          />
          {said !== '' && (
            // It lies over what is below: a form that moved when the field is left would slip away from under a press.
            <span role="status" className="field-said">
              {said}
            </span>
          )}
          {typeof unit === 'function' ? unit(take) : unit !== undefined && <span className="field-unit">{unit}</span>}
        </div>
      )}
    </Field>
  );
}
