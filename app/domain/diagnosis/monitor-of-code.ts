// Which inspection monitor tests what a trouble code speaks of, and whether that test has run. Known only for the common standard numbers;
// for the others every monitor has to be complete before "it has run" is said.
import type { MonitorName, MonitorReading } from './readiness-monitors.ts';

type Range = readonly [from: string, to: string, monitor: MonitorName];

/** Standard powertrain numbers by what they are about (SAE J2012, from memory). The first that fits counts. */
const bySpark: readonly Range[] = [
  ['P0030', 'P0064', 'oxygen-sensor-heater'],
  ['P0135', 'P0135', 'oxygen-sensor-heater'],
  ['P0141', 'P0141', 'oxygen-sensor-heater'],
  ['P0147', 'P0147', 'oxygen-sensor-heater'],
  ['P0155', 'P0155', 'oxygen-sensor-heater'],
  ['P0161', 'P0161', 'oxygen-sensor-heater'],
  ['P0167', 'P0167', 'oxygen-sensor-heater'],
  ['P0130', 'P0167', 'oxygen-sensor'],
  ['P0400', 'P0409', 'exhaust-gas-recirculation'],
  ['P0410', 'P0419', 'secondary-air'],
  ['P0420', 'P0424', 'catalyst'],
  ['P0430', 'P0434', 'catalyst'],
  ['P0440', 'P0459', 'evaporative-system'],
  ['P0465', 'P0469', 'evaporative-system'],
  ['P0496', 'P0499', 'evaporative-system'],
];
const byCompression: readonly Range[] = [
  ['P0234', 'P0234', 'boost-pressure'],
  ['P0299', 'P0299', 'boost-pressure'],
  ['P0400', 'P0409', 'exhaust-gas-recirculation'],
  ['P0420', 'P0424', 'nmhc-catalyst'],
  ['P2002', 'P2003', 'particulate-filter'],
];

/** 'not-known': the monitors say nothing about it, or nobody read them. */
export type TestState = 'run' | 'outstanding' | 'not-known';

export type TestOfCode = { readonly state: TestState; readonly monitor: MonitorName | null };

/** The monitor that tests it, where it is known here; null otherwise. Failure types make no difference. */
export function monitorOfCode(code: string, ignition: MonitorReading['ignition']): MonitorName | null {
  const number = code.slice(0, 5);
  const ranges = ignition === 'spark' ? bySpark : byCompression;
  return ranges.find(([from, to]) => from <= number && number <= to)?.[2] ?? null;
}

/**
 * Whether the test behind a code has run since the last clear, as far as the inspection monitors tell (SAE J1979: complete means that it
 * has). They speak of powertrain codes only. A code without a known monitor counts as tested once all monitors are complete: that is
 * careful, since the continuous ones often read complete at once (common practice, no source).
 */
export function testOfCode(code: string, monitors: MonitorReading | null): TestOfCode {
  if (monitors === null || !code.startsWith('P')) return { state: 'not-known', monitor: null };
  const name = monitorOfCode(code, monitors.ignition);
  const own = monitors.monitors.find((monitor) => monitor.name === name);
  if (own !== undefined) return { state: own.isComplete ? 'run' : 'outstanding', monitor: own.name };
  return { state: monitors.isReady ? 'run' : 'outstanding', monitor: null };
}
