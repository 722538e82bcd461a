// The parts of the shop's settings as a form holds them, and what the schemas have against them. Pure.
import { z } from 'zod';
import { type CodeKindFacts, codeKindsSchema } from '../../app/domain/codes/code-kinds.ts';
import { type FilingRule, filingRulesSchema } from '../../app/domain/codes/filing-limit.ts';
import { type InspectionSettings, inspectionSettingsSchema } from '../../app/domain/diagnosis/inspection-schemes.ts';
import { type SupportRange, supportRangesSchema } from '../../app/domain/diagnosis/support-voltage.ts';
import { type AgeingBands, ageingBandsSchema } from '../../app/domain/fleet/ageing.ts';
import {
  type Check,
  checkSchema,
  type Dealer,
  daysUntilCodesAreDestroyedSchema,
  dealerSchema,
  fundingPlansSchema,
  type Person,
  personSchema,
  type Rates,
  ratesSchema,
  rulePacksSchema,
  type SellingTerms,
  type Shop,
  sellingTermsSchema,
} from '../../app/domain/fleet/shop.ts';
import { type SaleTax, saleTaxSchema } from '../../app/domain/money/margin-tax.ts';
import { type ValueLossCurve, valueLossCurveSchema } from '../../app/domain/money/value-loss.ts';
import { type SignInRules, signInRulesSchema } from '../../app/domain/people/sign-in.ts';
import { type TurnaroundSettings, turnaroundSettingsSchema } from '../../app/domain/time/turnaround-settings.ts';
import { type WorkingCalendar, workingCalendarSchema } from '../../app/domain/time/working-calendar.ts';
import type { ChangeProblem } from '../../app/domain/vehicle/change-problem.ts';

export const shopParts = [
  'dealer',
  'rates',
  'people',
  'checklist',
  'rulePacks',
  'fundingPlans',
  'saleTax',
  'selling',
  'calendar',
  'turnaround',
  'ageingBands',
  'valueLoss',
  'inspection',
  'supportRanges',
  'signIn',
  'codeKinds',
  'filingRules',
  'daysUntilCodesAreDestroyed',
] as const;
export type ShopPartName = (typeof shopParts)[number];

/** A part of the settings while it is typed: any number in it may be blank. */
export type Blankable<Value> = Value extends number
  ? number | null
  : Value extends readonly (infer Entry)[]
    ? readonly Blankable<Entry>[]
    : Value extends object
      ? { readonly [Field in keyof Value]: Blankable<Value[Field]> }
      : Value;

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
  readonly rulePacks: Shop['rulePacks'] | null;
  readonly fundingPlans: Blankable<Shop['fundingPlans']> | null;
  readonly saleTax: Blankable<SaleTax> | null;
  readonly selling: SellingTerms | null;
  readonly calendar: Blankable<WorkingCalendar> | null;
  readonly turnaround: Blankable<TurnaroundSettings> | null;
  readonly ageingBands: Blankable<AgeingBands> | null;
  readonly valueLoss: Blankable<ValueLossCurve> | null;
  readonly inspection: Blankable<InspectionSettings> | null;
  readonly supportRanges: Blankable<readonly SupportRange[]> | null;
  readonly signIn: Blankable<SignInRules> | null;
  readonly codeKinds: Blankable<readonly CodeKindFacts[]> | null;
  readonly filingRules: Blankable<readonly FilingRule[]> | null;
  /** Null: not touched; empty while blank. */
  readonly daysUntilCodesAreDestroyed: number | '' | null;
};

export const noDrafts: ShopDrafts = {
  dealer: null,
  rates: null,
  people: null,
  checklist: null,
  rulePacks: null,
  fundingPlans: null,
  saleTax: null,
  selling: null,
  calendar: null,
  turnaround: null,
  ageingBands: null,
  valueLoss: null,
  inspection: null,
  supportRanges: null,
  signIn: null,
  codeKinds: null,
  filingRules: null,
  daysUntilCodesAreDestroyed: null,
};

/** Empty lines between holidays are nothing wrong, and their order is nobody's business. */
function tidyCalendar(value: unknown): unknown {
  if (typeof value !== 'object' || value === null || !('holidays' in value) || !Array.isArray(value.holidays))
    return value;
  const days = value.holidays.map((day) => String(day).trim()).filter((day) => day !== '');
  return { ...value, holidays: [...new Set(days)].sort() };
}

export const partSchemas = {
  dealer: dealerSchema,
  rates: ratesSchema,
  people: z.array(personSchema).min(1).max(60),
  checklist: z.array(checkSchema).max(60),
  rulePacks: rulePacksSchema,
  fundingPlans: fundingPlansSchema,
  saleTax: saleTaxSchema,
  selling: sellingTermsSchema,
  calendar: z.preprocess(tidyCalendar, workingCalendarSchema),
  turnaround: turnaroundSettingsSchema,
  ageingBands: ageingBandsSchema,
  valueLoss: valueLossCurveSchema,
  inspection: inspectionSettingsSchema,
  supportRanges: supportRangesSchema,
  signIn: signInRulesSchema,
  codeKinds: codeKindsSchema,
  filingRules: filingRulesSchema,
  daysUntilCodesAreDestroyed: daysUntilCodesAreDestroyedSchema,
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
