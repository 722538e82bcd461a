// Budget against cost by group: what was set, what is spent, committed and to come, what is left, and a warning where it is exceeded.
import type { BudgetRow } from '../../../../app/domain/money/budget.ts';
import type { Costs } from '../../../../app/domain/money/costs.ts';
import { showCents } from '../../../../app/domain/shared/cents.ts';
import { budgetText as text } from '../../../text/budget.ts';
import { moneyText } from '../../../text/vehicle.ts';
import { SectionHead } from '../../../ui/section-head.tsx';

function Left({ leftCents, standing }: Pick<BudgetRow, 'leftCents' | 'standing'>) {
  if (leftCents === null) return <>–</>;
  if (leftCents >= 0) return <>{showCents(leftCents)}</>;
  return <span className={standing === 'over' ? 'is-below-nought' : undefined}>{text.overBy(leftCents)}</span>;
}

export function BudgetTable({ budgets }: Pick<Costs, 'budgets'>) {
  if (budgets.every(({ budgetCents }) => budgetCents === null)) return null;
  const groups = budgets.filter(({ group }) => group !== null);
  const whole = budgets.find(({ group }) => group === null);
  const warned = budgets.filter(({ standing }) => standing === 'over' || standing === 'expected-over');
  const cells = (row: BudgetRow) => (
    <>
      <td className="amount">{row.budgetCents === null ? '–' : showCents(row.budgetCents)}</td>
      <td className="amount">{row.spentCents === 0 ? '' : showCents(row.spentCents)}</td>
      <td className="amount">{row.committedCents === 0 ? '' : showCents(row.committedCents)}</td>
      <td className="amount">{row.toComeCents === 0 ? '' : showCents(row.toComeCents)}</td>
      <td className="amount">
        <Left {...row} />
      </td>
    </>
  );
  return (
    <section className="budgets" aria-label={text.title}>
      <SectionHead title={text.title} level={3} />
      <table className="cost-figures">
        <caption className="unseen">{text.title}</caption>
        <thead>
          <tr>
            <td />
            {[text.budget, moneyText.spent, moneyText.committed, moneyText.toCome, text.left].map((head) => (
              <th key={head} scope="col" className="amount">
                {head}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {groups.map((row) => (
            <tr key={row.group}>
              <th scope="row">{text.nameOf(row.group)}</th>
              {cells(row)}
            </tr>
          ))}
        </tbody>
        {whole && (
          <tfoot>
            <tr>
              <th scope="row">{text.nameOf(null)}</th>
              {cells(whole)}
            </tr>
          </tfoot>
        )}
      </table>
      {warned.map((row) => (
        <p key={row.group ?? 'whole'} className={row.standing === 'over' ? 'money-warning' : 'money-missing'}>
          {text.warning(row)}
        </p>
      ))}
    </section>
  );
}
