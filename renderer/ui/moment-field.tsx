// A day and a time of day as this computer's clock shows them; handed on as an instant. Half-written it is no value, and says so.
import { useLayoutEffect, useRef, useState } from 'react';
import { commonText } from '../text/common.ts';
import { Field, type FieldProps } from './field.tsx';

export type MomentFieldProps = FieldProps & {
  /** ISO instant. */
  readonly value: string | null;
  readonly onChange: (value: string | null) => void;
};

function localText(instant: string | null): string {
  if (instant === null) return '';
  const date = new Date(instant);
  const two = (number: number) => String(number).padStart(2, '0');
  return `${date.getFullYear()}-${two(date.getMonth() + 1)}-${two(date.getDate())}T${two(date.getHours())}:${two(date.getMinutes())}`;
}

export function MomentField({ value, onChange, problem, isReadOnly = false, ...field }: MomentFieldProps) {
  const input = useRef<HTMLInputElement | null>(null);
  const [isHalf, setIsHalf] = useState(false);
  useLayoutEffect(() => {
    const element = input.current;
    if (element !== null && document.activeElement !== element) element.value = localText(value);
  }, [value]);
  return (
    <Field {...field} problem={isHalf ? commonText.dayHalfWritten : problem}>
      {(wiring) => (
        <input
          {...wiring}
          ref={input}
          type="datetime-local"
          className="field-input"
          defaultValue={localText(value)}
          readOnly={isReadOnly}
          min="1900-01-01T00:00"
          max="2199-12-31T23:59"
          onChange={(event) => {
            const { value: text, validity } = event.currentTarget;
            if (validity.valid) onChange(text === '' ? null : new Date(text).toISOString());
          }}
          onBlur={(event) => setIsHalf(!event.currentTarget.validity.valid)}
        />
      )}
    </Field>
  );
}
