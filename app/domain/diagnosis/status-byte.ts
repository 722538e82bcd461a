// The status byte that a module gives with each trouble code (ISO 14229-1 Annex D.2): what it says about now, the past and proof.
import type { ScanCodeStatus } from './scan.ts';

export type StatusByte = {
  readonly byte: number;
  /** Bit 0: failing at the latest test. */
  readonly isPresent: boolean;
  /** Bit 3 without bit 0: kept in memory, not failing at the latest test. */
  readonly isHistory: boolean;
  /** Bit 4: not tested since the codes were cleared, so its silence proves nothing. */
  readonly isUnproven: boolean;
  /** Bits 4, 0 and 5 all off: tested since the clear and never failed. */
  readonly isProved: boolean;
  /** Bit 2: failed in this or the last completed cycle. */
  readonly isPending: boolean;
  /** Bit 3: mature, worth storing. */
  readonly isConfirmed: boolean;
  /** Bit 1. */
  readonly hasFailedThisCycle: boolean;
  /** Bit 5. */
  readonly hasFailedSinceClear: boolean;
  /** Bit 6. */
  readonly isUntestedThisCycle: boolean;
  /** Bit 7: asks for the warning lamp. */
  readonly asksForLamp: boolean;
  /** The same in the words that the record keeps. */
  readonly status: ScanCodeStatus;
};

/** `byte` is 0 to 255; higher bits are ignored. ISO 14229-1 Annex D.2; the words present, history and unproven are our own. */
export function readStatusByte(byte: number): StatusByte {
  const has = (mask: number) => (byte & mask) !== 0;
  return {
    byte: byte & 0xff,
    isPresent: has(0x01),
    isHistory: has(0x08) && !has(0x01),
    isUnproven: has(0x10),
    isProved: !has(0x10 | 0x01 | 0x20),
    isPending: has(0x04),
    isConfirmed: has(0x08),
    hasFailedThisCycle: has(0x02),
    hasFailedSinceClear: has(0x20),
    isUntestedThisCycle: has(0x40),
    asksForLamp: has(0x80),
    status: has(0x01) ? 'present' : has(0x08) ? 'history' : has(0x04) ? 'pending' : 'unknown',
  };
}

/** True when status and mask have any bit in common that the module supports (ISO 14229-1 clause 11). Not "all bits of the mask". */
export function matchesStatusMask(status: number, mask: number, availability = 0xff): boolean {
  return (status & mask & availability) !== 0;
}
