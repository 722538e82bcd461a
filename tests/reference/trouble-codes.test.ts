// Trouble codes, status bytes and replies against the worked examples of the standards and of public protocol notes.
import { describe, expect, it } from 'vitest';
import { readReply } from '../../app/domain/diagnosis/diagnostic-reply.ts';
import { matchesStatusMask, readStatusByte } from '../../app/domain/diagnosis/status-byte.ts';
import { parseTroubleCode, troubleCodeFromBytes } from '../../app/domain/diagnosis/trouble-code.ts';

const bytes = (text: string) => text.split(' ').map((one) => Number.parseInt(one, 16));

describe('two bytes to five characters (SAE J2012 / ISO 15031-6)', () => {
  it.each([
    [0x01, 0x33, 'P0133', 'service 03 example quoted in a public forum thread'],
    [0x01, 0x02, 'P0102', 'the same thread, from a vehicle'],
    [0x01, 0x13, 'P0113', 'the same thread, from a vehicle'],
    [0x01, 0x43, 'P0143', 'public article on UDS trouble-code formats'],
    [0x01, 0x70, 'P0170', 'public protocol notes'],
    [0x01, 0x34, 'P0134', 'public protocol notes'],
    [0x0a, 0x9b, 'P0A9B', 'ISO 14229-1 example'],
    [0x25, 0x22, 'P2522', 'ISO 14229-1 example'],
    [0x08, 0x05, 'P0805', 'ISO 14229-1 example'],
    [0x40, 0x35, 'C0035', 'computed'],
    [0x80, 0x39, 'B0039', 'computed'],
    [0x92, 0x34, 'B1234', 'computed'],
    [0xc1, 0x00, 'U0100', 'computed'],
    [0xc0, 0x73, 'U0073', 'computed'],
    [0xd0, 0x00, 'U1000', 'computed'],
    [0x3f, 0xff, 'P3FFF', 'computed'],
    [0xff, 0xff, 'U3FFF', 'computed'],
    [0x00, 0x00, 'P0000', 'computed; padding'],
  ])('%i %i is %s (%s)', (high, low, code) => {
    expect(troubleCodeFromBytes(high, low)).toBe(code);
  });

  it('writes three bytes as code and failure type (ISO 14229-1 examples; 80 39 01 is B0039-01)', () => {
    expect(troubleCodeFromBytes(0x0a, 0x9b, 0x17)).toBe('P0A9B-17');
    expect(troubleCodeFromBytes(0x25, 0x22, 0x1f)).toBe('P2522-1F');
    expect(troubleCodeFromBytes(0x08, 0x05, 0x11)).toBe('P0805-11');
    expect(troubleCodeFromBytes(0x80, 0x39, 0x01)).toBe('B0039-01');
  });
});

describe('who controls a number (SAE J2012 ranges as an explanatory article and public summaries give them)', () => {
  it.each([
    ['P0171', 'standard'],
    ['P1128', 'maker'],
    ['P2096', 'standard'],
    ['P3000', 'maker'],
    ['P33FF', 'maker'],
    ['P3400', 'standard'],
    ['P3FFF', 'standard'],
    ['C0035', 'standard'],
    ['C1200', 'maker'],
    ['C2100', 'maker'],
    ['B0039', 'standard'],
    ['B2799', 'maker'],
    ['U0100', 'standard'],
    ['U2100', 'maker'],
    ['B3000', 'reserved'],
    ['C3000', 'reserved'],
  ])('%s: %s', (code, controller) => {
    expect(parseTroubleCode(code)?.controlledBy).toBe(controller);
  });
});

describe('replies to services 03, 07 and 0A', () => {
  it('reads a counted reply on CAN: 43 02 01 02 01 13 (public forum thread, from a vehicle)', () => {
    const reply = readReply(bytes('43 02 01 02 01 13'), 'can');
    expect(reply).toMatchObject({ kind: 'stored', count: 2, warnings: [] });
    expect(reply.codes.map((one) => one.code)).toEqual(['P0102', 'P0113']);
  });

  it('reads an uncounted, padded reply on older buses: 43 01 33 00 00 00 00 (the same thread)', () => {
    const reply = readReply(bytes('43 01 33 00 00 00 00'), 'older');
    expect(reply).toMatchObject({ kind: 'stored', count: null, warnings: [] });
    expect(reply.codes.map((one) => one.code)).toEqual(['P0133']);
  });
});

describe('ISO 14229-1 clause 11.3.5: the worked example with P0A9B-17 (24), P2522-1F (00) and P0805-11 (2F)', () => {
  const stored = [
    ['P0A9B-17', 0x24],
    ['P2522-1F', 0x00],
    ['P0805-11', 0x2f],
  ] as const;

  it('counts one code for mask 08 with the availability 2F: 59 01 2F 01 00 01', () => {
    const reply = readReply(bytes('59 01 2F 01 00 01'), 'can');
    expect(reply).toMatchObject({ kind: 'count', count: 1, availability: 0x2f, codeFormat: 1, warnings: [] });
    expect(stored.filter(([, status]) => matchesStatusMask(status, 0x08, 0x2f))).toHaveLength(1);
  });

  it('lists two codes for mask 84: 59 02 7F 0A 9B 17 24 08 05 11 2F', () => {
    const reply = readReply(bytes('59 02 7F 0A 9B 17 24 08 05 11 2F'), 'can');
    expect(reply).toMatchObject({ kind: 'by-status', count: 2, availability: 0x7f, warnings: [] });
    expect(reply.codes.map((one) => [one.code, one.statusByte?.byte])).toEqual([
      ['P0A9B-17', 0x24],
      ['P0805-11', 0x2f],
    ]);
  });

  it('matches a mask by any bit in common; asking for all bits would find none of them', () => {
    const anyBit = stored.filter(([, status]) => matchesStatusMask(status, 0x84, 0x7f)).map(([code]) => code);
    expect(anyBit).toEqual(['P0A9B-17', 'P0805-11']);
    expect(stored.filter(([, status]) => (status & 0x84) === 0x84)).toEqual([]);
  });

  it('takes 54 for the confirmed clear, and says that it proves nothing', () => {
    const reply = readReply(bytes('54'), 'can');
    expect(reply).toMatchObject({ kind: 'cleared', codes: [] });
    expect(reply.warnings).toHaveLength(1);
  });
});

describe('status bytes (ISO 14229-1 Annex D.2; values computed)', () => {
  const bitNames = [
    'isPresent',
    'hasFailedThisCycle',
    'isPending',
    'isConfirmed',
    'isUnproven',
    'hasFailedSinceClear',
    'isUntestedThisCycle',
    'asksForLamp',
  ] as const;

  it.each([
    ['00', [], 'unknown'],
    ['08', [3], 'history'],
    ['09', [0, 3], 'present'],
    ['24', [2, 5], 'pending'],
    ['2F', [0, 1, 2, 3, 5], 'present'],
    ['50', [4, 6], 'unknown'],
    ['AF', [0, 1, 2, 3, 5, 7], 'present'],
  ])('%s has the bits %j and means %s', (hex, bits, status) => {
    const reading = readStatusByte(Number.parseInt(hex, 16));
    expect(bitNames.flatMap((name, bit) => (reading[name] ? [bit] : []))).toEqual(bits);
    expect(reading.status).toBe(status);
  });

  it('calls a code proved only when it was tested since the clear, did not fail since and does not fail now', () => {
    const proved = Array.from({ length: 256 }, (_, byte) => byte).filter((byte) => readStatusByte(byte).isProved);
    expect(proved).toEqual(Array.from({ length: 256 }, (_, byte) => byte).filter((byte) => (byte & 0b110001) === 0));
    expect(readStatusByte(0x50).isProved).toBe(false);
    expect(readStatusByte(0x24).isProved).toBe(false);
    expect(readStatusByte(0x40).isProved).toBe(true);
  });

  it('calls a code history when it is kept and not failing now', () => {
    expect(readStatusByte(0x08).isHistory).toBe(true);
    expect(readStatusByte(0x09).isHistory).toBe(false);
    expect(readStatusByte(0x24).isHistory).toBe(false);
  });
});
