// A calendar day: the system's own date input, and beside it shorthands typed straight into it: t, -3, +5. A day written in part is
// never handed on; the input keeps it and says so. The element holds its own text, because a half-written day is no value.
import { type KeyboardEvent, type Ref, useLayoutEffect, useRef, useState } from 'react';
import type { Day } from '../../app/domain/shared/day.ts';
import { commonText } from '../text/common.ts';
import { readDayShorthand } from './day-shorthand.ts';
import { Field, type FieldProps } from './field.tsx';
import { focusBeside } from './focus-beside.ts';

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
  /** After a shorthand the day is whole: Tab leaves the field instead of going through its parts. */
  const leavesOnTab = useRef(false);
  /** What has been typed of a shorthand: '-', '-1', '-12'. Empty: the date input works by itself. */
  const [shorthand, setShorthand] = useState('');
  /** Why what is written is no day that can be handed on; empty when it is one. */
  const [trouble, setTrouble] = useState('');
  const meant = readDayShorthand(shorthand, today);

  useLayoutEffect(() => {
    const element = input.current;
    if (element === null || element.value === (value ?? '')) return;
    element.value = value ?? '';
    setTrouble('');
  }, [value]);

  const commit = (day: Day | null) => {
    if (committed.current === day) return;
    committed.current = day;
    onCommit?.(day);
  };
  const take = (day: Day) => {
    if (input.current !== null) input.current.value = day;
    setShorthand('');
    setTrouble('');
    leavesOnTab.current = true;
    onChange(day);
  };
  const onKeyDown = (event: KeyboardEvent<HTMLInputElement>) => {
    if (isReadOnly || event.ctrlKey || event.metaKey || event.altKey) return;
    const { key } = event;
    const isOurs = typeShorthand(key);
    if (isOurs) {
      event.preventDefault();
      if (key === 'Escape') event.stopPropagation();
    } else if (key === 'Enter') {
      if (meant !== null) take(meant);
      if (event.currentTarget.validity.valid) commit(meant ?? value);
    } else if (key === 'Tab' && (meant !== null || leavesOnTab.current)) {
      if (focusBeside(event.currentTarget, event.shiftKey)) event.preventDefault();
    } else if (key !== 'Shift') leavesOnTab.current = false;
  };
  /** True when the key belongs to a shorthand and the date input must not see it. */
  const typeShorthand = (key: string): boolean => {
    if (key === 't' || key === 'T') take(today);
    else if (key === '-' || key === '+') setShorthand(key);
    else if (shorthand === '') return false;
    else if (/^\d$/.test(key) && shorthand.length < 5) setShorthand(shorthand + key);
    else if (key === 'Backspace') setShorthand(shorthand.slice(0, -1));
    else if (key === 'Escape') setShorthand('');
    else return false;
    return true;
  };

  return (
    <Field
      {...field}
      problem={trouble === '' ? problem : trouble}
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
          defaultValue={value ?? ''}
          readOnly={isReadOnly}
          min="1900-01-01"
          max="2199-12-31"
          title={commonText.dayTip}
          onFocus={() => {
            committed.current = value;
          }}
          onChange={(event) => {
            const { value: day, validity } = event.currentTarget;
            // While the year is being typed, '0020' is still on its way to '2026'.
            if (validity.valid) onChange(day === '' ? null : day);
          }}
          onBlur={(event) => {
            leavesOnTab.current = false;
            if (meant !== null) {
              take(meant);
              commit(meant);
              return;
            }
            setShorthand('');
            const { valid, badInput } = event.currentTarget.validity;
            setTrouble(valid ? '' : badInput ? commonText.dayHalfWritten : commonText.dayOutOfRange);
            if (valid) commit(value);
          }}
          onKeyDown={onKeyDown}
        />
      )}
    </Field>
  );
}
