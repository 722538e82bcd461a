// Budget against cost by cost group over the open vehicles that have such a budget. What counts as over is in money/budget.ts.
import { type BudgetGroup, type BudgetRow, budgetGroups, standingOf } from '../money/budget.ts';
import { type Cents, sumCents } from '../shared/cents.ts';
import type { Identifier } from '../shared/identifier.ts';

export type VehicleBudgets = { readonly vehicleId: Identifier; readonly budgets: readonly BudgetRow[] };

export type FleetBudget = {
  /** Null: budgets of the whole. */
  readonly group: BudgetGroup | null;
  /** Vehicles with such a budget; only their costs are in the sums. */
  readonly vehicles: number;
  readonly budgetCents: Cents;
  readonly spentCents: Cents;
  readonly committedCents: Cents;
  readonly toComeCents: Cents;
  /** Over the sums: one vehicle's room makes up for another's excess. */
  readonly leftCents: Cents;
  /** The vehicles that are over by themselves, spent and committed alone or with what is to come, the furthest first. */
  readonly over: readonly {
    readonly vehicleId: Identifier;
    readonly leftCents: Cents;
    readonly isCommitted: boolean;
  }[];
};

/** Cents. Groups that no vehicle has a budget for are left out; the whole comes last. */
export function fleetBudgets(vehicles: readonly VehicleBudgets[]): readonly FleetBudget[] {
  return [...budgetGroups, null].flatMap((group): FleetBudget[] => {
    const rows = vehicles.flatMap(({ vehicleId, budgets }) =>
      budgets.flatMap((row) =>
        row.group === group && row.budgetCents !== null ? [{ ...row, vehicleId, budgetCents: row.budgetCents }] : [],
      ),
    );
    if (rows.length === 0) return [];
    const sums = {
      budgetCents: sumCents(rows.map(({ budgetCents }) => budgetCents)),
      spentCents: sumCents(rows.map(({ spentCents }) => spentCents)),
      committedCents: sumCents(rows.map(({ committedCents }) => committedCents)),
      toComeCents: sumCents(rows.map(({ toComeCents }) => toComeCents)),
    };
    const over = rows
      .flatMap(({ vehicleId, leftCents, standing }) =>
        leftCents === null || standing === null || standing === 'within'
          ? []
          : [{ vehicleId, leftCents, isCommitted: standing === 'over' }],
      )
      .sort((a, b) => a.leftCents - b.leftCents);
    return [{ group, vehicles: rows.length, ...sums, leftCents: standingOf(sums).leftCents ?? 0, over }];
  });
}
