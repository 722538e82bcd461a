// The table of figures: one row a group, spent, committed and to come; each row opens to the lines it is made of.
import { Fragment, useState } from 'react';
import { type CostGroup, costStates } from '../../../../app/domain/money/cost-lines.ts';
import type { Costs } from '../../../../app/domain/money/costs.ts';
import { type Cents, showCents } from '../../../../app/domain/shared/cents.ts';
import { moneyText } from '../../../text/vehicle.ts';
import { costRows } from './cost-table.ts';

function amount(cents: Cents): string {
  return cents === 0 ? '' : showCents(cents);
}

const stateNames = { spent: moneyText.spent, committed: moneyText.committed, 'to-come': moneyText.toCome } as const;

export function CostFigures({ costs }: { readonly costs: Costs }) {
  const [open, setOpen] = useState<ReadonlySet<CostGroup>>(new Set());
  const toggle = (group: CostGroup) =>
    setOpen((before) => {
      const after = new Set(before);
      if (!after.delete(group)) after.add(group);
      return after;
    });
  const totals = { spent: costs.spentCents, committed: costs.committedCents, 'to-come': costs.toComeCents };
  return (
    <table className="cost-figures">
      <caption className="unseen">{moneyText.figures}</caption>
      <thead>
        <tr>
          <th scope="col">
            <span className="unseen">{moneyText.figures}</span>
          </th>
          {costStates.map((state) => (
            <th key={state} scope="col" className="amount">
              {stateNames[state]}
            </th>
          ))}
          <th scope="col" className="amount">
            {moneyText.total}
          </th>
        </tr>
      </thead>
      <tbody>
        {costRows(costs).map((row) => {
          const isOpen = open.has(row.group);
          return (
            <Fragment key={row.group}>
              <tr className={isOpen ? 'is-open' : undefined}>
                <th scope="row">
                  <button
                    type="button"
                    className="ledger-open"
                    aria-expanded={isOpen}
                    title={moneyText.lines(moneyText.group[row.group])}
                    onClick={() => toggle(row.group)}
                  >
                    {moneyText.group[row.group]}
                  </button>
                </th>
                {costStates.map((state) => (
                  <td key={state} className="amount">
                    {amount(row.byState[state])}
                  </td>
                ))}
                <td className="amount">{showCents(row.totalCents)}</td>
              </tr>
              {isOpen &&
                row.lines.map((line, index) => (
                  // biome-ignore lint/suspicious/noArrayIndexKey: lines have no identity; two may say the same.
                  <tr key={index} className="cost-line">
                    <th scope="row">{line.what}</th>
                    {costStates.map((state) => (
                      <td key={state} className="amount">
                        {line.state === state ? showCents(line.cents) : ''}
                      </td>
                    ))}
                    <td />
                  </tr>
                ))}
            </Fragment>
          );
        })}
      </tbody>
      <tfoot>
        <tr>
          <th scope="row">{moneyText.total}</th>
          {costStates.map((state) => (
            <td key={state} className="amount">
              {amount(totals[state])}
            </td>
          ))}
          <td className="amount">{showCents(costs.spentCents + costs.committedCents + costs.toComeCents)}</td>
        </tr>
      </tfoot>
    </table>
  );
}
