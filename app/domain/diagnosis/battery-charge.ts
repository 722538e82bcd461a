// State of charge of a 12 V battery from its resting voltage. Only for a battery that has rested six hours or more with its loads off.
import { z } from 'zod';

export const batteryChemistrySchema = z.enum(['flooded', 'efb', 'agm', 'lithium']);
export type BatteryChemistry = z.infer<typeof batteryChemistrySchema>;

export type BatteryCharge = {
  /** 0 to 100; null where it cannot be told from the voltage. */
  readonly percent: number | null;
  /** The volts that the table was read at, after the correction for temperature. */
  readonly tableVolts: number;
  /** Celsius at which a flooded battery in this state freezes; null for the other chemistries. */
  readonly freezesAtCelsius: number | null;
  readonly cautions: readonly string[];
};

type Point = readonly [from: number, to: number];

/** Volts and percent, 12 V flooded, rested, at 26.7 °C: 5 % table of a public page on vehicle electrics; its 25 % rows equal a battery
 * maker's table. */
const flooded: readonly Point[] = [
  [11.89, 0],
  [11.92, 5],
  [11.96, 10],
  [11.99, 15],
  [12.03, 20],
  [12.06, 25],
  [12.1, 30],
  [12.13, 35],
  [12.17, 40],
  [12.2, 45],
  [12.24, 50],
  [12.28, 55],
  [12.32, 60],
  [12.37, 65],
  [12.41, 70],
  [12.45, 75],
  [12.49, 80],
  [12.53, 85],
  [12.58, 90],
  [12.62, 95],
  [12.66, 100],
];

/** AGM reads higher than flooded; the steps are from memory, with no source read. */
const agm: readonly Point[] = [
  [11.8, 0],
  [12.0, 25],
  [12.3, 50],
  [12.6, 75],
  [12.85, 100],
];

/** Freezing point by resting volts, from the same battery maker's table. */
const freezing: readonly Point[] = [
  [11.89, -23],
  [12.06, -27],
  [12.24, -37],
  [12.45, -48],
  [12.65, -59],
];

/** Specific gravity and percent at 26.7 °C, the same maker's table. */
const gravity: readonly Point[] = [
  [1.12, 0],
  [1.155, 25],
  [1.19, 50],
  [1.225, 75],
  [1.265, 100],
];

const tableCelsius = (80 - 32) / 1.8;
/** 0.024 V for each 10 °F (the same maker). Others dispute a correction in volts, so it is applied only when a temperature is given. */
const voltsPerCelsius = 0.024 / (10 / 1.8);

/**
 * `volts` measured at rest; `temperatureCelsius` of the battery, null when not measured. Returns null when `volts` is not a number of a
 * 12 V battery (5 to 16). Straight line between the table's rows.
 */
export function chargeFromRestingVolts(
  volts: number,
  {
    chemistry,
    temperatureCelsius = null,
  }: { readonly chemistry: BatteryChemistry; readonly temperatureCelsius?: number | null },
): BatteryCharge | null {
  if (!Number.isFinite(volts) || volts < 5 || volts > 16) return null;
  const correction = temperatureCelsius === null ? 0 : (temperatureCelsius - tableCelsius) * voltsPerCelsius;
  const tableVolts = volts + correction;
  if (chemistry === 'lithium') {
    const caution =
      'The voltage of a lithium battery does not tell its charge. Read it from the battery’s own monitor.';
    return { percent: null, tableVolts, freezesAtCelsius: null, cautions: [caution] };
  }
  const table = chemistry === 'flooded' ? flooded : agm;
  const full = table.at(-1)?.[0] ?? 0;
  const cautions = [
    ...(tableVolts > full + 0.25
      ? [
          'Higher than a rested battery reads: it is being charged or was just charged. Let it rest six hours with loads off.',
        ]
      : []),
    ...(tableVolts < 10.5
      ? ['So low that a cell may be dead or the battery damaged. Test it before relying on it.']
      : []),
    ...(chemistry === 'flooded'
      ? []
      : ['The steps for this chemistry are from memory; the battery maker’s table comes first.']),
  ];
  return {
    percent: interpolate(table, tableVolts),
    tableVolts,
    freezesAtCelsius: chemistry === 'flooded' ? interpolate(freezing, tableVolts) : null,
    cautions,
  };
}

/** Percent of charge from the specific gravity of a flooded cell at 26.7 °C; null outside 1.0 to 1.4. */
export function chargeFromGravity(specificGravity: number): number | null {
  if (!(specificGravity >= 1 && specificGravity <= 1.4)) return null;
  return interpolate(gravity, specificGravity);
}

function interpolate(points: readonly Point[], at: number): number {
  let before = points[0] ?? [0, 0];
  if (at <= before[0]) return before[1];
  for (const point of points) {
    if (at <= point[0]) {
      const share = (at - before[0]) / (point[0] - before[0]);
      return before[1] + share * (point[1] - before[1]);
    }
    before = point;
  }
  return before[1];
}
