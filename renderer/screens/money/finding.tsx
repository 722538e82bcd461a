// One finding of Money: its title says it, a picture may show it, the table behind it can be opened and saved.
import { type ReactNode, useId } from 'react';
import type { MoneyTable } from '../../../app/contract/money-view.ts';
import { ask } from '../../bridge.ts';
import { notify } from '../../state/notice-store.ts';
import { errorSentence } from '../../text/errors.ts';
import { moneyScreenText as text } from '../../text/money.ts';
import { Button } from '../../ui/button.tsx';
import { SectionHead } from '../../ui/section-head.tsx';

async function save(table: MoneyTable): Promise<void> {
  const answer = await ask('money:export', { table });
  if (!answer.ok) notify('problem', errorSentence(answer.error));
  else
    notify('done', text.exported(answer.value.fileName), {
      label: text.showFolder,
      onPress: () => void ask('money:show-folder', {}),
    });
}

export type Column = { readonly head: string; readonly isAmount?: boolean };

export type FindingProps = {
  readonly table: MoneyTable;
  readonly title: string;
  readonly unit?: string;
  /** The picture; without one the table stands open. */
  readonly children?: ReactNode;
  readonly columns: readonly Column[];
  readonly rows: readonly { readonly key: string; readonly cells: readonly ReactNode[] }[];
};

function Table({ table, columns, rows }: Pick<FindingProps, 'table' | 'columns' | 'rows'>) {
  const classOf = (index: number) => (columns[index]?.isAmount ? 'amount' : undefined);
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reachable by keyboard.
    <section className="finding-scroll" aria-label={text.names[table]} tabIndex={0}>
      <table>
        <caption className="unseen">{text.names[table]}</caption>
        <thead>
          <tr>
            {columns.map(({ head }, index) => (
              <th key={head} scope="col" className={classOf(index)}>
                {head}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map(({ key, cells }) => (
            <tr key={key}>
              {cells.map((cell, index) =>
                index === 0 ? (
                  <th key={columns[index]?.head} scope="row">
                    {cell}
                  </th>
                ) : (
                  <td key={columns[index]?.head} className={classOf(index)}>
                    {cell}
                  </td>
                ),
              )}
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}

export function Finding({ table, title, unit, children, columns, rows }: FindingProps) {
  const headId = useId();
  return (
    <section className="finding" aria-labelledby={headId}>
      <SectionHead
        id={headId}
        title={title}
        action={
          <Button kind="quiet" label={text.exportOf(text.names[table])} onPress={() => void save(table)}>
            {text.exportTable}
          </Button>
        }
      />
      <p className="finding-kind">{unit === undefined ? text.names[table] : `${text.names[table]}. ${unit}`}</p>
      {rows.length > 0 && children}
      {rows.length > 0 &&
        (children === undefined ? (
          <Table table={table} columns={columns} rows={rows} />
        ) : (
          <details>
            <summary>{text.table}</summary>
            <Table table={table} columns={columns} rows={rows} />
          </details>
        ))}
    </section>
  );
}
