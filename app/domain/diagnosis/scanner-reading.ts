// What reading pasted scanner text gives: modules, their codes, and the use that was found for every line. Data only.
import type { ScanCodeStatus } from './scan.ts';

export type FoundCode = {
  /** 'P0301' or 'P0301-11'. */
  readonly code: string;
  readonly status: ScanCodeStatus;
  /** The words in the text that gave the status; '' when none did. */
  readonly statusText: string;
  /** Where the text gives one, labelled as a status. */
  readonly statusByte: number | null;
  /** The status byte or the words say that its test has not run since the clear. */
  readonly isUnproven: boolean;
  /** What else stands beside the code, at most 160 characters; the whole line is in `lines`. */
  readonly words: string;
  /** Counted from 1. */
  readonly lineNumber: number;
  /** True when the code was read through a slip such as O for 0: show `originalText` and ask. */
  readonly wasCorrected: boolean;
  readonly originalText: string;
};

export type FoundModule = {
  /** As in the text; '' when the text names none. */
  readonly name: string;
  /** False: the text says that it did not answer. */
  readonly answered: boolean;
  readonly codes: readonly FoundCode[];
  readonly lineNumber: number;
};

export type LineUse =
  | 'blank'
  | 'module'
  | 'code'
  | 'detail'
  | 'silent'
  | 'no-codes'
  | 'status-heading'
  | 'column-heading'
  | 'not-understood';

export type ReadLine = { readonly lineNumber: number; readonly text: string; readonly use: LineUse };

export type ScannerTextReading = {
  readonly modules: readonly FoundModule[];
  /** Every line of the text once, in order. A line without a letter or digit is blank. */
  readonly lines: readonly ReadLine[];
  /** The lines whose use is 'not-understood', to show beside the result. */
  readonly notUnderstood: readonly ReadLine[];
};
