// Tax on the margin and the lower of cost and net realisable value against published and worked figures.
// Layout of the tax: HMRC, VAT margin scheme for second-hand vehicles (1/6 at 20 %); EU Directive 2006/112/EC Art. 315, r/(100+r).
// Value of stock: ASC 330-10-35-1B; the 110/70/20 example is that of an open accounting course.
import { describe, expect, it } from 'vitest';
import { marginTax, roundTax, type SaleTax } from '../../app/domain/money/margin-tax.ts';
import { lowerOfCostAndRealisable } from '../../app/domain/money/net-realisable.ts';

function onMargin(percent: number, rounding: 'nearest' | 'nearest-even' | 'down' = 'nearest'): SaleTax {
  return { kind: 'on-margin', rate: { numerator: percent, denominator: 100 }, rounding };
}

describe('tax on the margin at 20 %, one sixth', () => {
  it.each([
    [5000_00, 6500_00, 1500_00, 250_00],
    [5000_00, 5000_00, 0, 0],
    [5000_00, 4200_00, -800_00, 0],
  ])('bought at %i, sold at %i: margin %i, tax %i', (purchaseCents, sellingCents, marginCents, taxCents) => {
    expect(marginTax(onMargin(20), { purchaseCents, sellingCents })).toEqual({ marginCents, taxCents });
  });

  it('leaves 50.00 of 6,500 after 5,000, repairs of 1,200 and the tax, which the repairs do not lower', () => {
    const { taxCents } = marginTax(onMargin(20), { purchaseCents: 5000_00, sellingCents: 6500_00 });
    expect(6500_00 - 5000_00 - 1200_00 - taxCents).toBe(50_00);
  });
});

describe('the tax within a margin', () => {
  it.each([
    [1190_00, 19, 190_00],
    [1210_00, 21, 210_00],
    [1250_00, 25, 250_00],
    [1000_00, 20, 166_67],
    [1070_00, 7, 70_00],
  ])('of %i at %i %% is %i', (marginCents, percent, taxCents) => {
    expect(marginTax(onMargin(percent), { purchaseCents: 0, sellingCents: marginCents }).taxCents).toBe(taxCents);
  });

  it('is rounded down where the shop has set so', () => {
    const sale = { purchaseCents: 0, sellingCents: 1000_00 };
    expect(marginTax(onMargin(20, 'down'), sale).taxCents).toBe(166_66);
  });

  it('is nothing where no such tax applies', () => {
    expect(marginTax({ kind: 'none' }, { purchaseCents: 1, sellingCents: 900_00 })).toEqual({
      marginCents: null,
      taxCents: 0,
    });
  });
});

describe('rounding', () => {
  it.each([
    // 2.345 and 2.355 in thousandths; the half goes up, or to the even cent
    [2_345n, 2_35, 2_34, 2_34],
    [2_355n, 2_36, 2_36, 2_35],
    // what binary fractions get wrong: 1.005
    [1_005n, 1_01, 1_00, 1_00],
  ])('of %i thousandths is %i half up, %i half even, %i down', (thousandths, up, even, down) => {
    expect(roundTax(thousandths, 10n, 'nearest')).toBe(up);
    expect(roundTax(thousandths, 10n, 'nearest-even')).toBe(even);
    expect(roundTax(thousandths, 10n, 'down')).toBe(down);
  });

  it('refuses to take tax of a negative amount', () => {
    expect(() => roundTax(-1n, 6n, 'nearest')).toThrow('not negative');
  });
});

describe('the lower of cost and net realisable value', () => {
  it('writes 60 down of an item that cost 110, sells at 70 and takes 20 to complete: 6,000 for a hundred', () => {
    const one = lowerOfCostAndRealisable({
      costCents: 110,
      expectedPriceCents: 70,
      toCompleteCents: 20,
      toSellCents: 0,
    });
    expect(one).toEqual({ netRealisableCents: 50, carriedCents: 50, writeDownCents: 60 });
    expect(one.writeDownCents * 100).toBe(6000);
  });

  it('is 85 where 100 is expected, 10 completes and 5 sells', () => {
    const inputs = { costCents: 80, expectedPriceCents: 100, toCompleteCents: 10, toSellCents: 5 };
    expect(lowerOfCostAndRealisable(inputs)).toEqual({ netRealisableCents: 85, carriedCents: 80, writeDownCents: 0 });
  });

  it('warns of 100 on a vehicle that has cost 9,350 and brings 10,000 less 400 of work and 350 of selling', () => {
    const inputs = {
      costCents: 8000_00 + 1200_00 + 150_00,
      expectedPriceCents: 10_000_00,
      toCompleteCents: 400_00,
      toSellCents: 350_00,
    };
    expect(lowerOfCostAndRealisable(inputs)).toEqual({
      netRealisableCents: 9250_00,
      carriedCents: 9250_00,
      writeDownCents: 100_00,
    });
  });

  it('never carries less than nothing', () => {
    const inputs = { costCents: 500, expectedPriceCents: 100, toCompleteCents: 300, toSellCents: 0 };
    expect(lowerOfCostAndRealisable(inputs)).toMatchObject({ carriedCents: 0, writeDownCents: 500 });
  });
});
