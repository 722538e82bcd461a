// Writes the four bytes of the inspection monitors from ticks, for a reading taken by hand. The other way round: readiness-monitors.ts.
import {
  continuousMonitors,
  type MonitorName,
  type MonitorReading,
  monitorsByCompression,
  monitorsBySpark,
} from './readiness-monitors.ts';
import type { MonitorBytes } from './scan.ts';
import { isByte } from './trouble-code.ts';

export type MonitorState = 'none' | 'complete' | 'incomplete';

type Ignition = MonitorReading['ignition'];

/** A reading in which nothing is fitted yet. */
export function emptyMonitorBytes(ignition: Ignition): MonitorBytes {
  return [0, ignition === 'compression' ? 0x08 : 0, 0, 0];
}

/** The monitors that a vehicle of this ignition can have, the continuous ones first. */
export function possibleMonitors(ignition: Ignition): readonly MonitorName[] {
  const others = ignition === 'spark' ? monitorsBySpark : monitorsByCompression;
  return [...continuousMonitors, ...others.filter((name) => name !== null)];
}

/** `byte` with the bits of `mask` on or off. */
function withBits(byte: number, mask: number, isOn: boolean): number {
  return isOn ? byte | mask : byte & ~mask & 0xff;
}

/**
 * The bytes with one monitor set: bits 0 to 2 and 4 to 6 of byte B for the continuous ones, the same bit of C (fitted) and D (incomplete)
 * for the others. SAE J1979 / ISO 15031-5. A monitor that this ignition does not have leaves them as they are.
 */
export function withMonitor(bytes: MonitorBytes, name: MonitorName, state: MonitorState): MonitorBytes {
  const [a, b, c, d] = bytes;
  const isFitted = state !== 'none';
  const isOpen = state === 'incomplete';
  const running = (continuousMonitors as readonly MonitorName[]).indexOf(name);
  if (running >= 0) return [a, withBits(withBits(b, 1 << running, isFitted), 1 << (running + 4), isOpen), c, d];
  const others = (b & 0x08) === 0 ? monitorsBySpark : monitorsByCompression;
  const bit = others.indexOf(name);
  return bit < 0 ? bytes : [a, b, withBits(c, 1 << bit, isFitted), withBits(d, 1 << bit, isOpen)];
}

/** The bytes for the other ignition: the monitors that mean something else there are taken out. */
export function withIgnition(bytes: MonitorBytes, ignition: Ignition): MonitorBytes {
  return [bytes[0], withBits(bytes[1], 0x08, ignition === 'compression'), 0, 0];
}

export function withLamp(bytes: MonitorBytes, isOn: boolean): MonitorBytes {
  return [withBits(bytes[0], 0x80, isOn), bytes[1], bytes[2], bytes[3]];
}

/** `count` is 0 to 127. */
export function withCodeCount(bytes: MonitorBytes, count: number): MonitorBytes {
  return [(bytes[0] & 0x80) | (count & 0x7f), bytes[1], bytes[2], bytes[3]];
}

/** Four bytes as a person writes them, with or without the 41 01 of the reply before them; null when they are none. */
export function monitorBytesFrom(bytes: readonly number[]): MonitorBytes | null {
  const own = bytes.length === 6 && bytes[0] === 0x41 && bytes[1] === 0x01 ? bytes.slice(2) : bytes;
  const [a, b, c, d] = own;
  if (a === undefined || b === undefined || c === undefined || d === undefined) return null;
  return own.length === 4 && own.every(isByte) ? [a, b, c, d] : null;
}
