// What a scan's monitor reading means for the vehicle at hand: its fuel from what is known of it, and the judgement by one scheme.
import type { Identity } from '../vehicle/identity.ts';
import type { InspectionFuel, InspectionScheme } from './inspection-schemes.ts';
import { judgeMonitors, type MonitorJudgement } from './judge-monitors.ts';
import { type MonitorReading, readMonitors } from './readiness-monitors.ts';
import type { Scan } from './scan.ts';

const milesInKilometre = 0.621371;

/** The fuel that rules ask for. The reading tells spark from compression ignition; without one, 'petrol' is only a guess and null. */
export function inspectionFuelOf(
  { drive }: Pick<Identity, 'drive'>,
  reading: Pick<MonitorReading, 'ignition'> | null,
): InspectionFuel | null {
  if (drive === 'electric') return 'electric';
  if (reading === null) return null;
  if (reading.ignition === 'compression') return 'diesel';
  return drive === 'hybrid' ? 'hybrid' : 'petrol';
}

export type ScanJudgement = { readonly reading: MonitorReading; readonly judgement: MonitorJudgement | null };

type MonitorFacts = Pick<Scan, 'monitorBytes' | 'modules' | 'warmUpsSinceClear' | 'distanceSinceClear'>;

/**
 * The reading, and what `scheme` makes of it; null without a reading. The judgement is null without a scheme or a model year. A
 * battery-electric vehicle has no monitors: what was entered for it is read all the same, and judged not applicable.
 */
export function judgeScan(
  scan: MonitorFacts,
  identity: Pick<Identity, 'drive' | 'modelYear'>,
  scheme: InspectionScheme | null,
): ScanJudgement | null {
  const reading = scan.monitorBytes === null ? null : readMonitors(scan.monitorBytes);
  const fuel = inspectionFuelOf(identity, reading);
  if (reading === null || fuel === null) return null;
  if (scheme === null || identity.modelYear === null) return { reading, judgement: null };
  const permanentCodeCount = scan.modules
    .flatMap((module) => module.codes)
    .filter((code) => code.status === 'permanent').length;
  const distance = scan.distanceSinceClear;
  const judgement = judgeMonitors(reading, {
    scheme,
    modelYear: identity.modelYear,
    fuel,
    permanentCodeCount,
    warmUpsSinceClear: scan.warmUpsSinceClear,
    milesSinceClear:
      distance === null ? null : distance.unit === 'mi' ? distance.reading : distance.reading * milesInKilometre,
  });
  return { reading, judgement };
}
