// Tax on the sale of a vehicle: none, or on the dealer's margin. No advice: which scheme applies is for the shop and its adviser.
import { z } from 'zod';
import { type Cents, checkCents } from '../shared/cents.ts';

export const taxRoundingSchema = z.enum(['nearest', 'nearest-even', 'down']);
export type TaxRounding = z.infer<typeof taxRoundingSchema>;

/**
 * The rate is an exact fraction of the price without tax: 20 % is 20/100, which takes 20/120 = 1/6 of the margin. Rounding is a setting:
 * HMRC Notice 700, 17.5 lets invoice traders round down, yet an invoice under the margin scheme shows no tax, so nearest is offered first
 * (common practice, no source).
 */
export const saleTaxSchema = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('none') }),
  z.strictObject({
    kind: z.literal('on-margin'),
    rate: z.strictObject({ numerator: z.int().min(0).max(1_000_000), denominator: z.int().min(1).max(1_000_000) }),
    rounding: taxRoundingSchema,
  }),
]);
export type SaleTax = z.infer<typeof saleTaxSchema>;

/**
 * `numerator / denominator` in whole cents. 'nearest': halves away from zero; 'nearest-even': halves to the even cent; 'down': towards
 * zero. For amounts that are not negative.
 * @throws on a negative numerator or a denominator that is not positive.
 */
export function roundTax(numerator: bigint, denominator: bigint, rounding: TaxRounding): Cents {
  if (numerator < 0n || denominator <= 0n) throw new Error('A tax is a part of an amount that is not negative.');
  const whole = numerator / denominator;
  const twiceLeft = 2n * (numerator % denominator);
  const isUp =
    rounding !== 'down' &&
    (twiceLeft > denominator || (twiceLeft === denominator && (rounding === 'nearest' || whole % 2n === 1n)));
  return checkCents(Number(isUp ? whole + 1n : whole));
}

export type SaleForTax = {
  /** Everything received for the vehicle, charges linked to it included. */
  readonly sellingCents: Cents;
  /** Everything paid to get the vehicle. Repairs, parts and other later costs never belong in it. */
  readonly purchaseCents: Cents;
};

export type MarginTax = {
  /** Selling less purchase price; negative for a loss. Null where no tax is on the margin. */
  readonly marginCents: Cents | null;
  readonly taxCents: Cents;
};

/**
 * Tax contained in the margin: margin × r / (1 + r), rounded once; nil for a loss or no margin, and the loss lowers no other vehicle's
 * tax. Sources: EU Directive 2006/112/EC Art. 313 and 315; HMRC, VAT margin scheme for second-hand vehicles (individual scheme); that
 * a loss is not set off: from memory.
 */
export function marginTax(tax: SaleTax, { sellingCents, purchaseCents }: SaleForTax): MarginTax {
  if (tax.kind === 'none') return { marginCents: null, taxCents: 0 };
  const marginCents = checkCents(sellingCents - purchaseCents);
  if (marginCents <= 0) return { marginCents, taxCents: 0 };
  const { numerator, denominator } = tax.rate;
  const inMargin = BigInt(marginCents) * BigInt(numerator);
  return { marginCents, taxCents: roundTax(inMargin, BigInt(denominator + numerator), tax.rounding) };
}
