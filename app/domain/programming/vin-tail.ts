// The check before a step that cannot be undone: the last eight of the VIN, read from the vehicle, against the record. Never shows the
// expected characters: they are to be read from the vehicle, not from the screen.
import { fail, ok, type Result } from '../shared/result.ts';
import { cleanVin, vinTail } from '../vehicle/vin.ts';

export type VinTailRefusal = {
  readonly code: 'no-vin-on-record' | 'nothing-typed' | 'wrong-length' | 'does-not-match';
  readonly sentence: string;
};

const tailLength = 8;

function refuse(code: VinTailRefusal['code'], sentence: string): Result<never, VinTailRefusal> {
  return fail({ code, sentence });
}

/**
 * Compares what was read from the vehicle with the record's VIN: the last eight characters, or the whole VIN if somebody types all of
 * it. Spaces, hyphens and small letters do not matter; no letter is taken for a digit. The last eight, common practice, no source; that
 * I, O and Q are never used: 49 CFR 565.13(g), ISO 3779.
 */
export function checkVinTail(expectedVin: string, typed: string): Result<string, VinTailRefusal> {
  const expected = cleanVin(expectedVin);
  const read = cleanVin(typed);
  if (expected.length < tailLength)
    return refuse(
      'no-vin-on-record',
      'The record has no VIN to compare with. Enter the vehicle’s VIN first, then start this step.',
    );
  if (read === '')
    return refuse(
      'nothing-typed',
      'Read the last eight characters of the VIN from the vehicle itself and type them here.',
    );
  if (read.length !== tailLength && read.length !== expected.length)
    return refuse('wrong-length', `Type the last eight characters of the VIN; this has ${read.length}.`);
  if (read === expected || read === vinTail(expected)) return ok(read);
  if (/[IOQ]/.test(read))
    return refuse('does-not-match', 'A VIN never contains the letters I, O or Q. Read it from the vehicle again.');
  return refuse(
    'does-not-match',
    'This is not the VIN on record. Do not write anything. Read it from the vehicle again; if it stays different, find out which vehicle this is.',
  );
}
