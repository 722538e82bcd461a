// In which country the first two characters of a VIN (the start of the world manufacturer identifier) are assigned. Not where the
// vehicle was built, and not who built it.

/** Order of characters inside a range (ISO 3780): letters without I, O, Q, then 1 to 9, then 0. */
const order = 'ABCDEFGHJKLMNPRSTUVWXYZ1234567890';

/**
 * First character, first and last second character, country. From two public lists of ISO 3780 assignments that agree with each other
 * here; where they disagree on the end of a range, the range stops at what both say, so that nothing is guessed. The text of ISO 3780
 * itself was not read.
 */
const ranges: readonly (readonly [first: string, from: string, to: string, country: string])[] = [
  ['J', 'A', '0', 'Japan'],
  ['K', 'A', 'E', 'Sri Lanka'],
  ['K', 'L', 'R', 'South Korea'],
  ['L', 'A', '0', 'China'],
  ['M', 'L', 'R', 'Thailand'],
  ['N', 'L', 'R', 'Turkey'],
  ['N', 'S', 'T', 'Uzbekistan'],
  ['P', 'F', 'K', 'Singapore'],
  ['S', 'A', 'M', 'United Kingdom'],
  ['S', 'N', 'T', 'Germany'],
  ['S', 'U', 'Z', 'Poland'],
  ['T', 'A', 'H', 'Switzerland'],
  ['T', 'J', 'P', 'Czechia'],
  ['T', 'R', 'V', 'Hungary'],
  ['T', 'W', '1', 'Portugal'],
  ['U', 'H', 'M', 'Denmark'],
  ['U', 'N', 'T', 'Ireland'],
  ['U', 'U', 'Z', 'Romania'],
  ['U', '5', '7', 'Slovakia'],
  ['V', 'A', 'E', 'Austria'],
  ['V', 'F', 'R', 'France'],
  ['V', 'S', 'W', 'Spain'],
  ['V', 'X', '2', 'Serbia'],
  ['V', '3', '5', 'Croatia'],
  ['V', '6', '0', 'Estonia'],
  ['W', 'A', '0', 'Germany'],
  ['X', 'A', 'E', 'Bulgaria'],
  ['X', 'F', 'K', 'Greece'],
  ['X', 'L', 'R', 'Netherlands'],
  ['X', 'S', 'W', 'Russia or another former Soviet state'],
  ['Y', 'A', 'E', 'Belgium'],
  ['Y', 'F', 'K', 'Finland'],
  ['Y', 'L', 'R', 'Malta'],
  ['Y', 'S', 'W', 'Sweden'],
  ['Y', 'X', '2', 'Norway'],
  ['Y', '3', '5', 'Belarus'],
  ['Y', '6', '0', 'Ukraine'],
  ['Z', 'A', 'R', 'Italy'],
  ['Z', 'X', 'Z', 'Slovenia'],
  ['Z', '3', '5', 'Lithuania'],
  ['1', 'A', '0', 'United States'],
  ['2', 'A', '0', 'Canada'],
  ['3', 'A', 'W', 'Mexico'],
  ['4', 'A', '0', 'United States'],
  ['5', 'A', '0', 'United States'],
  ['6', 'A', '0', 'Australia'],
  ['7', 'A', 'E', 'New Zealand'],
  ['8', 'A', 'E', 'Argentina'],
  ['8', 'F', 'K', 'Chile'],
  ['9', 'A', 'E', 'Brazil'],
  ['9', 'F', 'K', 'Colombia'],
  ['9', '3', '9', 'Brazil'],
];

/** The country, or null when the lists do not say or do not agree. Source: ISO 3780 as given in two public code lists. */
export function countryAssigned(vin: string): string | null {
  const second = order.indexOf(vin.charAt(1));
  if (vin.length < 2 || second < 0) return null;
  const range = ranges.find(
    ([first, from, to]) => first === vin.charAt(0) && order.indexOf(from) <= second && second <= order.indexOf(to),
  );
  return range === undefined ? null : range[3];
}
