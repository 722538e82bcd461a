// VINs for invented vehicles: built to the North American rule with a check digit that holds, from a maker's code nobody was given.
import { readCheckDigit } from '../../domain/vehicle/vin-check-digit.ts';
import { type Model, makes } from './makes-and-models.ts';

/** Codes of the model years 2010 to 2026, 49 CFR 565.15(d)(1) Table VII. */
const yearCodes = 'ABCDEFGHJKLMNPRST';

/** Position 7 is a letter from model year 2010 on (note to Table VII); nothing older is in the sample. */
export function sampleVin({ make, vinLine }: Model, modelYear: number, serial: number): string {
  const year = yearCodes.charAt(modelYear - 2010);
  if (year === '') throw new Error(`No year code for ${modelYear} in the sample.`);
  const [line, engine] = vinLine;
  const trim = 'ABCDEFGH'.charAt(serial % 8);
  const before = `${makes[make]}${line}${trim}${engine}`;
  const after = `${year}W${String(serial).padStart(6, '0')}`;
  const reading = readCheckDigit(`${before}0${after}`);
  if (reading === null) throw new Error(`Not a VIN: ${before}0${after}`);
  return `${before}${reading.expected}${after}`;
}
