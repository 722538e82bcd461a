// Money as whole cents (the smallest unit of the shop's currency), with a guard. No floats, no formatting by locale here.
import { z } from 'zod';

/** Largest amount accepted for one entry: one hundred million in the main unit. Keeps every product exact in BigInt-free sums. */
export const largestEntryCents = 10_000_000_000;

export type Cents = number;

/** @throws when the number is not a whole number that can be kept exactly: a fraction of a cent is a bug upstream. */
export function checkCents(amount: number): Cents {
  if (!Number.isSafeInteger(amount)) throw new Error(`Not a whole number of cents: ${amount}`);
  return amount === 0 ? 0 : amount;
}

export function sumCents(amounts: Iterable<Cents>): Cents {
  let total = 0;
  for (const amount of amounts) total += amount;
  return checkCents(total);
}

/**
 * `numerator / denominator`, rounded to the nearest whole cent, halves away from zero (commercial rounding; common practice, no
 * source). The one rounding rule of the program: round once for each posting, never in between.
 */
export function roundToCents(numerator: bigint, denominator: bigint): Cents {
  if (denominator <= 0n) throw new Error('The denominator must be positive.');
  const isNegative = numerator < 0n;
  const size = isNegative ? -numerator : numerator;
  const rounded = (2n * size + denominator) / (2n * denominator);
  return checkCents(Number(isNegative ? -rounded : rounded));
}

/**
 * Reads an amount that a person typed: '1,250.50', '1250,5', '1 250', '-12'. A single separator followed by exactly three digits is
 * read as a thousands mark, unless a zero stands before it. Returns null when it is not an amount or has more than two decimals.
 */
export function readCents(text: string): Cents | null {
  const compact = text.replace(/[\s\u00a0\u202f']/g, '').replace('\u2212', '-');
  const match = /^(-?)(\d[\d.,]*)$/.exec(compact);
  if (!match) return null;
  const [, sign = '', digits = ''] = match;
  const lastMark = Math.max(digits.lastIndexOf('.'), digits.lastIndexOf(','));
  const tail = lastMark < 0 ? '' : digits.slice(lastMark + 1);
  const markCount = digits.replace(/\d/g, '').length;
  const isDecimal =
    lastMark >= 0 && tail.length <= 2 && (markCount === 1 || digits.indexOf(digits[lastMark] ?? '') === lastMark);
  const wholePart = isDecimal ? digits.slice(0, lastMark) : digits;
  if (/[.,]/.test(wholePart) && !/^[1-9]\d{0,2}([.,])\d{3}(\1\d{3})*$/.test(wholePart)) return null;
  const whole = wholePart.replace(/[.,]/g, '');
  const hundredths = isDecimal ? tail.padEnd(2, '0') : '00';
  const amount = Number(`${whole || '0'}${hundredths}`);
  if (!Number.isSafeInteger(amount) || amount > largestEntryCents) return null;
  return checkCents(sign === '-' ? -amount : amount);
}

/** '1,250.50' with a thousands mark and two decimals; the currency sign is the caller's business. */
export function showCents(amount: Cents): string {
  const size = Math.abs(checkCents(amount));
  const whole = Math.floor(size / 100)
    .toString()
    .replace(/\B(?=(\d{3})+$)/g, ',');
  return `${amount < 0 ? '\u2212' : ''}${whole}.${(size % 100).toString().padStart(2, '0')}`;
}

export const centsSchema = z.int().min(-largestEntryCents).max(largestEntryCents);
export const positiveCentsSchema = z.int().min(0).max(largestEntryCents);
