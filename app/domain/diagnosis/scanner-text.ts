// Finds control modules and trouble codes in text pasted from any scanner. Never throws, never makes up a code, and gives every line of
// the text a use, so that what was not understood can be shown beside what was. A person corrects the result before it is kept.
import { ScannerTextReader } from './scanner-reader.ts';
import type { ScannerTextReading } from './scanner-reading.ts';

/**
 * Reads pasted text in any of the languages of scanner-words.ts. Codes stand in the text letter for letter, or are flagged as read
 * through a slip of text recognition. How the lines are read is common sense about lists and tables, with no source.
 */
export function findTroubleCodes(text: string): ScannerTextReading {
  return new ScannerTextReader(text).read();
}
