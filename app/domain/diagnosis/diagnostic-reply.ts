// Reads a module's reply to the services that list or clear trouble codes, from its raw bytes without header and checksum. Never throws:
// what does not fit is a warning, and bytes are never made into codes without saying how they were read.
import { readStatusByte, type StatusByte } from './status-byte.ts';
import { hexByte, isByte, troubleCodeFromBytes } from './trouble-code.ts';

/** 'can' counts the codes in its reply; 'older' (the buses before it) sends three slots a message, padded with zeros. */
export type DiagnosticBus = 'can' | 'older';

export type ReplyCode = {
  /** 'P0133' or 'P0805-11'. */
  readonly code: string;
  /** Only where the reply carries one (service 19). */
  readonly statusByte: StatusByte | null;
};

export type DiagnosticReply = {
  /** 'refused': the module answered that it will not; 'not-understood': nothing was read. */
  readonly kind: 'stored' | 'pending' | 'permanent' | 'by-status' | 'count' | 'cleared' | 'refused' | 'not-understood';
  readonly codes: readonly ReplyCode[];
  /** How many codes the module says there are; null where the reply does not say. */
  readonly count: number | null;
  /** Service 19: which status bits the module supports. */
  readonly availability: number | null;
  /** Service 19 01: the DTCFormatIdentifier of ISO 14229-1. */
  readonly codeFormat: number | null;
  readonly warnings: readonly string[];
};

const nothing: DiagnosticReply = {
  kind: 'not-understood',
  codes: [],
  count: null,
  availability: null,
  codeFormat: null,
  warnings: [],
};

const kindsByFirstByte: ReadonlyMap<number, DiagnosticReply['kind']> = new Map([
  [0x43, 'stored'],
  [0x47, 'pending'],
  [0x4a, 'permanent'],
]);

/** Negative response codes of ISO 14229-1, the common ones, from memory; words are our own. */
const refusals: ReadonlyMap<number, string> = new Map([
  [0x11, 'it does not know this service'],
  [0x12, 'it does not know this part of the service'],
  [0x13, 'the request has the wrong length'],
  [0x22, 'the conditions are not right for it now'],
  [0x31, 'what was asked for is out of range'],
  [0x33, 'access is locked'],
  [0x78, 'it needs more time; the real reply follows'],
  [0x7f, 'not in the session that is active'],
]);

/**
 * Reads one reply: 43, 47, 4A (services 03, 07, 0A of SAE J1979 / ISO 15031-5), 59 01, 59 02, 54 (ISO 14229-1) and 7F. `codeFormat` is
 * the DTCFormatIdentifier known from an earlier 59 01; with 00 the third byte of a code is no failure type (ISO 14229-1 clause 11).
 */
export function readReply(
  bytes: readonly number[],
  bus: DiagnosticBus,
  { codeFormat = null }: { readonly codeFormat?: number | null } = {},
): DiagnosticReply {
  const first = bytes[0];
  if (first === undefined) return { ...nothing, warnings: ['The reply is empty.'] };
  const badIndex = bytes.findIndex((byte) => !isByte(byte));
  if (badIndex >= 0) {
    return { ...nothing, warnings: [`Place ${badIndex + 1} is ${bytes[badIndex]}, which is not a byte (00 to FF).`] };
  }
  const kind = kindsByFirstByte.get(first);
  if (kind !== undefined) return { ...nothing, kind, ...readCodeList(bytes, bus) };
  if (first === 0x59 && bytes[1] === 0x01) return readCodeCount(bytes);
  if (first === 0x59 && bytes[1] === 0x02) return readCodesByStatus(bytes, codeFormat);
  if (first === 0x54) {
    const warnings = [
      'The module confirms the clear. That does not say that there were codes, nor that they stay away.',
    ];
    if (bytes.length > 1) warnings.push(`${bytes.length - 1} more bytes follow that do not belong to this reply.`);
    return { ...nothing, kind: 'cleared', warnings };
  }
  if (first === 0x7f) return readRefusal(bytes);
  return { ...nothing, warnings: [`A reply that begins with ${hexByte(first)} is not one of those read here.`] };
}

type CodeList = Pick<DiagnosticReply, 'codes' | 'count' | 'warnings'>;

function readCodeList(bytes: readonly number[], bus: DiagnosticBus): CodeList {
  const count = bytes[1];
  if (count === undefined) {
    const warning = 'The reply ends after its first byte; without a count this says nothing about codes.';
    return { codes: [], count: null, warnings: [warning] };
  }
  const isCounted = bytes.length === 2 + 2 * count;
  if (bus === 'can') return readCountedList(bytes, count, isCounted);
  // Without a count the bytes after the first come in pairs, so only a counted reply has an even length.
  if (isCounted) {
    const warning = 'The reply carries a count, as on CAN; it was read that way. Check which bus the vehicle has.';
    return { codes: readPairs(bytes, 2).codes, count, warnings: [warning] };
  }
  const { codes, warnings } = readPairs(bytes, 1);
  return { codes, count: null, warnings };
}

function readCountedList(bytes: readonly number[], count: number, isCounted: boolean): CodeList {
  if (isCounted) return { ...readPairs(bytes, 2), count };
  const end = 2 + 2 * count;
  const rest = bytes.slice(end);
  if (bytes.length > end && rest.every((byte) => byte === rest[0])) {
    const warning = `${rest.length} filling bytes (${hexByte(rest[0] ?? 0)}) after the ${count} counted codes were left out. On a bus before CAN this reads otherwise.`;
    const { codes, warnings } = readPairs(bytes.slice(0, end), 2);
    return { codes, count, warnings: [...warnings, warning] };
  }
  const { codes, warnings } = readPairs(bytes, 1);
  const warning = `The count ${count} does not fit the length; the reply was read without a count, as on buses before CAN. Read it again.`;
  return { codes, count: null, warnings: [warning, ...warnings] };
}

/** Pairs of bytes from `start` on; pairs of zeros are padding. */
function readPairs(
  bytes: readonly number[],
  start: number,
): { codes: readonly ReplyCode[]; warnings: readonly string[] } {
  const codes: ReplyCode[] = [];
  const warnings: string[] = [];
  for (let index = start; index < bytes.length; index += 2) {
    const high = bytes[index];
    const low = bytes[index + 1];
    if (high === undefined) break;
    if (low === undefined) {
      warnings.push(`The last byte, ${hexByte(high)}, stands alone and was not read.`);
    } else if (high !== 0 || low !== 0) {
      codes.push({ code: troubleCodeFromBytes(high, low), statusByte: null });
    } else if (start === 2) {
      warnings.push('A counted code is 00 00, which is padding and no code.');
    }
  }
  return { codes, warnings };
}

function readCodeCount(bytes: readonly number[]): DiagnosticReply {
  const [, , availability = null, codeFormat = null, high, low] = bytes;
  if (high === undefined || low === undefined) {
    return { ...nothing, availability, codeFormat, warnings: ['The count of codes is cut off; read it again.'] };
  }
  const warnings = bytes.length > 6 ? [`${bytes.length - 6} more bytes follow that do not belong to this reply.`] : [];
  return { ...nothing, kind: 'count', count: high * 256 + low, availability, codeFormat, warnings };
}

function readCodesByStatus(bytes: readonly number[], codeFormat: number | null): DiagnosticReply {
  const availability = bytes[2];
  if (availability === undefined) {
    return { ...nothing, codeFormat, warnings: ['The reply ends before its status mask; read it again.'] };
  }
  const warnings: string[] = [];
  if (codeFormat === 2 || codeFormat === 3) {
    const warning = `The module writes its codes in another format (${hexByte(codeFormat)}); they are not read as trouble codes.`;
    return { ...nothing, availability, codeFormat, warnings: [warning] };
  }
  const codes: ReplyCode[] = [];
  for (let index = 3; index < bytes.length; index += 4) {
    const [high, low, third, status] = bytes.slice(index, index + 4);
    if (high === undefined || low === undefined || third === undefined || status === undefined) {
      warnings.push(`The last ${bytes.length - index} bytes are no whole code and were not read.`);
      break;
    }
    if (high === 0 && low === 0) {
      warnings.push('A code is 00 00, which is padding; it was left out.');
      continue;
    }
    const code = codeFormat === 0 ? troubleCodeFromBytes(high, low) : troubleCodeFromBytes(high, low, third);
    if ((status & ~availability) !== 0) {
      warnings.push(
        `${code}: status ${hexByte(status)} has bits that the module says it does not support; they were left out.`,
      );
    }
    codes.push({ code, statusByte: readStatusByte(status & availability) });
  }
  return { ...nothing, kind: 'by-status', codes, count: codes.length, availability, codeFormat, warnings };
}

function readRefusal(bytes: readonly number[]): DiagnosticReply {
  const [, service, reason] = bytes;
  if (service === undefined || reason === undefined) {
    return { ...nothing, kind: 'refused', warnings: ['The module refuses, but its reply is cut off.'] };
  }
  const why = refusals.get(reason) ?? 'no words for this reason here';
  return {
    ...nothing,
    kind: 'refused',
    warnings: [`The module refuses service ${hexByte(service)}: ${why} (${hexByte(reason)}).`],
  };
}
