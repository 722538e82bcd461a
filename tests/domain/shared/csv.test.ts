// Comma-separated values by RFC 4180, section 2: the rules by number, and reading back what was written.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { csvText } from '../../../app/domain/shared/csv.ts';

/** A reader for this test, straight from the grammar of RFC 4180. */
function readCsv(text: string): string[][] {
  const rows: string[][] = [];
  let row: string[] = [];
  let at = 0;
  while (at < text.length) {
    let cell = '';
    if (text[at] === '"') {
      for (at += 1; ; at += 1) {
        if (text[at] === '"' && text[at + 1] === '"') at += 1;
        else if (text[at] === '"') break;
        cell += text[at];
      }
      at += 1;
    } else while (at < text.length && text[at] !== ',' && text[at] !== '\r') cell += text[at++];
    row.push(cell);
    if (text[at] === ',') at += 1;
    else {
      at += 2;
      rows.push(row);
      row = [];
    }
  }
  return rows;
}

describe('comma-separated values', () => {
  it('end each record with CRLF and separate fields by commas', () => {
    expect(
      csvText([
        ['a', 1],
        ['b', null],
      ]),
    ).toBe('a,1\r\nb,\r\n');
  });

  it('quote fields with commas, quotes and line breaks, and double the quotes inside', () => {
    expect(csvText([['a,b', 'say "no"', 'two\nlines', 'plain']])).toBe('"a,b","say ""no""","two\nlines",plain\r\n');
  });

  it('keep a spreadsheet from running text as a formula, and leave negative numbers alone', () => {
    expect(csvText([['=1+1', '@here', -12.5]])).toBe("'=1+1,'@here,-12.5\r\n");
  });

  it('read back as what was written, whatever was written', () => {
    const cell = fc.string({ unit: fc.constantFrom('a', '1', ',', '"', '\n', ' ', 'é') });
    fc.assert(
      fc.property(fc.array(fc.array(cell, { minLength: 2, maxLength: 4 }), { minLength: 1, maxLength: 5 }), (rows) => {
        expect(readCsv(csvText(rows))).toEqual(rows);
      }),
    );
  });
});
