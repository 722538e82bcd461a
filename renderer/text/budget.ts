// Words of the budgets: of one vehicle by cost group, and of the fleet.
import type { BudgetRow, BudgetStanding } from '../../app/domain/money/budget.ts';
import { type Cents, showCents } from '../../app/domain/shared/cents.ts';
import type { Day } from '../../app/domain/shared/day.ts';
import { sayDay } from './say-day.ts';
import { moneyText } from './vehicle.ts';

const nameOf = (group: BudgetRow['group']) => (group === null ? 'As a whole' : moneyText.group[group]);

export const budgetText = {
  title: 'Budget against cost',
  nameOf,
  budget: 'Budget',
  left: 'Left',
  overBy: (cents: Cents) => `over by ${showCents(-cents)}`,
  standing: { within: 'within', 'expected-over': 'will be over', over: 'over' } satisfies Record<
    BudgetStanding,
    string
  >,
  warning: ({ group, budgetCents, spentCents, committedCents, leftCents, standing }: BudgetRow) =>
    standing === 'over'
      ? `${nameOf(group)}: spent and committed come to ${showCents(spentCents + committedCents)}, more than the budget of ${showCents(budgetCents ?? 0)}.`
      : `${nameOf(group)}: with what is still to come, the budget of ${showCents(budgetCents ?? 0)} is exceeded by ${showCents(-(leftCents ?? 0))}.`,
  /** The whole in a few words, and the groups that are over. */
  ofAll: (rows: readonly BudgetRow[]): string => {
    const whole = rows.find(({ group }) => group === null);
    if (!whole || rows.every(({ standing }) => standing === null)) return '–';
    const left =
      whole.leftCents === null
        ? []
        : [whole.leftCents < 0 ? `over by ${showCents(-whole.leftCents)}` : `${showCents(whole.leftCents)} left`];
    const over = rows.flatMap(({ group, leftCents }) =>
      group === null || leftCents === null || leftCents >= 0 ? [] : `${nameOf(group)} over by ${showCents(-leftCents)}`,
    );
    return [...left, ...over].join('; ');
  },
  byGroup: 'Budgets of single groups',
  byGroupHint: 'Each may stay empty. Without a budget of the whole, the groups together are it.',
  pricedOn: 'Price asked since',
  pricedOnHint: 'Filled in when a price is saved. Days before it do not count as ready.',
  priceWords: (asking: Cents | null, pricedOn: Day | null, today: Day) =>
    asking === null
      ? null
      : pricedOn === null
        ? showCents(asking)
        : `${showCents(asking)}, since ${sayDay(pricedOn, today)}`,
} as const;
