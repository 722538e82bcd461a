// Amounts in whole units of the currency, for columns where the cents are noise. Pure; the exact amount belongs in the tip.
import { type Cents, roundToCents, showCents } from '../../app/domain/shared/cents.ts';

/** '1,250' for 124,950 cents: rounded by the program's one rounding rule. */
export function showWholeUnits(cents: Cents): string {
  const units = roundToCents(BigInt(cents), 100n);
  return showCents(units * 100).replace(/\.00$/, '');
}
