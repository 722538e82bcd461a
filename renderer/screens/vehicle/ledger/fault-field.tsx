// The fault that something is for, out of the faults of the vehicle.
import { SelectField } from '../../../ui/select-field.tsx';
import { useVehicle } from '../page/vehicle-context.ts';
import { faultChoices, orNull } from './choices.ts';

export type FaultFieldProps = {
  readonly label: string;
  readonly value: string | null;
  readonly onChange: (value: string | null) => void;
  readonly problem: string | undefined;
};

export function FaultField({ label, value, onChange, problem }: FaultFieldProps) {
  const { vehicle } = useVehicle();
  return (
    <SelectField
      label={label}
      value={value ?? ''}
      onChange={(chosen) => onChange(orNull(chosen))}
      problem={problem}
      options={faultChoices(vehicle)}
    />
  );
}
