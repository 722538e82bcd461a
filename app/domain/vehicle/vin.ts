// Reads a VIN as a person typed, pasted or scanned it: cleans it, says what is wrong and how much that matters, and what it tells.
// Never throws and never changes a character in silence; corrections are offered for a person to take.
import { plural } from '../shared/text.ts';
import type { Market } from './market.ts';
import { type CheckDigitReading, isVinCharacter, readCheckDigit } from './vin-check-digit.ts';
import { modelYearsOfCode } from './vin-model-year.ts';
import { countryAssigned } from './vin-origin.ts';

export type VinProblemCode =
  | 'empty'
  | 'wrong-length'
  | 'letter-never-used'
  | 'character-not-allowed'
  | 'check-digit-wrong'
  | 'check-digit-missing'
  | 'year-code-unknown'
  | 'year-code-voluntary'
  | 'serial-not-numeric';

/** 'block': cannot be a VIN. 'override': a person may keep it by giving a reason. 'note': worth knowing, nothing to do. */
export type VinSeverity = 'block' | 'override' | 'note';

export type VinProblem = { readonly code: VinProblemCode; readonly severity: VinSeverity; readonly sentence: string };

/** A corrected VIN that a person may take. `checkDigitHolds` is null when the corrected text still has no VIN's structure. */
export type VinOffer = {
  readonly code: 'replace-letters' | 'drop-leading-i' | 'drop-leading-i-and-replace-letters';
  readonly vin: string;
  readonly checkDigitHolds: boolean | null;
  readonly sentence: string;
};

export type VinReading = {
  readonly vin: string;
  readonly problems: readonly VinProblem[];
  readonly checkDigit: CheckDigitReading | null;
  readonly modelYears: readonly number[];
  readonly assignedIn: string | null;
  readonly offers: readonly VinOffer[];
};

const vinLength = 17;

/** Trimmed, upper case, without spaces and hyphens (common practice, no source). Only a to z are raised: no letter turns into two. */
export function cleanVin(text: string): string {
  return text
    .replace(/[\s\u200b-\u200d\u2060\u00ad\u2010-\u2015\u2212-]/gu, '')
    .replace(/[a-z]/g, (letter) => letter.toUpperCase());
}

/** The last eight characters, the usual short search key (common practice, no source). Not unique: never use it as a key. */
export function vinTail(vin: string): string {
  return vin.slice(-8);
}

/** True where the check digit is mandatory: vehicles for the United States, Canada, Mexico and China, and VINs that begin 1 to 5. */
export function asksForCheckDigit(vin: string, market: Market): boolean {
  return /^[1-5]/.test(vin) || market === 'US' || market === 'CA' || market === 'MX' || market === 'CN';
}

/**
 * Reads a VIN. `lightVehicle` is false for vehicles over 4,536 kg (10,000 lb), buses, motorcycles and trailers: their model year has
 * two candidates. Severities: length and characters block; a wrong check digit asks for a reason where the digit is mandatory and is
 * a note elsewhere (common practice, no source). Sources: 49 CFR 565.13 and 565.15, ISO 3779, ISO 3780. Never throws.
 */
export function readVin(
  text: string,
  { market, lightVehicle = true }: { readonly market: Market; readonly lightVehicle?: boolean },
): VinReading {
  const vin = cleanVin(text);
  const structure = findStructureProblems(vin);
  const offers = findOffers(vin);
  if (structure.length > 0) {
    return { vin, problems: structure, checkDigit: null, modelYears: [], assignedIn: null, offers };
  }
  const checkDigit = readCheckDigit(vin);
  const followsNorthAmericanRule = /^[1-5]/.test(vin) || market === 'US' || market === 'CA';
  const positionSeven = followsNorthAmericanRule && lightVehicle ? vin.charAt(6) : null;
  const modelYears = modelYearsOfCode(vin.charAt(9), positionSeven);
  const problems = [
    ...findCheckDigitProblem(vin, checkDigit, market),
    ...findYearProblem(vin.charAt(9), modelYears, followsNorthAmericanRule),
    ...(followsNorthAmericanRule ? findSerialProblem(vin, lightVehicle) : []),
  ];
  return { vin, problems, checkDigit, modelYears, assignedIn: countryAssigned(vin), offers };
}

function findStructureProblems(vin: string): readonly VinProblem[] {
  const characters = [...vin];
  if (characters.length === 0) {
    return [{ code: 'empty', severity: 'block', sentence: 'Enter the VIN: 17 letters and digits.' }];
  }
  const problems: VinProblem[] = [];
  if (characters.length !== vinLength) {
    const difference = characters.length - vinLength;
    const amount =
      difference < 0 ? `${plural(-difference, 'is', 'are')} missing` : `${plural(difference, 'is', 'are')} too many`;
    const sentence = `A VIN has 17 characters; this has ${characters.length}: ${amount}.`;
    problems.push({ code: 'wrong-length', severity: 'block', sentence });
  }
  const unusedLetters = characters.flatMap((one, index) => (/[IOQ]/.test(one) ? [`${one} (place ${index + 1})`] : []));
  if (unusedLetters.length > 0) {
    const sentence = `The letters I, O and Q never appear in a VIN; found ${listShortly(unusedLetters)}. Read the plate again.`;
    problems.push({ code: 'letter-never-used', severity: 'block', sentence });
  }
  const strangers = characters.flatMap((one, index) =>
    isVinCharacter(one) || /[IOQ]/.test(one) ? [] : [`“${one}” (place ${index + 1})`],
  );
  if (strangers.length > 0) {
    const sentence = `A VIN is written in the letters A to Z and digits only; found ${listShortly(strangers)}.`;
    problems.push({ code: 'character-not-allowed', severity: 'block', sentence });
  }
  return problems;
}

function listShortly(items: readonly string[]): string {
  const shown = items.slice(0, 4).join(', ');
  return items.length > 4 ? `${shown} and ${items.length - 4} more` : shown;
}

function findCheckDigitProblem(
  vin: string,
  checkDigit: CheckDigitReading | null,
  market: Market,
): readonly VinProblem[] {
  if (checkDigit === null || checkDigit.holds) return [];
  const { expected, found } = checkDigit;
  const isMandatory = asksForCheckDigit(vin, market);
  const code = /[0-9X]/.test(found) ? 'check-digit-wrong' : 'check-digit-missing';
  const sentence = isMandatory
    ? `Place 9 should be ${expected} but is ${found}. A character is probably misread: compare with the plate, or keep it and give a reason.`
    : `Place 9 is ${found}, not the check digit ${expected}. Makers outside North America and China need not use one.`;
  return [{ code, severity: isMandatory ? 'override' : 'note', sentence }];
}

function findYearProblem(code: string, years: readonly number[], isRuleKnown: boolean): readonly VinProblem[] {
  if (years.length === 0) {
    const sentence = `Place 10 is ${code}, which stands for no model year. Take the year from the registration paper.`;
    return [{ code: 'year-code-unknown', severity: 'note', sentence }];
  }
  if (isRuleKnown) return [];
  const sentence = `Place 10 is ${code}: ${years.join(' or ')} if the maker puts the model year there, which is not required of every maker.`;
  return [{ code: 'year-code-voluntary', severity: 'note', sentence }];
}

/** 49 CFR 565.15(d): the last five places are digits on light vehicles, the last four on others; a low-volume maker (third place 9)
 * uses places 12 to 14 for its identity (565.15(a)). */
function findSerialProblem(vin: string, lightVehicle: boolean): readonly VinProblem[] {
  const lightStart = vin.charAt(2) === '9' ? 14 : 12;
  const start = lightVehicle ? lightStart : Math.max(lightStart, 13);
  if (/^\d+$/.test(vin.slice(start))) return [];
  const sentence = `Places ${start + 1} to 17 are digits on a vehicle like this; here they are ${vin.slice(start)}. Compare with the plate.`;
  return [{ code: 'serial-not-numeric', severity: 'note', sentence }];
}

function findOffers(vin: string): readonly VinOffer[] {
  const offers: VinOffer[] = [];
  const offer = (code: VinOffer['code'], offered: string, sentence: string) => {
    offers.push({ code, vin: offered, checkDigitHolds: readCheckDigit(offered)?.holds ?? null, sentence });
  };
  const hasScanPrefix = vin.length === vinLength + 1 && vin.startsWith('I');
  if (hasScanPrefix) {
    const dropped = vin.slice(1);
    offer(
      'drop-leading-i',
      dropped,
      'Bar codes on imported vehicles often begin with an extra I. Use it without the I?',
    );
    if (/[IOQ]/.test(dropped)) {
      const replaced = replaceLetters(dropped);
      offer(
        'drop-leading-i-and-replace-letters',
        replaced,
        `Use ${replaced}, without the extra I and with digits for letters?`,
      );
    }
  } else if (/[IOQ]/.test(vin)) {
    const replaced = replaceLetters(vin);
    offer('replace-letters', replaced, 'I, O and Q are usually the digits 1, 0 and 0. Use it with the digits?');
  }
  return offers;
}

function replaceLetters(vin: string): string {
  return vin.replace(/[OQ]/g, '0').replaceAll('I', '1');
}
