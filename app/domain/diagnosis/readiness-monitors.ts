// The inspection monitors as the engine module reports them (service 01 PID 01). What an inspection makes of them: judge-monitors.ts.
import { isByte } from './trouble-code.ts';

export const monitorNames = [
  'misfire',
  'fuel-system',
  'components',
  'catalyst',
  'heated-catalyst',
  'evaporative-system',
  'secondary-air',
  'air-conditioning-or-particulate-filter',
  'oxygen-sensor',
  'oxygen-sensor-heater',
  'exhaust-gas-recirculation',
  'nmhc-catalyst',
  'nox-aftertreatment',
  'boost-pressure',
  'exhaust-gas-sensor',
  'particulate-filter',
] as const;
export type MonitorName = (typeof monitorNames)[number];

/** In words, in the middle of a sentence. */
export const monitorWords: Readonly<Record<MonitorName, string>> = {
  misfire: 'misfire',
  'fuel-system': 'fuel system',
  components: 'components',
  catalyst: 'catalyst',
  'heated-catalyst': 'heated catalyst',
  'evaporative-system': 'evaporative system',
  'secondary-air': 'secondary air',
  'air-conditioning-or-particulate-filter': 'A/C refrigerant or particulate filter',
  'oxygen-sensor': 'oxygen sensor',
  'oxygen-sensor-heater': 'oxygen sensor heater',
  'exhaust-gas-recirculation': 'exhaust gas recirculation',
  'nmhc-catalyst': 'NMHC catalyst',
  'nox-aftertreatment': 'NOx aftertreatment',
  'boost-pressure': 'boost pressure',
  'exhaust-gas-sensor': 'exhaust gas sensor',
  'particulate-filter': 'particulate filter',
};

export type Monitor = {
  readonly name: MonitorName;
  /** Misfire, fuel system and components are watched all the time; inspections usually count only the others. */
  readonly isContinuous: boolean;
  readonly isComplete: boolean;
};

export type MonitorReading = {
  readonly isLampCommanded: boolean;
  readonly confirmedCodeCount: number;
  readonly ignition: 'spark' | 'compression';
  /** Only those that the vehicle supports: an unsupported one is never incomplete. */
  readonly monitors: readonly Monitor[];
  readonly incomplete: readonly MonitorName[];
  /** Every supported monitor is complete. True where none is supported. */
  readonly isReady: boolean;
  readonly warnings: readonly string[];
};

export const continuousMonitors = ['misfire', 'fuel-system', 'components'] as const;

/** Bits 0 to 7 of bytes C and D; null is reserved. SAE J1979 / ISO 15031-5, as three independent public decoders agree. */
export const monitorsBySpark: readonly (MonitorName | null)[] = [
  'catalyst',
  'heated-catalyst',
  'evaporative-system',
  'secondary-air',
  'air-conditioning-or-particulate-filter',
  'oxygen-sensor',
  'oxygen-sensor-heater',
  'exhaust-gas-recirculation',
];
export const monitorsByCompression: readonly (MonitorName | null)[] = [
  'nmhc-catalyst',
  'nox-aftertreatment',
  null,
  'boost-pressure',
  null,
  'exhaust-gas-sensor',
  'particulate-filter',
  'exhaust-gas-recirculation',
];

/**
 * Reads bytes A to D of the reply `41 01 A B C D`. Null when they are not four bytes. A bit of byte D counts only where the same bit of
 * byte C says that the vehicle has the monitor. SAE J1979 / ISO 15031-5.
 */
export function readMonitors(bytes: readonly number[]): MonitorReading | null {
  const [a, b, c, d] = bytes;
  if (a === undefined || b === undefined || c === undefined || d === undefined) return null;
  if (bytes.length !== 4 || !bytes.every(isByte)) return null;
  const ignition = (b & 0x08) === 0 ? 'spark' : 'compression';
  const warnings: string[] = [];
  const monitors: Monitor[] = [];
  for (const [bit, name] of continuousMonitors.entries()) {
    if ((b >> bit) & 1) monitors.push({ name, isContinuous: true, isComplete: ((b >> (bit + 4)) & 1) === 0 });
  }
  for (const [bit, name] of (ignition === 'spark' ? monitorsBySpark : monitorsByCompression).entries()) {
    if (((c >> bit) & 1) === 0) continue;
    if (name === null) {
      warnings.push(`Bit ${bit} is reserved on compression ignition but reported as supported; it was left out.`);
    } else {
      monitors.push({ name, isContinuous: false, isComplete: ((d >> bit) & 1) === 0 });
    }
  }
  const incomplete = monitors.filter((monitor) => !monitor.isComplete).map((monitor) => monitor.name);
  return {
    isLampCommanded: (a & 0x80) !== 0,
    confirmedCodeCount: a & 0x7f,
    ignition,
    monitors,
    incomplete,
    isReady: incomplete.length === 0,
    warnings,
  };
}
