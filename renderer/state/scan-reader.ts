// Tells a bar code scanner that types (a keyboard wedge) from a person: many keys, each very soon after the last, ended by Enter or Tab.
// Pure: the moments of the keys are passed in.
import { readMark } from '../../app/domain/sheets/sheet-mark.ts';
import { cleanVin, readVin } from '../../app/domain/vehicle/vin.ts';

/** Keys of a scanner follow each other within so many milliseconds; people rarely stay under 50 (common practice, no source). */
export const slowestGapMs = 35;
/** Shorter codes are left to people: nobody prints stock numbers of two characters as bar codes. */
const shortestScan = 4;

export type ScanState = { readonly text: string; readonly lastAt: number };
export const noScan: ScanState = { text: '', lastAt: 0 };

/** `isHeldBack`: from the second fast key on it is taken for a scanner, and its letters are no commands. */
export type ScanStep = { readonly state: ScanState; readonly scanned: string | null; readonly isHeldBack: boolean };

/** The shift of a scanner's capitals is a key of its own, between two letters. */
export function isBetweenKeys(key: string): boolean {
  return key === 'Shift' || key === 'CapsLock';
}

/** `atMs` is any clock that only goes on. `scanned` is what was read, once its last key has come. */
export function scanKey(state: ScanState, key: string, atMs: number): ScanStep {
  const isInTime = atMs - state.lastAt <= slowestGapMs;
  if (key === 'Enter' || key === 'Tab') {
    const isScan = isInTime && state.text.length >= shortestScan;
    return { state: noScan, scanned: isScan ? state.text : null, isHeldBack: isScan };
  }
  if (isBetweenKeys(key)) return { state, scanned: null, isHeldBack: false };
  if (key.length !== 1) return { state: noScan, scanned: null, isHeldBack: false };
  const text = isInTime ? `${state.text}${key}` : key;
  return { state: { text: text.slice(-80), lastAt: atMs }, scanned: null, isHeldBack: text.length > 1 };
}

export type Scanned =
  | { readonly kind: 'vehicle'; readonly id: string }
  /** Made like a mark on a sheet; whether there is such a sheet is asked for. */
  | { readonly kind: 'mark'; readonly mark: string }
  | { readonly kind: 'new-vin'; readonly vin: string }
  | { readonly kind: 'unknown'; readonly text: string };

type Known = { readonly id: string; readonly identity: { readonly stockNumber: string; readonly vin: string } };

/** Readings of what was scanned, the likeliest first: as it is, without the asterisks of Code 39, without a leading I. */
function readingsOf(scanned: string): readonly string[] {
  const bare = cleanVin(scanned.replace(/^\*+|\*+$/g, ''));
  return bare.length === 18 && bare.startsWith('I') ? [bare.slice(1), bare] : [bare];
}

/**
 * The vehicle with this VIN or stock number; else the mark of a sheet; a VIN that nobody has; or none of these. An unsold vehicle goes
 * before a sold one of the same VIN.
 */
export function readScan(scanned: string, rows: readonly (Known & { readonly isSold: boolean })[]): Scanned {
  const openFirst = [...rows].sort((a, b) => Number(a.isSold) - Number(b.isSold));
  for (const reading of readingsOf(scanned)) {
    const found =
      openFirst.find(({ identity }) => identity.vin !== '' && identity.vin === reading) ??
      openFirst.find(({ identity }) => cleanVin(identity.stockNumber) === reading);
    if (found !== undefined) return { kind: 'vehicle', id: found.id };
  }
  const marks = readingsOf(scanned).map((reading) => readMark(reading));
  const mark = marks.find((one) => one.ok);
  if (mark?.ok === true) return { kind: 'mark', mark: mark.mark };
  const isVin = (vin: string) =>
    readVin(vin, { market: 'other' }).problems.every(({ severity }) => severity !== 'block');
  const vin = readingsOf(scanned).find(isVin);
  return vin === undefined ? { kind: 'unknown', text: scanned } : { kind: 'new-vin', vin };
}
