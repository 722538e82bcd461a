// What a vehicle's reconditioning may cost, as a whole and by cost group, held against what it does cost. No cost is found here.
import { z } from 'zod';
import { type Cents, positiveCentsSchema, sumCents } from '../shared/cents.ts';

/** The cost groups that reconditioning is made of, in the order of the way. */
export const budgetGroups = ['parts', 'cores', 'labour', 'sublet', 'codes', 'other'] as const;
export type BudgetGroup = (typeof budgetGroups)[number];

const groupBudget = positiveCentsSchema.nullable();
/** A budget for each group; null: none of its own. */
export const groupBudgetsSchema = z.strictObject({
  parts: groupBudget,
  cores: groupBudget,
  labour: groupBudget,
  sublet: groupBudget,
  codes: groupBudget,
  other: groupBudget,
});
export type GroupBudgets = z.infer<typeof groupBudgetsSchema>;

export const noGroupBudgets: GroupBudgets = {
  parts: null,
  cores: null,
  labour: null,
  sublet: null,
  codes: null,
  other: null,
};

export type Budgets = { readonly budgetCents: Cents | null; readonly budgetByGroup: GroupBudgets };

/** The budgets of the groups together; null when no group has one. */
export function groupBudgetsCents({ budgetByGroup }: Budgets): Cents | null {
  const set = budgetGroups.flatMap((group) => budgetByGroup[group] ?? []);
  return set.length === 0 ? null : sumCents(set);
}

/** The budget of the whole: as it was set, else what the groups come to; null without any. */
export function wholeBudgetCents(budgets: Budgets): Cents | null {
  return budgets.budgetCents ?? groupBudgetsCents(budgets);
}

export type BudgetStanding = 'within' | 'expected-over' | 'over';

/** Cents; `group` null: the whole. */
export type BudgetRow = {
  readonly group: BudgetGroup | null;
  readonly budgetCents: Cents | null;
  readonly spentCents: Cents;
  readonly committedCents: Cents;
  readonly toComeCents: Cents;
  /** Of the budget after all three; negative: over. Null without a budget. */
  readonly leftCents: Cents | null;
  /** 'over': spent and committed alone exceed it. 'expected-over': with what is still to come they will. Null without a budget. */
  readonly standing: BudgetStanding | null;
};

type CostOfGroup = { readonly group: string; readonly state: 'spent' | 'committed' | 'to-come'; readonly cents: Cents };

function rowOf(group: BudgetGroup | null, budgetCents: Cents | null, lines: readonly CostOfGroup[]): BudgetRow {
  const sumOf = (state: CostOfGroup['state']) =>
    sumCents(lines.flatMap((line) => (line.state === state ? line.cents : [])));
  const spentCents = sumOf('spent');
  const committedCents = sumOf('committed');
  const toComeCents = sumOf('to-come');
  return {
    group,
    budgetCents,
    spentCents,
    committedCents,
    toComeCents,
    ...standingOf({ budgetCents, spentCents, committedCents, toComeCents }),
  };
}

/** What is left of a budget and how it stands. Own definition ("common practice, no source"). */
export function standingOf(
  row: Pick<BudgetRow, 'budgetCents' | 'spentCents' | 'committedCents' | 'toComeCents'>,
): Pick<BudgetRow, 'leftCents' | 'standing'> {
  const { budgetCents, spentCents, committedCents, toComeCents } = row;
  if (budgetCents === null) return { leftCents: null, standing: null };
  const owedCents = spentCents + committedCents;
  const leftCents = budgetCents - owedCents - toComeCents;
  return { leftCents, standing: owedCents > budgetCents ? 'over' : leftCents < 0 ? 'expected-over' : 'within' };
}

/** A row for each group with a budget or a cost, in the order of the way, and the whole as the last one. Amounts in cents. */
export function budgetRows(budgets: Budgets, lines: readonly CostOfGroup[]): readonly BudgetRow[] {
  const groups = budgetGroups.flatMap((group): BudgetRow[] => {
    const ofGroup = lines.filter((line) => line.group === group);
    const budgetCents = budgets.budgetByGroup[group];
    return budgetCents === null && ofGroup.length === 0 ? [] : [rowOf(group, budgetCents, ofGroup)];
  });
  const isReconditioning = ({ group }: CostOfGroup) => budgetGroups.some((known) => known === group);
  return [...groups, rowOf(null, wholeBudgetCents(budgets), lines.filter(isReconditioning))];
}
