// Ticks written as the four bytes of SAE J1979 PID 01: what is written reads back, and changes nothing beside it.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  emptyMonitorBytes,
  monitorBytesFrom,
  possibleMonitors,
  withCodeCount,
  withIgnition,
  withLamp,
  withMonitor,
} from '../../../app/domain/diagnosis/monitor-bytes.ts';
import { type MonitorReading, readMonitors } from '../../../app/domain/diagnosis/readiness-monitors.ts';
import type { MonitorBytes } from '../../../app/domain/diagnosis/scan.ts';

const read = (bytes: MonitorBytes): MonitorReading => {
  const reading = readMonitors(bytes);
  if (reading === null) throw new Error('Not four bytes.');
  return reading;
};
const byte = fc.integer({ min: 0, max: 255 });
const anyBytes = fc.tuple(byte, byte, byte, byte);

describe('ticks', () => {
  it('write a widely reprinted reading: lamp on, one code, evaporative system to run', () => {
    let bytes = withCodeCount(withLamp(emptyMonitorBytes('spark'), true), 1);
    for (const name of [
      'misfire',
      'fuel-system',
      'components',
      'catalyst',
      'oxygen-sensor',
      'oxygen-sensor-heater',
    ] as const)
      bytes = withMonitor(bytes, name, 'complete');
    expect(withMonitor(bytes, 'evaporative-system', 'incomplete')).toEqual([0x81, 0x07, 0x65, 0x04]);
  });

  it('read back as they were set, and leave the other monitors alone', () => {
    fc.assert(
      fc.property(anyBytes, fc.nat(), fc.constantFrom('none', 'complete', 'incomplete'), (bytes, at, state) => {
        const before = read(bytes);
        const names = possibleMonitors(before.ignition);
        const name = names[at % names.length] ?? 'misfire';
        const after = read(withMonitor(bytes, name, state));
        const found = after.monitors.find((one) => one.name === name);
        expect(found === undefined ? 'none' : found.isComplete ? 'complete' : 'incomplete').toBe(state);
        const others = ({ monitors }: MonitorReading) => monitors.filter((one) => one.name !== name);
        expect(others(after)).toEqual(others(before));
        expect([after.isLampCommanded, after.confirmedCodeCount, after.ignition]).toEqual([
          before.isLampCommanded,
          before.confirmedCodeCount,
          before.ignition,
        ]);
      }),
    );
  });

  it('take out what means something else when the ignition is another', () => {
    const diesel = read(withIgnition([0x01, 0x07, 0x65, 0x04], 'compression'));
    expect(diesel.ignition).toBe('compression');
    expect(diesel.monitors.map((one) => one.name)).toEqual(['misfire', 'fuel-system', 'components']);
    expect(diesel.confirmedCodeCount).toBe(1);
  });

  it('keep the lamp apart from the count of codes', () => {
    expect(withCodeCount(withLamp([0, 0, 0, 0], true), 127)[0]).toBe(0xff);
    expect(withLamp([0xff, 0, 0, 0], false)[0]).toBe(0x7f);
  });
});

describe('four bytes', () => {
  it('may be written with the head of the reply before them', () => {
    expect(monitorBytesFrom([0x41, 0x01, 0x00, 0x07, 0x65, 0x04])).toEqual([0x00, 0x07, 0x65, 0x04]);
    expect(monitorBytesFrom([0x00, 0x07, 0x65, 0x04])).toEqual([0x00, 0x07, 0x65, 0x04]);
    expect(monitorBytesFrom([0x00, 0x07, 0x65])).toBeNull();
    expect(monitorBytesFrom([0x42, 0x01, 0x00, 0x07, 0x65, 0x04])).toBeNull();
  });
});
