// A calendar day: the system's own date input, and beside it shorthands typed straight into it: t, -3, +5.
import { type Ref, useEffect, useRef, useState } from 'react';
import type { Day } from '../../app/domain/shared/day.ts';
import { commonText } from '../text/common.ts';
import { readDayShorthand } from './day-shorthand.ts';
import { Field, type FieldProps } from './field.tsx';

export type DayFieldProps = FieldProps & {
  readonly value: Day | null;
  readonly onChange: (value: Day | null) => void;
  readonly onCommit?: ((value: Day | null) => void) | undefined;
  readonly today: Day;
  readonly inputRef?: Ref<HTMLInputElement>;
};

export function DayField({
  value,
  onChange,
  onCommit,
  today,
  inputRef,
  isReadOnly = false,
  hint,
  problem,
  ...field
}: DayFieldProps) {
  const input = useRef<HTMLInputElement | null>(null);
  const committed = useRef(value);
  /** What has been typed of a shorthand: '-', '-1', '-12'. Empty: the date input works by itself. */
  const [shorthand, setShorthand] = useState('');
  const [isHalfWritten, setIsHalfWritten] = useState(false);
  const meant = readDayShorthand(shorthand, today);
  useEffect(() => {
    // A date written in half has no value; only when something comes from outside is it over.
    if (value !== null) setIsHalfWritten(false);
  }, [value]);
  const commit = (day: Day | null) => {
    if (committed.current === day) return;
    committed.current = day;
    onCommit?.(day);
  };
  const take = (day: Day) => {
    setShorthand('');
    setIsHalfWritten(false);
    onChange(day);
  };
  return (
    <Field
      {...field}
      problem={isHalfWritten ? commonText.dayHalfWritten : problem}
      hint={shorthand === '' ? hint : commonText.dayShorthand(shorthand, meant)}
    >
      {(wiring) => (
        <input
          {...wiring}
          ref={(element) => {
            input.current = element;
            if (typeof inputRef === 'function') inputRef(element);
            else if (inputRef) inputRef.current = element;
          }}
          type="date"
          className="field-input"
          value={value ?? ''}
          readOnly={isReadOnly}
          min="1900-01-01"
          max="2199-12-31"
          title={commonText.dayTip}
          onFocus={() => {
            committed.current = value;
          }}
          onChange={(event) => {
            const day = event.currentTarget.value;
            onChange(day === '' ? null : day);
          }}
          onBlur={(event) => {
            setIsHalfWritten(event.currentTarget.validity.badInput);
            if (meant !== null) take(meant);
            setShorthand('');
            commit(meant ?? value);
          }}
          onKeyDown={(event) => {
            if (isReadOnly || event.ctrlKey || event.metaKey || event.altKey) return;
            const { key } = event;
            if (key === 't' || key === 'T') {
              event.preventDefault();
              take(today);
            } else if (key === '-' || key === '+') {
              event.preventDefault();
              setShorthand(key);
            } else if (shorthand !== '' && /^\d$/.test(key) && shorthand.length < 5) {
              event.preventDefault();
              setShorthand(shorthand + key);
            } else if (shorthand !== '' && key === 'Backspace') {
              event.preventDefault();
              setShorthand(shorthand.slice(0, -1));
            } else if (shorthand !== '' && key === 'Escape') {
              event.preventDefault();
              event.stopPropagation();
              setShorthand('');
            } else if (key === 'Enter') {
              if (meant !== null) take(meant);
              commit(meant ?? value);
            }
          }}
        />
      )}
    </Field>
  );
}
