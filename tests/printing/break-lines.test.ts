// Where lines break, and that no text loses a character or runs past its width.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { breakLines } from '../../app/printing/break-lines.ts';

/** Every character is one wide. */
const measure = (text: string) => [...text.trimEnd()].length;
const trimmed = (text: string, width: number) => breakLines(text, width, measure).map((line) => line.trimEnd());

describe('breaking lines', () => {
  it('fills each line with as many words as fit', () => {
    expect(trimmed('one two three four', 9)).toEqual(['one two', 'three', 'four']);
  });

  it('keeps a space at the end of a line that ends between words, and none inside a word', () => {
    expect(breakLines('ab cdefgh', 4, measure)).toEqual(['ab ', 'cdef', 'gh ']);
  });

  it('breaks after hyphens and slashes where it helps', () => {
    expect(trimmed('LW-BCM-20417-C', 8)).toEqual(['LW-BCM-', '20417-C']);
  });

  it('keeps line breaks of the text and makes one empty line of several', () => {
    expect(trimmed('a\nb\r\n\r\n\r\nc', 10)).toEqual(['a', 'b', '', 'c']);
  });

  it('holds words together that are joined by a no-break space', () => {
    expect(trimmed('aaa 12\u00a0km', 6)).toEqual(['aaa', '12\u00a0km']);
  });

  it('never parts an accent from its letter', () => {
    expect(trimmed('e\u0301e\u0301e\u0301', 2)).toEqual(['e\u0301', 'e\u0301', 'e\u0301']);
  });

  it('has no lines for nothing', () => {
    expect(breakLines(' \n ', 10, measure)).toEqual([]);
  });

  it('loses no character and exceeds no width, whatever the text', () => {
    fc.assert(
      fc.property(
        fc.string({ unit: 'grapheme-ascii', maxLength: 200 }),
        fc.integer({ min: 1, max: 30 }),
        (text, width) => {
          const lines = breakLines(text, width, measure);
          expect(lines.join('').replace(/\s/g, '')).toBe(text.replace(/\s/g, ''));
          for (const line of lines) expect(measure(line)).toBeLessThanOrEqual(width);
        },
      ),
    );
  });
});
