// Replies that do not fit: nothing throws, every oddity is a warning, and no byte is made into a code without it showing.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readReply } from '../../../app/domain/diagnosis/diagnostic-reply.ts';
import { troubleCodeFromBytes } from '../../../app/domain/diagnosis/trouble-code.ts';

const bytes = (text: string) => (text === '' ? [] : text.split(' ').map((one) => Number.parseInt(one, 16)));
const codes = (text: string, bus: 'can' | 'older') => readReply(bytes(text), bus).codes.map((one) => one.code);
const warnings = (text: string, bus: 'can' | 'older') => readReply(bytes(text), bus).warnings;

describe('lists of codes', () => {
  it('tells stored, pending and permanent apart by the first byte', () => {
    expect(readReply(bytes('43 01 01 33'), 'can').kind).toBe('stored');
    expect(readReply(bytes('47 01 01 33'), 'can').kind).toBe('pending');
    expect(readReply(bytes('4A 01 01 33'), 'can').kind).toBe('permanent');
  });

  it('reads no codes from a count of zero or from padding alone', () => {
    expect(readReply(bytes('43 00'), 'can')).toMatchObject({ codes: [], count: 0, warnings: [] });
    expect(readReply(bytes('43 00 00 00 00 00 00'), 'older')).toMatchObject({ codes: [], count: null, warnings: [] });
  });

  it('leaves out filling bytes after the counted codes, and says so', () => {
    expect(codes('43 01 01 33 AA AA AA', 'can')).toEqual(['P0133']);
    expect(warnings('43 01 01 33 AA AA AA', 'can')).toHaveLength(1);
  });

  it('reads without a count where the count does not fit the length, and says so', () => {
    expect(codes('43 07 01 33 01 71 00', 'can')).toEqual(['P0701', 'P3301', 'C3100']); // 07 01, 33 01, 71 00
    expect(warnings('43 07 01 33 01 71 00', 'can')[0]).toContain('count 7 does not fit');
  });

  it('reads a counted reply on a bus that does not count, and says so', () => {
    expect(codes('43 02 01 02 01 13', 'older')).toEqual(['P0102', 'P0113']);
    expect(warnings('43 02 01 02 01 13', 'older')[0]).toContain('as on CAN');
  });

  it('does not read half a pair', () => {
    expect(codes('43 01 33 01 34 01', 'older')).toEqual(['P0133', 'P0134']);
    expect(warnings('43 01 33 01 34 01', 'older')[0]).toContain('stands alone');
  });
});

describe('codes with status', () => {
  it('warns of a code that is cut off and keeps the whole ones', () => {
    expect(codes('59 02 FF 08 05 11 2F 0A 9B', 'can')).toEqual(['P0805-11']);
    expect(warnings('59 02 FF 08 05 11 2F 0A 9B', 'can')[0]).toContain('last 2 bytes');
  });

  it('leaves out status bits that the module does not support', () => {
    const reply = readReply(bytes('59 02 09 08 05 11 2F'), 'can');
    expect(reply.codes[0]?.statusByte?.byte).toBe(0x09);
    expect(reply.warnings[0]).toContain('does not support');
  });

  it('takes the third byte for no failure type when the module uses format 00', () => {
    const reply = readReply(bytes('59 02 FF 08 05 11 2F'), 'can', { codeFormat: 0 });
    expect(reply.codes[0]?.code).toBe('P0805');
  });

  it('reads no trouble codes from the formats of trucks and trailers', () => {
    expect(readReply(bytes('59 02 FF 08 05 11 2F'), 'can', { codeFormat: 2 })).toMatchObject({
      kind: 'not-understood',
      codes: [],
    });
  });

  it.each(['59', '59 01', '59 01 2F', '59 01 2F 01 00', '59 02', '59 06 00'])(
    'understands nothing in %s and says so',
    (text) => {
      const reply = readReply(bytes(text), 'can');
      expect(reply.kind).toBe('not-understood');
      expect(reply.warnings.length).toBeGreaterThan(0);
    },
  );
});

describe('refusals and nonsense', () => {
  it('says which service was refused and why', () => {
    expect(readReply(bytes('7F 19 33'), 'can')).toMatchObject({ kind: 'refused', codes: [] });
    expect(warnings('7F 19 33', 'can')[0]).toContain('access is locked');
    expect(warnings('7F 19 E9', 'can')[0]).toContain('E9');
    expect(readReply(bytes('7F'), 'can').kind).toBe('refused');
  });

  it('names the place of what is no byte', () => {
    expect(readReply([0x43, 1, 300, 2], 'can').warnings[0]).toContain('Place 3 is 300');
    expect(readReply([Number.NaN], 'older').kind).toBe('not-understood');
    expect(readReply([], 'can').warnings).toEqual(['The reply is empty.']);
  });

  const anyReply = fc.oneof(
    fc.array(fc.oneof(fc.integer({ min: 0, max: 255 }), fc.double(), fc.integer()), { maxLength: 20 }),
    fc
      .tuple(
        fc.constantFrom(0x43, 0x47, 0x4a, 0x54, 0x59, 0x7f),
        fc.array(fc.integer({ min: 0, max: 255 }), { maxLength: 40 }),
      )
      .map(([first, rest]) => [first, ...rest]),
    fc.array(fc.integer({ min: 0, max: 255 }), { maxLength: 40 }).map((rest) => [0x59, 0x02, ...rest]),
  );

  it('never throws, and every code stands in the reply as two bytes side by side', () => {
    fc.assert(
      fc.property(anyReply, fc.constantFrom('can' as const, 'older' as const), (reply, bus) => {
        const reading = readReply(reply, bus);
        const pairs = new Set(
          reply.slice(1).flatMap((low, index) => {
            const high = reply[index];
            const areBytes = [high, low].every(
              (one) => Number.isInteger(one) && Number(one) >= 0 && Number(one) <= 255,
            );
            return high !== undefined && areBytes ? [troubleCodeFromBytes(high, low)] : [];
          }),
        );
        for (const { code } of reading.codes) {
          expect(pairs.has(code.slice(0, 5))).toBe(true);
          expect(code.slice(0, 5)).not.toBe('P0000');
        }
        if (reading.kind === 'not-understood') expect(reading.warnings.length).toBeGreaterThan(0);
      }),
      { numRuns: 500 },
    );
  });

  it('reads back every counted list that it could have been sent, in order and without a warning', () => {
    const pair = fc
      .tuple(fc.integer({ min: 0, max: 255 }), fc.integer({ min: 0, max: 255 }))
      .filter(([high, low]) => high !== 0 || low !== 0);
    fc.assert(
      fc.property(fc.array(pair, { maxLength: 60 }), (list) => {
        const reply = readReply([0x43, list.length, ...list.flat()], 'can');
        expect(reply.codes.map((one) => one.code)).toEqual(list.map(([high, low]) => troubleCodeFromBytes(high, low)));
        expect(reply.warnings).toEqual([]);
      }),
    );
  });
});
