// The four parts of the shop's settings as a form holds them, and what the schemas have against them. Pure.
import { z } from 'zod';
import {
  type Check,
  checkSchema,
  type Dealer,
  dealerSchema,
  type Person,
  personSchema,
  type Rates,
  ratesSchema,
  type Shop,
} from '../../app/domain/fleet/shop.ts';
import type { ChangeProblem } from '../../app/domain/vehicle/change-problem.ts';

export const shopParts = ['dealer', 'rates', 'people', 'checklist'] as const;
export type ShopPartName = (typeof shopParts)[number];

/** The rates while they are typed: an amount may be blank. */
export type TypedRates = Omit<Rates, 'labourCentsPerHour' | 'fundingRatePpm' | 'overheadCentsPerDay'> & {
  readonly labourCentsPerHour: number | null;
  readonly fundingRatePpm: number | null;
  readonly overheadCentsPerDay: number | null;
};

export type ShopDrafts = {
  readonly dealer: Dealer | null;
  readonly rates: TypedRates | null;
  readonly people: readonly Person[] | null;
  readonly checklist: readonly Check[] | null;
};

export const noDrafts: ShopDrafts = { dealer: null, rates: null, people: null, checklist: null };

export const partSchemas = {
  dealer: dealerSchema,
  rates: ratesSchema,
  people: z.array(personSchema).min(1).max(60),
  checklist: z.array(checkSchema).max(60),
} as const;

/** True when what was typed differs from what is kept. */
export function isPartTouched(part: ShopPartName, drafts: ShopDrafts, shop: Shop): boolean {
  const draft = drafts[part];
  return draft !== null && JSON.stringify(draft) !== JSON.stringify(shop[part]);
}

/** Problems as they come over the bridge, with their fields named from inside the part: 'change.value.0.name' and 'people.0.name' are '0.name'. */
export function problemsInside(part: ShopPartName, problems: readonly ChangeProblem[]): readonly ChangeProblem[] {
  return problems.map(({ field, sentence }) => ({
    field: field.replace(/^change\.value(\.|$)/, '').replace(new RegExp(`^${part}(\\.|$)`), ''),
    sentence,
  }));
}

/** A new list with the entry at `from` moved to `to`; the same list when it cannot move there. */
export function withMoved<Entry>(entries: readonly Entry[], from: number, to: number): readonly Entry[] {
  const entry = entries[from];
  if (entry === undefined || to < 0 || to >= entries.length || from === to) return entries;
  const rest = entries.filter((_, index) => index !== from);
  return [...rest.slice(0, to), entry, ...rest.slice(to)];
}
