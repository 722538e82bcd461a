// One trouble code: from bytes to text, and what its number alone tells. The meaning of a maker's code needs the make and is not here.
import { failureTypeWords, saysModuleWorkUnfinished } from './failure-types.ts';

export type CodeSystem = 'powertrain' | 'chassis' | 'body' | 'network';

/** Who gives the number its meaning: the standard, the maker of the vehicle, or nobody yet as far as the standard's first text says. */
export type CodeController = 'standard' | 'maker' | 'reserved';

export type TroubleCode = {
  /** 'P0805' or, with a failure type, 'P0805-11'. */
  readonly text: string;
  /** The five characters alone. */
  readonly number: string;
  readonly system: CodeSystem;
  readonly controlledBy: CodeController;
  readonly failureType: { readonly hex: string; readonly words: string | null } | null;
  /** True when the failure type says that the module's programming, coding or calibration is outstanding. */
  readonly isModuleWorkUnfinished: boolean;
  /** Rough area of a standard powertrain number, or null. A hint only: newer numbers no longer keep to it. */
  readonly hint: string | null;
};

const letters = 'PCBU';
const systems: Readonly<Record<string, CodeSystem>> = { P: 'powertrain', C: 'chassis', B: 'body', U: 'network' };

/** Traditional grouping of P0 and P2 numbers by their third character; SAE J2012 dropped it for new codes (abstract, December 2016). */
const areas: Readonly<Record<string, string>> = {
  '0': 'fuel, air or auxiliary emission control',
  '1': 'fuel and air metering',
  '2': 'fuel and air metering, injectors',
  '3': 'ignition or misfire',
  '4': 'auxiliary emission control',
  '5': 'speed, idle or auxiliary inputs',
  '6': 'control module and its outputs',
  '7': 'transmission',
  '8': 'transmission',
  '9': 'transmission',
  A: 'hybrid or electric drive',
  B: 'hybrid or electric drive',
  C: 'hybrid or electric drive',
};

/**
 * The text of a code from its two bytes, and from its failure type byte where there is one. SAE J2012 / ISO 15031-6: bits 15 and 14
 * choose P, C, B or U, bits 13 and 12 the first digit, the rest are hex digits. 00 00 gives 'P0000', which is padding and no code.
 * @throws RangeError when a number is not a byte.
 */
export function troubleCodeFromBytes(high: number, low: number, failureType?: number): string {
  for (const byte of [high, low, failureType ?? 0]) {
    if (!isByte(byte)) throw new RangeError(`Not a byte: ${byte}`);
  }
  const number = high * 256 + low;
  const hex = (number & 0xfff).toString(16).toUpperCase().padStart(3, '0');
  const text = `${letters.charAt(number >> 14)}${(number >> 12) & 3}${hex}`;
  return failureType === undefined ? text : `${text}-${hexByte(failureType)}`;
}

export function isByte(number: number): boolean {
  return Number.isInteger(number) && number >= 0 && number <= 255;
}

/** Two capital hex digits. */
export function hexByte(byte: number): string {
  return byte.toString(16).toUpperCase().padStart(2, '0');
}

/**
 * What a code's text tells: 'P0133', 'p0805-11', 'P0805 11', 'P080511'. Null when it is no trouble code, and for P0000, which is
 * padding. Sources: SAE J2012 / ISO 15031-6; failure type byte as in ISO 14229-1.
 */
export function parseTroubleCode(text: string): TroubleCode | null {
  const match = /^([PCBU])([0-3])([0-9A-F]{3})(?:[- :]?([0-9A-F]{2}))?$/.exec(text.trim().toUpperCase());
  if (match === null) return null;
  const [, letter = '', digit = '', rest = '', failureHex] = match;
  const number = `${letter}${digit}${rest}`;
  const system = systems[letter];
  if (number === 'P0000' || system === undefined) return null;
  const isStandardPowertrain = letter === 'P' && (digit === '0' || digit === '2');
  return {
    text: failureHex === undefined ? number : `${number}-${failureHex}`,
    number,
    system,
    controlledBy: controllerOf(letter, digit, rest),
    failureType: failureHex === undefined ? null : { hex: failureHex, words: failureTypeWords(failureHex) },
    isModuleWorkUnfinished: failureHex !== undefined && saysModuleWorkUnfinished(failureHex),
    hint: isStandardPowertrain ? (areas[rest.charAt(0)] ?? null) : null,
  };
}

/** SAE J2012: P3000 to P33FF are the maker's, P3400 and above the standard's; elsewhere the first digit decides. */
function controllerOf(letter: string, digit: string, rest: string): CodeController {
  if (digit === '0') return 'standard';
  if (letter === 'P') {
    if (digit === '1') return 'maker';
    if (digit === '2') return 'standard';
    return rest < '400' ? 'maker' : 'standard';
  }
  return digit === '3' ? 'reserved' : 'maker';
}
