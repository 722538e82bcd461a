// Trouble codes typed or pasted for one module: what is read, what comes back as not understood, and that writing them out reads again.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { plainCode } from '../../../../app/domain/diagnosis/scan.ts';
import { readCodeText } from '../../../../renderer/screens/vehicle/scans/code-text.ts';

const anyText = fc.string({ unit: 'binary', maxLength: 200 });
const codeLikeText = fc.string({ unit: fc.constantFrom(...'PCBUO0123456789AF- \n'), maxLength: 120 });

const codesIn = (text: string) => readCodeText(text).codes.map(({ code }) => code);

describe('reading codes', () => {
  it.each([
    ['P0171 U0140-00', ['P0171', 'U0140-00']],
    ['p0171,u0140', ['P0171', 'U0140']],
    ['P0171\nB1234\r\nC1200', ['P0171', 'B1234', 'C1200']],
    ['P080511', ['P0805-11']],
    ['', []],
    ['   \n ', []],
  ])('takes them separated by spaces, commas or lines: %j', (text, expected) => {
    expect(codesIn(text)).toEqual(expected);
    expect(readCodeText(text).notUnderstood).toEqual([]);
  });

  it('takes a status word after a code, and other words as its description', () => {
    expect(readCodeText('U0140-00 history Lost communication with body module\nP0562').codes).toEqual([
      plainCode('U0140-00', 'history', 'Lost communication with body module'),
      plainCode('P0562', 'present'),
    ]);
  });

  it('takes a code for unproven where it says so after the code or its status', () => {
    expect(readCodeText('P0442 untested small leak, P0171 history untested').codes).toEqual([
      { ...plainCode('P0442', 'unknown', 'small leak'), isUnproven: true },
      { ...plainCode('P0171', 'history'), isUnproven: true },
    ]);
  });

  it('gives back what it does not understand instead of dropping it', () => {
    expect(readCodeText('P01O1 P0171').notUnderstood).toEqual(['P01O1']);
    expect(readCodeText('Body: P0171').notUnderstood).toEqual(['Body:']);
    expect(readCodeText('P0171 voltage P01').notUnderstood).toEqual(['P01']);
    expect(readCodeText('P0000').notUnderstood).toEqual(['P0000']);
  });

  it('never takes a description from one line to the next', () => {
    const reading = readCodeText('P0171\nsystem too lean');
    expect(reading.codes).toEqual([plainCode('P0171', 'present')]);
    expect(reading.notUnderstood).toEqual(['system', 'too', 'lean']);
  });

  it('never throws, and never makes a code that is not in the text', () => {
    fc.assert(
      fc.property(fc.oneof(anyText, codeLikeText), (text) => {
        for (const { code } of readCodeText(text).codes)
          expect(text.toUpperCase().replace(/[^A-Z0-9]/g, '')).toContain(code.replace('-', ''));
      }),
    );
  });
});
