// The costs of a vehicle by group and by how certain they are, for the table of figures. Pure; sums only what the reckoning gave.
import { type CostGroup, type CostLine, type CostState, costGroups } from '../../../../app/domain/money/cost-lines.ts';
import type { Costs } from '../../../../app/domain/money/costs.ts';
import { type Cents, sumCents } from '../../../../app/domain/shared/cents.ts';

export type CostRow = {
  readonly group: CostGroup;
  readonly lines: readonly CostLine[];
  readonly byState: Readonly<Record<CostState, Cents>>;
  readonly totalCents: Cents;
};

/** Groups with at least one line, in the order of the way. */
export function costRows(costs: Pick<Costs, 'lines'>): readonly CostRow[] {
  return costGroups.flatMap((group): CostRow[] => {
    const lines = costs.lines.filter((line) => line.group === group);
    if (lines.length === 0) return [];
    const sumOf = (state: CostState) =>
      sumCents(lines.filter((line) => line.state === state).map((line) => line.cents));
    const byState = { spent: sumOf('spent'), committed: sumOf('committed'), 'to-come': sumOf('to-come') };
    return [{ group, lines, byState, totalCents: sumCents(lines.map((line) => line.cents)) }];
  });
}
