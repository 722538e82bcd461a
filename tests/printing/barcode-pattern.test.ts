// Barcode patterns decoded again or measured against the widths that the symbologies prescribe.
import { describe, expect, it } from 'vitest';
import { type BarcodePattern, barcodePattern } from '../../app/printing/barcode-pattern.ts';

/** Widths of bars and spaces in turn, in modules, without the quiet zones. */
function elements(pattern: BarcodePattern): number[] {
  const bars = pattern.shapes.map((shape) => {
    const xs = shape.map(([x]) => x);
    return [Math.min(...xs), Math.max(...xs)] as const;
  });
  return bars.flatMap(([left, right], index) => {
    const next = bars[index + 1];
    return next === undefined ? [right - left] : [right - left, next[0] - right];
  });
}

/** Code 39 characters as narrow (0) and wide (1) elements, bar first: the symbology's published table, for the characters used here. */
const code39: Readonly<Record<string, string>> = {
  '000110100': '0',
  '100100001': '1',
  '001100001': '2',
  '100001001': 'A',
  '001001001': 'B',
  '010010100': '*',
};

function decodeCode39(pattern: BarcodePattern): string {
  const widths = elements(pattern);
  let text = '';
  for (let start = 0; start < widths.length; start += 10) {
    const nine = widths.slice(start, start + 9).map((width) => (width === 3 ? '1' : width === 1 ? '0' : '?'));
    text += code39[nine.join('')] ?? '?';
  }
  return text;
}

describe('a barcode', () => {
  it('in Code 39 says what it was given, between its start and stop signs', () => {
    const pattern = barcodePattern('code39', 'AB012');
    expect(pattern && decodeCode39(pattern)).toBe('*AB012*');
  });

  it('in Code 39 is as wide as the symbology says: sixteen modules a character, less the last gap, and ten of quiet on each side', () => {
    expect(barcodePattern('code39', '0LW4BRHC6KA010427')?.width).toBe(19 * 16 - 1 + 20);
  });

  it('in Code 128 has the width of its characters: eleven modules each, thirteen for the stop sign', () => {
    // Start, six characters, check character, stop; no digits in a row that would be packed in pairs.
    expect(barcodePattern('code128', 'F-A4B2')?.width).toBe(8 * 11 + 13 + 20);
  });

  it('begins and ends with its quiet zone', () => {
    for (const symbology of ['code39', 'code128'] as const) {
      const pattern = barcodePattern(symbology, 'F-1042');
      const xs = pattern?.shapes.flatMap((shape) => shape.map(([x]) => x)) ?? [];
      expect(Math.min(...xs)).toBe(10);
      expect(Math.max(...xs)).toBe((pattern?.width ?? 0) - 10);
    }
  });

  it('in Data Matrix holds a VIN in 18 by 18 modules with one of quiet around', () => {
    const pattern = barcodePattern('datamatrix', '0LW4BRHC6KA010427');
    expect(pattern).toMatchObject({ isLinear: false, width: 20, height: 20 });
  });

  it('is none for what its symbology cannot hold', () => {
    expect(barcodePattern('code39', 'é')).toBeNull();
    expect(barcodePattern('code39', 'lower')).toBeNull();
    expect(barcodePattern('code128', 'Ω')).toBeNull();
    expect(barcodePattern('code128', '')).toBeNull();
  });
});
