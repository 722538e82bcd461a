// Bytes as people type them, and the codes that a reply puts into the form.
import { describe, expect, it } from 'vitest';
import { readReply } from '../../../../app/domain/diagnosis/diagnostic-reply.ts';
import { codesOfReply, readBytes } from '../../../../renderer/screens/vehicle/scans/raw-bytes.ts';

const codes = (text: string) => {
  const read = readBytes(text);
  if (!read.ok) throw new Error(read.token);
  return codesOfReply(readReply(read.bytes, 'can')).map(({ code, status, statusByte, isUnproven }) => ({
    code,
    status,
    statusByte,
    isUnproven,
  }));
};

describe('bytes', () => {
  it.each(['43 02 01 33', '43,02,01,33', '0x43 0x02 0x01 0x33', '43020133', '43-02-01-33', ' 43\n0201 33 '])(
    'are read from %j',
    (text) => {
      expect(readBytes(text)).toEqual({ ok: true, bytes: [0x43, 0x02, 0x01, 0x33] });
    },
  );

  it.each([
    ['43 0G', '0G'],
    ['43 1', '1'],
    ['43 012', '012'],
  ])('are refused in %j with the piece that is none', (text, token) => {
    expect(readBytes(text)).toEqual({ ok: false, token });
  });

  it('may be missing', () => {
    expect(readBytes('  ')).toEqual({ ok: true, bytes: [] });
  });
});

describe('codes of a reply', () => {
  it('that are stored have no known status: confirmed says nothing about now', () => {
    expect(codes('43 02 01 02 01 13')).toMatchObject([
      { code: 'P0102', status: 'unknown', statusByte: null },
      { code: 'P0113', status: 'unknown', statusByte: null },
    ]);
  });

  it('are pending or permanent by their service', () => {
    expect(codes('47 01 01 33')).toMatchObject([{ code: 'P0133', status: 'pending' }]);
    expect(codes('4A 01 01 33')).toMatchObject([{ code: 'P0133', status: 'permanent' }]);
  });

  it('carry the status byte of service 19 (ISO 14229-1 clause 11, example with mask 84)', () => {
    expect(codes('59 02 7F 0A 9B 17 24 08 05 11 2F')).toEqual([
      { code: 'P0A9B-17', status: 'pending', statusByte: 0x24, isUnproven: false },
      { code: 'P0805-11', status: 'present', statusByte: 0x2f, isUnproven: false },
    ]);
    expect(codes('59 02 7F 08 05 11 50')).toMatchObject([{ status: 'unknown', isUnproven: true }]);
  });
});
