// What always holds for tax on the margin. Published figures are in tests/reference.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { marginTax, saleTaxSchema, taxRoundingSchema } from '../../../app/domain/money/margin-tax.ts';
import { lowerOfCostAndRealisable, stockCostCents } from '../../../app/domain/money/net-realisable.ts';

const price = fc.nat({ max: 9_000_000 });

describe('tax on the margin', () => {
  it('is never negative, never more than the margin, and never less when the selling price is higher', () => {
    const rate = fc.record({ numerator: fc.nat({ max: 100 }), denominator: fc.constant(100) });
    const rounding = fc.constantFrom(...taxRoundingSchema.options);
    fc.assert(
      fc.property(
        rate,
        rounding,
        price,
        price,
        fc.nat({ max: 5000 }),
        (ofRate, how, purchaseCents, sellingCents, more) => {
          const tax = { kind: 'on-margin', rate: ofRate, rounding: how } as const;
          const { taxCents } = marginTax(tax, { purchaseCents, sellingCents });
          expect(taxCents).toBeGreaterThanOrEqual(0);
          expect(taxCents).toBeLessThanOrEqual(Math.max(0, sellingCents - purchaseCents));
          const dearer = marginTax(tax, { purchaseCents, sellingCents: sellingCents + more });
          expect(dearer.taxCents).toBeGreaterThanOrEqual(taxCents);
        },
      ),
    );
  });

  it('is set with a rate that can be divided by, or not at all', () => {
    const setting = { kind: 'on-margin', rate: { numerator: 20, denominator: 0 }, rounding: 'nearest' };
    expect(saleTaxSchema.safeParse(setting).success).toBe(false);
    expect(saleTaxSchema.safeParse({ kind: 'none' }).success).toBe(true);
  });
});

describe('stock', () => {
  it('is carried at no more than its cost and no more than it brings', () => {
    fc.assert(
      fc.property(price, price, price, price, (costCents, expectedPriceCents, toCompleteCents, toSellCents) => {
        const value = lowerOfCostAndRealisable({ costCents, expectedPriceCents, toCompleteCents, toSellCents });
        expect(value.carriedCents).toBeLessThanOrEqual(costCents);
        expect(value.carriedCents).toBeLessThanOrEqual(Math.max(0, value.netRealisableCents));
        expect(value.carriedCents + value.writeDownCents).toBe(costCents);
      }),
    );
  });

  it('costs what was paid to get it and to put it right, without interest and lot cost', () => {
    expect(stockCostCents({ acquisitionCents: 8370_00, reconditioningCents: 1295_00 })).toBe(9665_00);
  });
});
