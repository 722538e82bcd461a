// Which model years the code in position 10 of a VIN can mean. Never guesses: what is not derivable comes back as several years or none.

/** The 30 codes in order, 49 CFR 565.15(d)(1) Table VII: 1980 to 2009, and again 2010 to 2039. No I, O, Q, U, Z, 0. */
const yearCodes = 'ABCDEFGHJKLMNPRSTVWXY123456789';

/**
 * Model years that a year code can mean. `positionSeven` is the character of position 7, or null where the rule that reads it does not
 * apply (heavier vehicles, buses, motorcycles, trailers; vehicles not made to the North American rules): then both years come back.
 * A digit in position 7 means 1980 to 2009, a letter 2010 to 2039 (note to Table VII). Empty for a character that is no year code.
 */
export function modelYearsOfCode(code: string, positionSeven: string | null): readonly number[] {
  const index = code.length === 1 ? yearCodes.indexOf(code) : -1;
  if (index < 0) return [];
  const earlier = 1980 + index;
  const later = 2010 + index;
  if (positionSeven === null) return [earlier, later];
  if (/^[0-9]$/.test(positionSeven)) return [earlier];
  return /^[A-Z]$/.test(positionSeven) ? [later] : [earlier, later];
}
