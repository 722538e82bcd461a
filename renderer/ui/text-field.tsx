// One line of text, or several. Holds no value of its own: what is typed is the caller's at once.
import { type Ref, useId, useRef } from 'react';
import { Field, type FieldProps } from './field.tsx';

type TextProps = FieldProps & {
  readonly value: string;
  readonly onChange: (value: string) => void;
  /** When the person leaves the field after a change, or presses Enter in a single line. */
  readonly onCommit?: ((value: string) => void) | undefined;
};

export type TextFieldProps = TextProps & {
  /** Values offered while typing; anything else may be typed too. */
  readonly list?: readonly string[] | undefined;
  /** For VINs, part numbers and the like: slashed zero, no spelling check. */
  readonly code?: boolean;
  readonly inputRef?: Ref<HTMLInputElement>;
  readonly placeholder?: string;
};

export function TextField({
  value,
  onChange,
  onCommit,
  list,
  code = false,
  inputRef,
  placeholder,
  isReadOnly = false,
  ...field
}: TextFieldProps) {
  const listId = useId();
  const committed = useRef(value);
  const commit = () => {
    if (committed.current === value) return;
    committed.current = value;
    onCommit?.(value);
  };
  return (
    <Field {...field}>
      {(wiring) => (
        <>
          <input
            {...wiring}
            ref={inputRef}
            type="text"
            className={`field-input${code ? ' is-code' : ''}`}
            value={value}
            readOnly={isReadOnly}
            autoComplete="off"
            spellCheck={code ? false : undefined}
            autoCapitalize={code ? 'characters' : undefined}
            placeholder={placeholder}
            list={list === undefined ? undefined : listId}
            onFocus={() => {
              committed.current = value;
            }}
            onChange={(event) => onChange(event.currentTarget.value)}
            onBlur={commit}
            onKeyDown={(event) => {
              if (event.key === 'Enter') commit();
            }}
          />
          {list !== undefined && (
            <datalist id={listId}>
              {list.map((offered) => (
                <option key={offered} value={offered} />
              ))}
            </datalist>
          )}
        </>
      )}
    </Field>
  );
}

export type ParagraphFieldProps = TextProps & {
  readonly rows?: number;
  readonly inputRef?: Ref<HTMLTextAreaElement>;
};

export function ParagraphField({
  value,
  onChange,
  onCommit,
  rows = 3,
  inputRef,
  isReadOnly = false,
  ...field
}: ParagraphFieldProps) {
  const committed = useRef(value);
  return (
    <Field {...field}>
      {(wiring) => (
        <textarea
          {...wiring}
          ref={inputRef}
          className="field-input"
          rows={rows}
          value={value}
          readOnly={isReadOnly}
          onFocus={() => {
            committed.current = value;
          }}
          onChange={(event) => onChange(event.currentTarget.value)}
          onBlur={() => {
            if (committed.current === value) return;
            committed.current = value;
            onCommit?.(value);
          }}
        />
      )}
    </Field>
  );
}
