// A number, empty or within limits. Whole unless decimals are asked for.
import { commonText } from '../text/common.ts';
import { readNumber, showNumber } from './read-number.ts';
import { TypedField, type TypedFieldProps } from './typed-field.tsx';

export type NumberFieldProps = TypedFieldProps<number> & {
  readonly minimum?: number;
  readonly maximum?: number;
  /** How many decimals may be typed. */
  readonly decimals?: number;
  /** Shown behind the field: 'km', 'min'. */
  readonly unit?: string | undefined;
};

export function NumberField({ minimum = 0, maximum = 999_999_999, decimals = 0, ...field }: NumberFieldProps) {
  return (
    <TypedField
      {...field}
      inputMode={decimals === 0 ? 'numeric' : 'decimal'}
      read={(text) => {
        const number = readNumber(text, { decimals, minimum, maximum });
        return number === null ? { ok: false } : { ok: true, value: number };
      }}
      show={showNumber}
      whenUnreadable={commonText.notANumber(showNumber(minimum), showNumber(maximum), decimals)}
    />
  );
}
