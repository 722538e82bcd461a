// What the page is shown, as schemas: rows of the lot, one vehicle with its reckoning, the desk, the shop. Derived data only.
import { z } from 'zod';
import { roleSchema, shopSchema } from '../domain/fleet/shop.ts';
import { type BudgetRow, budgetGroups } from '../domain/money/budget.ts';
import { costGroups, costStates } from '../domain/money/cost-lines.ts';
import type { Costs } from '../domain/money/costs.ts';
import type { CurtailmentPayment } from '../domain/money/curtailments.ts';
import type { FinishOrLetGo } from '../domain/money/finish-or-let-go.ts';
import type { Prospect } from '../domain/money/weigh-vehicle.ts';
import type { Gate } from '../domain/readiness/gate.ts';
import { daySchema, instantSchema } from '../domain/shared/day.ts';
import { identifierSchema } from '../domain/shared/identifier.ts';
import { causeSchema, standingSchema } from '../domain/time/cause.ts';
import type { Forecast } from '../domain/time/forecast.ts';
import type { HeldDays } from '../domain/time/held-days.ts';
import { factListSchema } from '../domain/vehicle/change.ts';
import { identitySchema } from '../domain/vehicle/identity.ts';
import type { NextMove } from '../domain/vehicle/reckon.ts';
import { vehicleSchema } from '../domain/vehicle/vehicle.ts';
import { sampleViewSchema } from './sample-view.ts';
import { nameSchema, signInViewSchema } from './sign-in-view.ts';

const centsOrNull = z.int().nullable();
const dayOrNull = daySchema.nullable();
const actorSchema = z.enum(['manager', 'technician', 'sales', 'outside']);
const nextMoveSchema = z.strictObject({ who: actorSchema, what: z.string() }) satisfies z.ZodType<NextMove>;

const stretchSchema = z.strictObject({ cause: causeSchema, from: daySchema, days: z.int().min(1), what: z.string() });
const standingNowSchema = z.strictObject({
  standing: standingSchema,
  since: daySchema,
  what: z.string(),
  expectedOn: dayOrNull,
});
const heldDaysSchema = z.strictObject({
  heldDays: z.int().min(0),
  stretches: z.array(stretchSchema).readonly(),
  byCause: z.partialRecord(causeSchema, z.int()),
  now: standingNowSchema,
}) satisfies z.ZodType<HeldDays>;

const gateSchema = z.strictObject({
  key: z.string(),
  title: z.string(),
  state: z.enum(['met', 'open', 'stale', 'not-needed']),
  metOn: dayOrNull,
  items: z
    .array(
      z.strictObject({
        text: z.string(),
        who: actorSchema,
        since: dayOrNull,
        place: z.union([
          z.strictObject({ list: factListSchema, id: identifierSchema.nullable() }),
          z.strictObject({ section: z.enum(['identity', 'purchase', 'arrival', 'targets', 'sale']) }),
        ]),
      }),
    )
    .readonly(),
}) satisfies z.ZodType<Gate>;

const paymentSchema = z.strictObject({
  dueOn: daySchema,
  cents: z.int(),
  balanceAfterCents: z.int(),
  what: z.string(),
}) satisfies z.ZodType<CurtailmentPayment>;

export const budgetRowSchema = z.strictObject({
  group: z.enum(budgetGroups).nullable(),
  budgetCents: centsOrNull,
  spentCents: z.int(),
  committedCents: z.int(),
  toComeCents: z.int(),
  leftCents: centsOrNull,
  standing: z.enum(['within', 'expected-over', 'over']).nullable(),
}) satisfies z.ZodType<BudgetRow>;

const costsSchema = z.strictObject({
  lines: z
    .array(
      z.strictObject({
        group: z.enum(costGroups),
        state: z.enum(costStates),
        what: z.string(),
        cents: z.int(),
      }),
    )
    .readonly(),
  spentCents: z.int(),
  committedCents: z.int(),
  toComeCents: z.int(),
  acquisitionCents: z.int(),
  reconditioningCents: z.int(),
  holdingCents: z.int(),
  nextDayCents: z.int(),
  startingMarginCents: centsOrNull,
  taxCents: centsOrNull,
  marginLeftCents: centsOrNull,
  marginExpectedCents: centsOrNull,
  marginUsedBasisPoints: z.int().nullable(),
  breakEvenOn: dayOrNull,
  budgets: z.array(budgetRowSchema).readonly(),
  writeDownCents: centsOrNull,
  fundingBalanceCents: centsOrNull,
  payoff: z.strictObject({ cents: z.int(), dueOn: daySchema }).nullable(),
  nextPayment: paymentSchema.nullable(),
  payments: z.array(paymentSchema).readonly(),
  missingAmounts: z.array(z.string()).readonly(),
  missing: z.array(z.string()).readonly(),
}) satisfies z.ZodType<Costs>;

/** By when it will be ready: in half of the runs, and in 80 of 100. Null when it is ready, sold, or not worked out yet. */
export const readyDaysSchema = z.strictObject({ likelyOn: daySchema, safeOn: daySchema }).nullable();
export type ReadyDays = z.infer<typeof readyDaysSchema>;

const forecastSchema = z.strictObject({
  likelyOn: daySchema,
  safeOn: daySchema,
  runs: z.int(),
  items: z
    .array(
      z.strictObject({
        id: z.string(),
        what: z.string(),
        cause: causeSchema,
        decides: z.int(),
        onChain: z.int(),
        basis: z
          .strictObject({
            basis: z.enum(['turnaround', 'promises', 'promise', 'setting']),
            group: z.string(),
            cases: z.int(),
          })
          .nullable(),
      }),
    )
    .readonly(),
}) satisfies z.ZodType<Forecast>;

/** The open work as one expected course with its critical path: each item with its days and the room it has. */
const courseSchema = z
  .strictObject({
    readyOn: daySchema,
    items: z
      .array(
        z.strictObject({
          id: z.string(),
          startsOn: daySchema,
          endsOn: daySchema,
          floatDays: z.number(),
          isCritical: z.boolean(),
        }),
      )
      .readonly(),
  })
  .nullable();

const verdictSchema = z.enum(['finish', 'let-go', 'even']);
const waySchema = z.strictObject({
  on: daySchema,
  lines: z.array(z.strictObject({ what: z.string(), cents: z.int() })).readonly(),
  resultCents: z.int(),
});
const weighedSchema = z.strictObject({
  finish: waySchema,
  letGo: waySchema,
  advantageCents: z.int(),
  verdict: verdictSchema,
  spendRoomCents: z.int(),
  daysRoom: z.int().nullable(),
  readyByOn: dayOrNull,
  whatIfs: z
    .array(
      z.strictObject({
        askingPercent: z.literal([-5, 0, 5]),
        readyDays: z.literal([-7, 0, 7]),
        readyOn: daySchema,
        resultCents: z.int(),
        advantageCents: z.int(),
        verdict: verdictSchema,
      }),
    )
    .readonly(),
}) satisfies z.ZodType<FinishOrLetGo>;
const prospectSchema = z.strictObject({
  readyOn: dayOrNull,
  daysToSell: z.int().nullable(),
  daysToSellCases: z.int(),
  saleOn: dayOrNull,
  marginAtSaleCents: centsOrNull,
  weighed: z.discriminatedUnion('ok', [
    z.strictObject({ ok: z.literal(true), value: weighedSchema }),
    z.strictObject({
      ok: z.literal(false),
      error: z.array(z.strictObject({ what: z.string(), sentence: z.string() })).readonly(),
    }),
  ]),
}) satisfies z.ZodType<Prospect>;

/** One line of the lot. `money` is null for whoever may not see it. */
export const lotRowSchema = z.strictObject({
  id: identifierSchema,
  identity: identitySchema.pick({
    stockNumber: true,
    vin: true,
    modelYear: true,
    make: true,
    model: true,
    colour: true,
    location: true,
    keyTag: true,
  }),
  boughtOn: daySchema,
  held: heldDaysSchema,
  nextMove: nextMoveSchema.nullable(),
  holdingGates: z.int(),
  isReady: z.boolean(),
  askingCents: centsOrNull,
  forecast: readyDaysSchema,
  money: z
    .strictObject({
      /** Days on which a payment on the principal is due. */
      paymentsOn: z.array(daySchema).readonly(),
      spentCents: z.int(),
      marginLeftCents: centsOrNull,
      marginExpectedCents: centsOrNull,
      breakEvenOn: dayOrNull,
    })
    .nullable(),
});
export type LotRow = z.infer<typeof lotRowSchema>;

/** One vehicle, opened. Money that the person may not see is blanked in the record and `costs` is null. */
export const vehicleViewSchema = z.strictObject({
  revision: z.int().min(0),
  savedAt: instantSchema,
  isReadOnly: z.boolean(),
  vehicle: vehicleSchema,
  today: daySchema,
  readiness: z.strictObject({
    gates: z.array(gateSchema).readonly(),
    workFinishedOn: dayOrNull,
    verifiedOn: dayOrNull,
    presentedOn: dayOrNull,
    readyOn: dayOrNull,
    isReady: z.boolean(),
  }),
  held: heldDaysSchema,
  nextMove: nextMoveSchema.nullable(),
  costs: costsSchema.nullable(),
  forecast: forecastSchema.nullable(),
  /** The sold vehicles it rests on are still being read; forecast, course and prospect are null until then. */
  isForecastToCome: z.boolean(),
  course: courseSchema,
  /** For who sees money, of an unsold vehicle. */
  prospect: prospectSchema.nullable(),
});
export type VehicleView = z.infer<typeof vehicleViewSchema>;

export const themeSchema = z.enum(['system', 'light', 'dark']);
export type Theme = z.infer<typeof themeSchema>;

/** What the frame around the screens needs: who is at the desk, which fleet is open, what is wrong with it, what can be undone. */
export const deskSchema = z.strictObject({
  appVersion: z.string(),
  today: daySchema,
  theme: themeSchema,
  fleetName: z.string(),
  isSample: z.boolean(),
  sample: sampleViewSchema,
  /** Null: the fleet folder is new and nothing has been set up yet. */
  shop: shopSchema
    .pick({ dealer: true, checklist: true, inspection: true, supportRanges: true, codeKinds: true, filingRules: true })
    .nullable(),
  people: z.array(nameSchema).readonly(),
  /** For naming the plan of a purchase; empty for who sees no money. */
  fundingPlans: z.array(z.strictObject({ id: identifierSchema, name: z.string() })).readonly(),
  person: z.strictObject({ id: identifierSchema, name: z.string(), role: roleSchema }),
  seesMoney: z.boolean(),
  signIn: signInViewSchema,
  readOnlyReason: z.string().nullable(),
  /** Another desk holds the fleet and has not been heard of for a while. */
  canTakeOver: z.boolean(),
  /** Files that could not be used; which ones is on Safety copies, for the manager. */
  troubleCount: z.int().min(0),
  lastBackupAt: instantSchema.nullable(),
  undo: z.string().nullable(),
  redo: z.string().nullable(),
});
export type Desk = z.infer<typeof deskSchema>;

export const shopViewSchema = z.strictObject({ revision: z.int().min(0), shop: shopSchema });
export type ShopView = z.infer<typeof shopViewSchema>;
