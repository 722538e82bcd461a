// The recovery key as people copy it from paper: groups of five, the last of each a check character that names the group with the slip.
// Makes and reads the text; knows no vault.
import { fail, ok, type Result } from '../../domain/shared/result.ts';

/** Without I, L, O and U, which are misread (the alphabet of Crockford's base 32). */
const symbols = '0123456789ABCDEFGHJKMNPQRSTVWXYZ';
const groupCount = 8;
const symbolsInGroup = 4;
/** 8 groups of 4 symbols of 5 bits. */
export const recoveryKeyBytes = 20;

/** Times x in GF(32) with x^5 + x^2 + 1. */
function timesX(value: number): number {
  return ((value << 1) ^ (value & 16 ? 0b100101 : 0)) & 31;
}

/**
 * One check symbol a group, from the polynomial over GF(32) that begins with the group's number: one wrong symbol, two swapped neighbours
 * and two swapped groups are always found.
 */
function checkOf(group: number, values: readonly number[]): number {
  return timesX(values.reduce((sum, value) => timesX(sum) ^ value, group + 1));
}

/** 'XXXXX-XXXXX-…', eight groups. The bytes are the key; the caller wipes them. */
export function showRecoveryKey(bytes: Uint8Array): string {
  if (bytes.length !== recoveryKeyBytes) throw new Error('A recovery key has 20 bytes.');
  const bits = [...bytes].map((byte) => byte.toString(2).padStart(8, '0')).join('');
  const groups = Array.from({ length: groupCount }, (_, group) => {
    const values = Array.from({ length: symbolsInGroup }, (_unused, index) => {
      const from = (group * symbolsInGroup + index) * 5;
      return Number.parseInt(bits.slice(from, from + 5), 2);
    });
    return [...values, checkOf(group, values)].map((value) => symbols[value]).join('');
  });
  return groups.join('-');
}

/** The key's bytes, or which part of what was typed cannot be right, in a sentence that does not repeat it. */
export function readRecoveryKey(text: string): Result<Buffer, string> {
  const compact = text
    .normalize('NFKC')
    .toUpperCase()
    .replace(/[\s\-\u2010-\u2015.]/g, '')
    .replace(/O/g, '0')
    .replace(/[IL]/g, '1');
  const whole = groupCount * (symbolsInGroup + 1);
  if (compact.length !== whole)
    return fail(
      `A recovery key has ${groupCount} groups of ${symbolsInGroup + 1} characters; this has ${compact.length} of ${whole}.`,
    );
  let bits = '';
  for (let group = 0; group < groupCount; group++) {
    const from = group * (symbolsInGroup + 1);
    const values = [...compact.slice(from, from + symbolsInGroup + 1)].map((symbol) => symbols.indexOf(symbol));
    const check = values.pop();
    if (values.includes(-1) || check !== checkOf(group, values))
      return fail(`Group ${group + 1} of ${groupCount} is not as it was printed. Compare it with the paper.`);
    bits += values.map((value) => value.toString(2).padStart(5, '0')).join('');
  }
  return ok(Buffer.from(bits.match(/.{8}/g)?.map((byte) => Number.parseInt(byte, 2)) ?? []));
}
