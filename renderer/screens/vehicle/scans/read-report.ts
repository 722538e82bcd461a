// Reads a report, and remembers the last one: a form asks for the same text again with every letter typed elsewhere in it.
import type { ScannerTextReading } from '../../../../app/domain/diagnosis/scanner-reading.ts';
import { findTroubleCodes } from '../../../../app/domain/diagnosis/scanner-text.ts';

let last: { readonly text: string; readonly reading: ScannerTextReading } | null = null;

export function readReport(text: string): ScannerTextReading {
  if (last?.text !== text) last = { text, reading: findTroubleCodes(text) };
  return last.reading;
}
