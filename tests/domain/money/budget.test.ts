// Budgets of single cost groups and of the whole against what was spent, committed and is to come; examples reckoned by hand.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fleetBudgets } from '../../../app/domain/fleet/fleet-budgets.ts';
import {
  budgetGroups,
  budgetRows,
  groupBudgetsCents,
  noGroupBudgets,
  wholeBudgetCents,
} from '../../../app/domain/money/budget.ts';
import { costStates } from '../../../app/domain/money/cost-lines.ts';

const line = (group: string, state: (typeof costStates)[number], cents: number) => ({ group, state, cents });

describe('the budget of a group', () => {
  const budgets = { budgetCents: 1000, budgetByGroup: { ...noGroupBudgets, parts: 300, labour: 500, codes: 40 } };
  const lines = [
    line('parts', 'spent', 200),
    line('parts', 'committed', 150),
    line('labour', 'spent', 400),
    line('labour', 'to-come', 180),
    line('sublet', 'spent', 70),
    line('purchase', 'spent', 9_000),
    line('interest', 'spent', 33),
  ];

  it('is over when spent and committed exceed it, and will be over when what is to come does', () => {
    expect(budgetRows(budgets, lines).map(({ group, leftCents, standing }) => [group, leftCents, standing])).toEqual([
      ['parts', -50, 'over'],
      ['labour', -80, 'expected-over'],
      ['sublet', null, null],
      ['codes', 40, 'within'],
      [null, 0, 'within'],
    ]);
  });

  it('is exactly used up without being over', () => {
    const [parts] = budgetRows({ budgetCents: null, budgetByGroup: { ...noGroupBudgets, parts: 350 } }, lines);
    expect(parts).toMatchObject({ leftCents: 0, standing: 'within' });
  });

  it('counts towards the whole where the whole has none of its own', () => {
    expect(groupBudgetsCents(budgets)).toBe(840);
    expect(wholeBudgetCents({ ...budgets, budgetCents: null })).toBe(840);
    expect(wholeBudgetCents(budgets)).toBe(1000);
    expect(wholeBudgetCents({ budgetCents: null, budgetByGroup: noGroupBudgets })).toBeNull();
  });

  it('has rows of groups that sum to the whole, whatever the costs', () => {
    const anyLine = fc.record({
      group: fc.constantFrom(...budgetGroups, 'purchase', 'interest'),
      state: fc.constantFrom(...costStates),
      cents: fc.integer({ min: -5_000, max: 90_000 }),
    });
    fc.assert(
      fc.property(fc.array(anyLine), (all) => {
        const rows = budgetRows(budgets, all);
        const groups = rows.slice(0, -1);
        const whole = rows.at(-1);
        for (const sum of ['spentCents', 'committedCents', 'toComeCents'] as const)
          expect(groups.reduce((cents, row) => cents + row[sum], 0)).toBe(whole?.[sum]);
      }),
    );
  });
});

describe('the budgets of the fleet', () => {
  const of = (vehicleId: string, parts: number | null, spent: number) => ({
    vehicleId,
    budgets: budgetRows({ budgetCents: null, budgetByGroup: { ...noGroupBudgets, parts } }, [
      line('parts', 'spent', spent),
      line('labour', 'spent', 5),
    ]),
  });

  it('add up the vehicles that have one, and name those that are over, the furthest first', () => {
    const [parts, whole] = fleetBudgets([of('a', 100, 130), of('b', 100, 20), of('c', null, 999), of('d', 10, 60)]);
    expect(parts).toMatchObject({ group: 'parts', vehicles: 3, budgetCents: 210, spentCents: 210, leftCents: 0 });
    expect(parts?.over.map(({ vehicleId, leftCents }) => [vehicleId, leftCents])).toEqual([
      ['d', -50],
      ['a', -30],
    ]);
    expect(whole).toMatchObject({ group: null, vehicles: 3, budgetCents: 210, spentCents: 225 });
  });

  it('are none where nobody has one', () => {
    expect(fleetBudgets([of('c', null, 999)])).toEqual([]);
  });
});
