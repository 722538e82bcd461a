// What a code's text is taken for, beyond the published examples in tests/reference.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { failureTypeWords } from '../../../app/domain/diagnosis/failure-types.ts';
import { parseTroubleCode, troubleCodeFromBytes } from '../../../app/domain/diagnosis/trouble-code.ts';

const byte = fc.integer({ min: 0, max: 255 });

describe('a trouble code', () => {
  it.each(['P0805-11', 'p0805-11', ' P0805 11 ', 'P0805:11', 'P080511'])('reads %j as P0805-11', (text) => {
    expect(parseTroubleCode(text)).toEqual({
      text: 'P0805-11',
      number: 'P0805',
      system: 'powertrain',
      controlledBy: 'standard',
      failureType: { hex: '11', words: 'shorted to ground' },
      isModuleWorkUnfinished: false,
      hint: 'transmission',
    });
  });

  it.each([
    'P0000',
    'P0000-00',
    '',
    'P',
    'P4000',
    'X0100',
    'P01334',
    'P013',
    'P0G00',
    'P0133-1',
    'PO133',
    'P0133-11-2',
    'Ρ0133',
  ])('does not take %j for a code', (text) => {
    expect(parseTroubleCode(text)).toBeNull();
  });

  it('comes back the same from every pair of bytes but 00 00, each pair another text', () => {
    const seen = new Set<string>();
    for (let number = 0; number < 65_536; number += 1) {
      const text = troubleCodeFromBytes(number >> 8, number & 0xff);
      seen.add(text);
      if ((parseTroubleCode(text)?.text ?? 'P0000') !== text) throw new Error(text);
    }
    expect(seen.size).toBe(65_536);
  });

  it('keeps its failure type', () => {
    fc.assert(
      fc.property(byte, byte, byte, (high, low, third) => {
        fc.pre(high !== 0 || low !== 0);
        const text = troubleCodeFromBytes(high, low, third);
        expect(parseTroubleCode(text)?.text).toBe(text);
        expect(Number.parseInt(parseTroubleCode(text)?.failureType?.hex ?? '', 16)).toBe(third);
      }),
    );
  });

  it.each([-1, 256, 1.5, Number.NaN])('refuses %s as a byte', (number) => {
    expect(() => troubleCodeFromBytes(number, 0)).toThrow(RangeError);
    expect(() => troubleCodeFromBytes(0, number)).toThrow(RangeError);
    expect(() => troubleCodeFromBytes(1, 1, number)).toThrow(RangeError);
  });

  it('says when module work is unfinished: wrong part, not programmed, not activated, no calibration, not configured', () => {
    const unfinished = Array.from({ length: 256 }, (_, third) => troubleCodeFromBytes(0xc1, 0x40, third)).filter(
      (text) => parseTroubleCode(text)?.isModuleWorkUnfinished,
    );
    expect(unfinished).toEqual(['U0140-4A', 'U0140-51', 'U0140-52', 'U0140-54', 'U0140-55']);
  });

  it('hints at the area of standard powertrain numbers only', () => {
    expect(parseTroubleCode('P0301')?.hint).toBe('ignition or misfire');
    expect(parseTroubleCode('P2A00')?.hint).toBe('hybrid or electric drive');
    expect(parseTroubleCode('P1301')?.hint).toBeNull();
    expect(parseTroubleCode('C0301')?.hint).toBeNull();
    expect(parseTroubleCode('P0F01')?.hint).toBeNull();
  });

  it('has words for known failure types, the group for unknown ones, and none where even that is unknown', () => {
    expect(failureTypeWords('13')).toBe('circuit open');
    expect(failureTypeWords('1F')).toBe('circuit comes and goes');
    expect(failureTypeWords('7B')).toBe('mechanical fault');
    expect(failureTypeWords('C0')).toBeNull();
  });
});
