// Working time as people write it, in whole minutes. Pure.

/**
 * '90' is minutes; '1:30', '1.5h', '1,5 h', '2h', '1h30', '1 h 30 min' and '1.5' are hours. A bare whole number is always minutes. Null when it
 * is none of these.
 */
export function readMinutes(text: string): number | null {
  const compact = text.trim().toLowerCase().replace(/\s+/g, '').replace(',', '.');
  const clock = /^(\d{1,3})(?::|h)([0-5]?\d)(?:m|min)?$/.exec(compact);
  if (clock) return Number(clock[1]) * 60 + Number(clock[2]);
  const minutes = /^(\d{1,5})(?:m|min)?$/.exec(compact);
  if (minutes) return Number(minutes[1]);
  const hours = /^(\d{1,3}(?:\.\d{1,2})?)h?$/.exec(compact);
  return hours ? Math.round(Number(hours[1]) * 60) : null;
}

/** '0:45', '2:05', '12:30': hours and minutes. */
export function showMinutes(minutes: number): string {
  return `${Math.floor(minutes / 60)}:${String(minutes % 60).padStart(2, '0')}`;
}
