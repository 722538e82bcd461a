// The check digit in position 9 of a VIN: what it should be and whether it holds. Says nothing about whether the market asks for it.

/** Values of the characters, 49 CFR 565.15(c) Table III. I, O and Q have none: they never appear in a VIN. */
const groupsByValue = ['0', 'AJ1', 'BKS2', 'CLT3', 'DMU4', 'ENV5', 'FW6', 'GPX7', 'HY8', 'RZ9'] as const;

/** Weights of positions 1 to 17, 49 CFR 565.15(c) Table IV. Position 9 holds the digit itself and weighs nothing. */
const weights = [8, 7, 6, 5, 4, 3, 2, 10, 0, 9, 8, 7, 6, 5, 4, 3, 2] as const;

const valueOfCharacter: ReadonlyMap<string, number> = new Map(
  groupsByValue.flatMap((group, value) => [...group].map((character) => [character, value] as const)),
);

export type CheckDigitReading = {
  readonly expected: string;
  readonly found: string;
  readonly holds: boolean;
};

/** True for the 33 characters a VIN is written in: capitals without I, O, Q, and the digits (ISO 3779; 49 CFR 565.13(g)). */
export function isVinCharacter(character: string): boolean {
  return valueOfCharacter.has(character);
}

/** The weighted sum before the division by 11, or null when the text is not 17 VIN characters. 49 CFR 565.15(c). */
export function weightedVinSum(vin: string): number | null {
  if (vin.length !== weights.length) return null;
  let sum = 0;
  for (const [index, weight] of weights.entries()) {
    const value = valueOfCharacter.get(vin.charAt(index));
    if (value === undefined) return null;
    sum += value * weight;
  }
  return sum;
}

/**
 * The check digit of a cleaned VIN, or null when the text is not 17 VIN characters. Rule: 49 CFR 565.15(c), the remainder of the sum
 * divided by 11, ten written X. A digit that holds is no proof: one wrong VIN in eleven passes by chance, and mixing up characters of
 * the same value (for example 5, N, E and V) is never noticed.
 */
export function readCheckDigit(vin: string): CheckDigitReading | null {
  const sum = weightedVinSum(vin);
  if (sum === null) return null;
  const remainder = sum % 11;
  const expected = remainder === 10 ? 'X' : String(remainder);
  const found = vin.charAt(8);
  return { expected, found, holds: expected === found };
}
