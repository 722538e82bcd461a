// An amount of money in whole cents, typed as people write amounts.
import { readCents, showCents } from '../../app/domain/shared/cents.ts';
import { commonText } from '../text/common.ts';
import { TypedField, type TypedFieldProps } from './typed-field.tsx';

export type MoneyFieldProps = Omit<TypedFieldProps<number>, 'value'> & {
  readonly valueCents: number | null;
  /** ISO 4217 code, shown behind the field. */
  readonly currency: string;
  readonly mayBeNegative?: boolean;
};

export function MoneyField({ valueCents, currency, mayBeNegative = false, ...field }: MoneyFieldProps) {
  return (
    <TypedField
      {...field}
      value={valueCents}
      inputMode="decimal"
      unit={currency}
      read={(text) => {
        const cents = readCents(text);
        return cents === null || (cents < 0 && !mayBeNegative) ? { ok: false } : { ok: true, value: cents };
      }}
      show={showCents}
      whenUnreadable={commonText.notAnAmount}
    />
  );
}
