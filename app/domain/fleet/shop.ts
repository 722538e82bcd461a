// The shop's own settings: who the dealer is, its rates and money terms, its people, checklist and calendar. One record in the fleet folder.
import { z } from 'zod';
import { codeKindsSchema } from '../codes/code-kinds.ts';
import { filingRulesSchema } from '../codes/filing-limit.ts';
import { inspectionSettingsSchema } from '../diagnosis/inspection-schemes.ts';
import { supportRangesSchema } from '../diagnosis/support-voltage.ts';
import { fundingPlanSchema } from '../money/funding-plan.ts';
import { saleTaxSchema } from '../money/margin-tax.ts';
import { valueLossCurveSchema } from '../money/value-loss.ts';
import { signInRulesSchema } from '../people/sign-in.ts';
import { rulePackSchema } from '../programming/rule-pack.ts';
import { positiveCentsSchema } from '../shared/cents.ts';
import { daySchema } from '../shared/day.ts';
import { identifierSchema } from '../shared/identifier.ts';
import { dayFormSchema } from '../shared/show-day.ts';
import { filledLineSchema, lineSchema, paragraphSchema } from '../shared/text.ts';
import { turnaroundSettingsSchema } from '../time/turnaround-settings.ts';
import { workingCalendarSchema } from '../time/working-calendar.ts';
import { marketSchema } from '../vehicle/market.ts';
import { workTouchSchema } from '../work/work-area.ts';
import { ageingBandsSchema } from './ageing.ts';

export const roleSchema = z.enum(['manager', 'technician', 'sales']);
export type Role = z.infer<typeof roleSchema>;

export const dealerSchema = z.strictObject({
  name: filledLineSchema(80),
  address: paragraphSchema(300),
  phone: lineSchema(40),
  market: marketSchema,
  /** ISO 4217 code, three letters. */
  currency: z.string().regex(/^[A-Z]{3}$/, 'Three capital letters, for example USD or EUR.'),
  distanceUnit: z.enum(['km', 'mi']),
  /** How days are written on screens and sheets. Files, CSV and names of files keep ISO 8601. */
  dayForm: dayFormSchema,
  paper: z.enum(['a4', 'letter']),
  /** What title or registration paper is called here. */
  paperName: filledLineSchema(40),
  /** Words printed at the foot of the sheet for sales, the shop's own. */
  buyerNotice: paragraphSchema(600),
  /** The asking price stands on the sheet for the windscreen. */
  showsPriceInWindow: z.boolean(),
});
export type Dealer = z.infer<typeof dealerSchema>;

export const ratesSchema = z.strictObject({
  labourCentsPerHour: positiveCentsSchema,
  /** Cost of own money: simple yearly interest on what no funding plan lends, in parts per million: 8 % is 80,000. */
  fundingRatePpm: z.int().min(0).max(1_000_000),
  /** ISDA 2006 Definitions 4.16 (d) Actual/365 (Fixed) and (e) Actual/360. */
  dayCount: z.enum(['actual-365', 'actual-360']),
  overheadCentsPerDay: positiveCentsSchema,
  /** Whether the day of purchase counts as a day held (common practice differs, no source). */
  countsFirstDay: z.boolean(),
});
export type Rates = z.infer<typeof ratesSchema>;

export const personSchema = z.strictObject({
  id: identifierSchema,
  name: filledLineSchema(60),
  role: roleSchema,
  /** Null: the shop's rate. */
  labourCentsPerHour: positiveCentsSchema.nullable(),
  isActive: z.boolean(),
});
export type Person = z.infer<typeof personSchema>;

export const checkSchema = z.strictObject({
  id: identifierSchema,
  title: filledLineSchema(120),
  /** 'verify': proves that the work held. 'present': makes the vehicle fit to be seen. */
  stage: z.enum(['verify', 'present']),
  who: roleSchema,
  /** Later work that touches one of these makes a signature under this check stale. */
  staleAfter: z.array(workTouchSchema).max(5),
  isActive: z.boolean(),
});
export type Check = z.infer<typeof checkSchema>;

export const sellingTermsSchema = z.strictObject({
  /** What selling one vehicle to a retail buyer, and to the trade, costs; null: nobody has said. */
  retailCents: positiveCentsSchema.nullable(),
  tradeCents: positiveCentsSchema.nullable(),
  /** Days from ready to sold; null: the middle one of the shop's own sales. */
  daysToSell: z.int().min(0).max(365).nullable(),
  /** Days from today until a vehicle sold to the trade is off the lot. */
  daysToTrade: z.int().min(0).max(365).nullable(),
});
export type SellingTerms = z.infer<typeof sellingTermsSchema>;

export const rulePacksSchema = z.array(rulePackSchema).max(8);
export const daysUntilCodesAreDestroyedSchema = z
  .int('A whole number of days, 0 to 3650.')
  .min(0, 'A whole number of days, 0 to 3650.')
  .max(3650, 'A whole number of days, 0 to 3650.');
export const fundingPlansSchema = z.array(fundingPlanSchema).max(40);

export const shopSchema = z.strictObject({
  dealer: dealerSchema,
  rates: ratesSchema,
  people: z.array(personSchema).min(1).max(60),
  checklist: z.array(checkSchema).max(60),
  /** Packs of programming rules that the shop has edited, each instead of the one of the same id that the program comes with. */
  rulePacks: rulePacksSchema,
  fundingPlans: fundingPlansSchema,
  saleTax: saleTaxSchema,
  selling: sellingTermsSchema,
  calendar: workingCalendarSchema,
  turnaround: turnaroundSettingsSchema,
  ageingBands: ageingBandsSchema,
  /** Without points: the shop keeps no such curve. */
  valueLoss: valueLossCurveSchema,
  inspection: inspectionSettingsSchema,
  /** Limits of the supply while programming, by make. */
  supportRanges: supportRangesSchema,
  /** What the shop knows about each kind of unlock code. */
  codeKinds: codeKindsSchema,
  filingRules: filingRulesSchema,
  /** Days after the sale on which kept code values are destroyed. */
  daysUntilCodesAreDestroyed: daysUntilCodesAreDestroyedSchema,
  /** Whether people sign in, and when the desk locks. */
  signIn: signInRulesSchema,
  /** Set in the invented sample only: the day the sample takes for today, and that everything in it is invented. */
  sample: z.strictObject({ today: daySchema }).nullable(),
});
export type Shop = z.infer<typeof shopSchema>;
