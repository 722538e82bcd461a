// Resting voltage to charge against the published tables. Each check names its source.
import { describe, expect, it } from 'vitest';
import { chargeFromGravity, chargeFromRestingVolts } from '../../app/domain/diagnosis/battery-charge.ts';

const percent = (volts: number, temperatureCelsius: number | null = null) =>
  chargeFromRestingVolts(volts, { chemistry: 'flooded', temperatureCelsius })?.percent;

// The 5 % table of a public page on vehicle electrics; its 25 % rows equal a battery maker's table at 26.7 °C (80 °F).
const table: readonly (readonly [volts: number, percent: number])[] = [
  [12.66, 100],
  [12.62, 95],
  [12.58, 90],
  [12.53, 85],
  [12.49, 80],
  [12.45, 75],
  [12.41, 70],
  [12.37, 65],
  [12.32, 60],
  [12.28, 55],
  [12.24, 50],
  [12.2, 45],
  [12.17, 40],
  [12.13, 35],
  [12.1, 30],
  [12.06, 25],
  [12.03, 20],
  [11.99, 15],
  [11.96, 10],
  [11.92, 5],
  [11.89, 0],
];

describe('12 V flooded battery at rest', () => {
  it.each(table)('%f V is %i %%', (volts, expected) => {
    expect(percent(volts)).toBeCloseTo(expected, 9);
  });

  // Computed: straight line between the rows, held at both ends.
  it.each([
    [12.7, 100],
    [12.45, 75],
    [12.4, 68.75],
    [12.24, 50],
    [12.0, 16.25],
    [11.5, 0],
  ])('%f V is %f %% in between', (volts, expected) => {
    expect(percent(volts)).toBeCloseTo(expected, 6);
  });

  it('takes off 0.072 V at 50 °F, 30 °F under the table (±0.024 V for each 10 °F, the battery maker): 12.45 V is then 66 %', () => {
    const reading = chargeFromRestingVolts(12.45, { chemistry: 'flooded', temperatureCelsius: 10 });
    expect(reading?.tableVolts).toBeCloseTo(12.378, 6);
    expect(reading?.percent).toBeCloseTo(66, 6);
  });

  it('changes nothing at the temperature of the table', () => {
    expect(percent(12.45, (80 - 32) / 1.8)).toBeCloseTo(75, 6);
  });

  // The battery maker's table of freezing points.
  it.each([
    [12.65, -59],
    [12.45, -48],
    [12.24, -37],
    [12.06, -27],
    [11.89, -23],
  ])('at %f V it freezes at %i °C', (volts, celsius) => {
    expect(chargeFromRestingVolts(volts, { chemistry: 'flooded' })?.freezesAtCelsius).toBeCloseTo(celsius, 9);
  });

  // The battery maker's specific gravities at the 25 % steps.
  it.each([
    [1.265, 100],
    [1.225, 75],
    [1.19, 50],
    [1.155, 25],
    [1.12, 0],
  ])('a specific gravity of %f is %i %%', (gravity, expected) => {
    expect(chargeFromGravity(gravity)).toBeCloseTo(expected, 9);
  });
});
