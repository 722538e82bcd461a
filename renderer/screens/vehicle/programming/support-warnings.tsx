// Says beside the volts of an attempt when the supply was outside the limits that the shop keeps for this make. Warns; forbids nothing.
import { warnAboutSupportOf } from '../../../../app/domain/diagnosis/support-voltage.ts';
import { useVehicle } from '../page/vehicle-context.ts';

type Volts = Parameters<typeof warnAboutSupportOf>[2];

export function SupportWarnings({ before, lowest, after }: Volts) {
  const { desk, vehicle } = useVehicle();
  const warnings = warnAboutSupportOf(vehicle.identity.make, desk.shop?.supportRanges ?? [], { before, lowest, after });
  return (
    <div role="status" className="support-warnings">
      {warnings.map((warning) => (
        <p key={warning}>{warning}</p>
      ))}
    </div>
  );
}
