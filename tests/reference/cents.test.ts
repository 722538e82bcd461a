// Money in whole cents: rounding against computed and published figures, and reading what people type.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  centsSchema,
  checkCents,
  largestEntryCents,
  positiveCentsSchema,
  readCents,
  roundToCents,
  showCents,
  sumCents,
} from '../../app/domain/shared/cents.ts';

const amount = fc.integer({ min: -largestEntryCents, max: largestEntryCents });

describe('rounding to a whole cent, halves away from zero', () => {
  // Computed: the half-up column of half-up against half-even. 2.345 is what tells them apart.
  it.each([
    [2345n, 235, '2.345'],
    [2355n, 236, '2.355'],
    [1005n, 101, '1.005, which binary fractions round to 1.00'],
    [1004n, 100, '1.004'],
    [5n, 1, '0.005'],
    [4n, 0, '0.004'],
    [-5n, -1, '-0.005'],
    [-2345n, -235, '-2.345'],
    [-4n, 0, '-0.004, without a minus sign left on the zero'],
  ])('%s thousandths of the main unit give %s cents (%s)', (thousandths, cents) => {
    expect(Object.is(roundToCents(thousandths, 10n), cents)).toBe(true);
  });

  it('shows why: the same value as a binary fraction loses the cent', () => {
    expect(Math.round(1.005 * 100)).toBe(100);
  });

  // Tax inside a price, amount × r/(100 + r), Directive 2006/112/EC Art. 315 and HMRC Notice 718/1 (one sixth); values computed.
  it.each([
    [119_000, 19, 19_000],
    [121_000, 21, 21_000],
    [125_000, 25, 25_000],
    [100_000, 20, 16_667],
    [107_000, 7, 7_000],
    [150_000, 20, 25_000],
  ])('the tax in a margin of %i cents at %i %% is %i cents', (margin, rate, tax) => {
    expect(roundToCents(BigInt(margin) * BigInt(rate), BigInt(100 + rate))).toBe(tax);
  });

  // Simple interest on 10,000.00 at 8 %; values computed.
  it.each([
    [60n, 365n, 13_151],
    [60n, 360n, 13_333],
    [90n, 365n, 19_726],
    [90n, 360n, 20_000],
    [2n, 365n, 438],
    [2n, 360n, 444],
    [1n, 365n, 219],
    [122n, 365n, 26_740],
    [122n, 360n, 27_111],
  ])('%s days over %s give %i cents of interest', (days, year, interest) => {
    expect(roundToCents(1_000_000n * 8n * days, 100n * year)).toBe(interest);
  });

  it('is never more than half a cent away, and treats minus like plus', () => {
    fc.assert(
      fc.property(
        fc.bigInt({ min: -(10n ** 14n), max: 10n ** 14n }),
        fc.bigInt({ min: 1n, max: 10n ** 6n }),
        (top, bottom) => {
          const rounded = BigInt(roundToCents(top, bottom));
          const twiceError = 2n * (rounded * bottom - top);
          expect(twiceError <= bottom && twiceError >= -bottom).toBe(true);
          expect(roundToCents(-top, bottom)).toBe(0 - roundToCents(top, bottom));
        },
      ),
    );
  });

  it('refuses a denominator that is zero or negative', () => {
    expect(() => roundToCents(1n, 0n)).toThrow();
    expect(() => roundToCents(1n, -3n)).toThrow();
  });
});

describe('the guard', () => {
  it.each([0.1 + 0.2, 1.5, Number.NaN, Number.POSITIVE_INFINITY, 2 ** 53])('refuses %s as an amount', (number) => {
    expect(() => checkCents(number)).toThrow('Not a whole number of cents');
    expect(centsSchema.safeParse(number).success).toBe(false);
  });

  it('leaves no minus sign on a zero', () => {
    expect(Object.is(checkCents(-0), 0)).toBe(true);
    expect(Object.is(sumCents([5, -5]), 0)).toBe(true);
  });

  it('limits one entry, and refuses a negative one where only positive ones make sense', () => {
    expect(centsSchema.safeParse(largestEntryCents).success).toBe(true);
    expect(centsSchema.safeParse(largestEntryCents + 1).success).toBe(false);
    expect(positiveCentsSchema.safeParse(-1).success).toBe(false);
  });

  it('sums exactly, in any order', () => {
    fc.assert(
      fc.property(fc.array(amount, { maxLength: 200 }), (amounts) => {
        const exact = amounts.reduce((total, one) => total + BigInt(one), 0n);
        expect(BigInt(sumCents(amounts))).toBe(exact);
        expect(sumCents(amounts.toReversed())).toBe(sumCents(amounts));
      }),
    );
    expect(() => sumCents([Number.MAX_SAFE_INTEGER, 1])).toThrow();
  });
});

describe('reading what a person types', () => {
  it.each([
    ['1,250.50', 125_050],
    ['1.250,50', 125_050],
    ['1250,5', 125_050],
    ['1250.5', 125_050],
    ['1 250', 125_000],
    ["1'250.50", 125_050],
    ['1\u202f250,50', 125_050],
    ['1,250', 125_000],
    ['1.250', 125_000],
    ['1,250,000', 125_000_000],
    ['1.250.000,5', 125_000_050],
    ['-12', -1200],
    ['\u221212.30', -1230],
    ['0', 0],
    ['-0', 0],
    ['0.05', 5],
    ['12.', 1200],
  ])('reads %j as %i cents', (text, cents) => {
    expect(Object.is(readCents(text), cents)).toBe(true);
  });

  it.each([
    '',
    '-',
    'abc',
    '12a',
    '1,2,3',
    '1.2345',
    '12,34,567',
    '1,250,50',
    '1,250.500',
    '1.250,500',
    '0.005',
    '0,500',
    '--5',
    '5-',
    '1e3',
    '99999999999999',
    '100,000,000.01',
  ])('refuses %j instead of guessing', (text) => {
    expect(readCents(text)).toBeNull();
  });

  it('reads back what it shows', () => {
    fc.assert(
      fc.property(amount, (cents) => {
        expect(readCents(showCents(cents))).toBe(cents);
      }),
    );
  });

  it.each([
    [0, '0.00'],
    [5, '0.05'],
    [99_999, '999.99'],
    [100_000, '1,000.00'],
    [-123_456_789, '\u22121,234,567.89'],
  ])('shows %i cents as %s', (cents, text) => {
    expect(showCents(cents)).toBe(text);
  });
});
