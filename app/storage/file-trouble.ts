// What the person is told about a file that could not be used: which, why, where it is now, and what can be done.
import type { RecordFaultKind } from './record-file.ts';

export type FileTroubleKind = RecordFaultKind | 'doubled' | 'cannot-read' | 'missing';

export type LastGoodCopy = {
  /** Null: the file that was put aside reads well itself. */
  readonly backupId: string | null;
  readonly savedAt: string;
  readonly revision: number;
};

export type FileTrouble = {
  /** Names this trouble in `restoreLastGood` and `settleTrouble`. */
  readonly id: string;
  /** Path inside the fleet folder, with '/'. */
  readonly fileName: string;
  readonly kind: FileTroubleKind;
  readonly reason: string;
  /** The vehicle concerned; null for the shop's settings and for files whose name says nothing. */
  readonly vehicleId: string | null;
  /** Path inside the fleet folder; null when the file was left where it is (or is missing). */
  readonly quarantinedAs: string | null;
  readonly lastGoodCopy: LastGoodCopy | null;
};

/** A file that was found bad while reading, before anything was done about it. */
export type BadFile = { readonly fileName: string; readonly kind: FileTroubleKind; readonly reason: string };

/** Left where they are: the next version of the program, or a desk with the right to read them, can use them as they stand. */
export function isLeftInPlace(kind: FileTroubleKind): boolean {
  return kind === 'newer-version' || kind === 'cannot-read' || kind === 'migration-failed' || kind === 'missing';
}
