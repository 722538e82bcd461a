// Fields of Setup that hold parts of a whole: kept in parts per million, typed in per cent.
import { setupMoneyText } from '../../text/setup-money.ts';
import { NumberField, type NumberFieldProps } from '../../ui/number-field.tsx';

/** Parts per million in one per cent. */
const ppmInPercent = 10_000;

type PercentFieldProps = Omit<NumberFieldProps, 'value' | 'onChange' | 'unit' | 'decimals'> & {
  readonly ppm: number | null;
  readonly onChange: (ppm: number | null) => void;
};

export function PercentField({ ppm, onChange, maximum = 100, ...field }: PercentFieldProps) {
  return (
    <NumberField
      {...field}
      value={ppm === null ? null : ppm / ppmInPercent}
      onChange={(percent) => onChange(percent === null ? null : Math.round(percent * ppmInPercent))}
      unit={setupMoneyText.percent}
      decimals={4}
      maximum={maximum}
    />
  );
}
