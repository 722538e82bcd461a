// What Money shows of the whole fleet, as a schema. Managers only.
import { z } from 'zod';
import type { MoneyOverview } from '../domain/fleet/money-overview.ts';
import { budgetGroups } from '../domain/money/budget.ts';
import { daySchema } from '../domain/shared/day.ts';
import { identifierSchema } from '../domain/shared/identifier.ts';
import { causeSchema } from '../domain/time/cause.ts';
import { turnaroundKinds } from '../domain/time/turnaround-settings.ts';

const name = { id: identifierSchema, stockNumber: z.string(), title: z.string() };
const tally = {
  vehicles: z.int(),
  heldDays: z.int(),
  byCause: z.partialRecord(causeSchema, z.int()),
  idleDays: z.int(),
  idleCents: z.int(),
};

const overviewSchema = z.strictObject({
  today: daySchema,
  open: z.int(),
  tiedUpCents: z.int(),
  owedToLendersCents: z.int(),
  owedOnSold: z.strictObject({ vehicles: z.int(), cents: z.int() }),
  nextDayCents: z.int(),
  due: z
    .array(
      z.strictObject({
        dueOn: daySchema,
        cents: z.int(),
        payments: z
          .array(
            z.strictObject({
              vehicleId: identifierSchema,
              kind: z.enum(['on-principal', 'payoff']),
              dueOn: daySchema,
              cents: z.int(),
              balanceAfterCents: z.int(),
              what: z.string(),
            }),
          )
          .readonly(),
      }),
    )
    .readonly(),
  dueThrough: daySchema,
  openVehicles: z
    .array(
      z.strictObject({
        ...name,
        heldDays: z.int(),
        tiedUpCents: z.int(),
        owedCents: z.int(),
        nextDayCents: z.int(),
      }),
    )
    .readonly(),
  budgets: z
    .array(
      z.strictObject({
        group: z.enum(budgetGroups).nullable(),
        vehicles: z.int(),
        budgetCents: z.int(),
        spentCents: z.int(),
        committedCents: z.int(),
        toComeCents: z.int(),
        leftCents: z.int(),
        over: z
          .array(z.strictObject({ vehicleId: identifierSchema, leftCents: z.int(), isCommitted: z.boolean() }))
          .readonly(),
      }),
    )
    .readonly(),
  ageing: z
    .array(
      z.strictObject({
        fromDays: z.int(),
        toDays: z.int().nullable(),
        vehicles: z.int(),
        tiedUpCents: z.int(),
      }),
    )
    .readonly(),
  months: z.array(z.strictObject({ ...tally, month: z.string() })).readonly(),
  all: z.strictObject(tally),
  measures: z.strictObject({
    inStock: z.int(),
    sold: z.int(),
    overDays: z.int(),
    averageInventoryCents: z.number(),
    daysSupply: z.number().nullable(),
    turn: z.number().nullable(),
    daysToSell: z.number().nullable(),
    grossReturn: z.number().nullable(),
  }),
  sold: z
    .array(
      z.strictObject({
        ...name,
        soldOn: daySchema,
        earnedCents: z.int(),
        holdingCents: z.int(),
        taxCents: z.int(),
        madeCents: z.int(),
        plannedCents: z.int().nullable(),
        heldDays: z.int(),
      }),
    )
    .readonly(),
  letGo: z.array(z.strictObject({ ...name, betterByCents: z.int() })).readonly(),
  notWeighed: z.int(),
  names: z.array(z.strictObject(name)).readonly(),
  slowest: z
    .array(
      z.strictObject({
        kind: z.enum(turnaroundKinds),
        group: z.string(),
        cases: z.int(),
        medianDays: z.number(),
        longestDays: z.number(),
        promised: z.int(),
        late: z.int(),
      }),
    )
    .readonly(),
}) satisfies z.ZodType<MoneyOverview>;

/** How earlier forecasts did, over the latest vehicles that became ready. */
const backTestSchema = z.strictObject({
  cases: z.int(),
  withoutHistory: z.int(),
  likelyMet: z.int(),
  safeMet: z.int(),
  medianMissDays: z.number().nullable(),
});

export const moneyViewSchema = z.strictObject({ overview: overviewSchema, backTest: backTestSchema });
export type MoneyView = z.infer<typeof moneyViewSchema>;

/** The tables of Money that can be written as a file, by name. */
export const moneyTableSchema = z.enum([
  'due',
  'open',
  'ageing',
  'budgets',
  'days-by-cause',
  'sold',
  'let-go',
  'slowest',
]);
export type MoneyTable = z.infer<typeof moneyTableSchema>;
