// One row of a ledger: its cells, the buttons for its next facts, and its form right under it while it is open.
import type { MouseEvent, ReactNode } from 'react';
import type { Editing } from '../../../state/use-edit-draft.ts';
import { ledgerText } from '../../../text/vehicle.ts';
import { Button } from '../../../ui/button.tsx';
import { FactForm, type FactFormProps } from './fact-form.tsx';
import type { FactKind, Identified } from './fact-kind.ts';
import type { OpenEntry } from './open-entries.ts';

export type LedgerColumn<Fact> = {
  readonly title: string;
  /** The head of the column is read aloud and not drawn. */
  readonly isTitleUnseen?: boolean;
  readonly cell: (fact: Fact) => ReactNode;
  readonly align?: 'right';
  /** Takes no more room than it needs. */
  readonly isTight?: boolean;
};

export type QuickAction<Fact> = {
  readonly label: string;
  readonly apply: (fact: Fact) => Fact;
  /** The field in which something is worth adding once it is saved; the row opens there. */
  readonly thenFocus?: string;
};

export type LedgerRowProps<Fact extends Identified, Value extends Identified> = {
  readonly kind: FactKind<Fact, Value>;
  readonly fact: Fact;
  readonly name: string;
  readonly columns: readonly LedgerColumn<Fact>[];
  readonly actions: readonly QuickAction<Fact>[];
  /** Set while the row is open. */
  readonly entry: OpenEntry | null;
  readonly canWrite: boolean;
  readonly marks: { readonly isHolding: boolean; readonly isDone: boolean; readonly hasDraft: boolean };
  readonly onToggle: () => void;
  readonly onAction: (action: QuickAction<Fact>) => void;
  readonly onClosed: () => void;
  readonly beforeRemoving?: FactFormProps<Fact, Value>['beforeRemoving'];
  readonly form: (edit: Editing<Value>, fact: Fact) => ReactNode;
};

function namesOf(names: Readonly<Record<string, boolean>>): string | undefined {
  const held = Object.entries(names).filter(([, isSet]) => isSet);
  return held.map(([name]) => name).join(' ') || undefined;
}

export function LedgerRow<Fact extends Identified, Value extends Identified>(props: LedgerRowProps<Fact, Value>) {
  const { kind, fact, name, columns, actions, entry, canWrite, marks, onToggle, onAction, onClosed, form } = props;
  const isOpen = entry !== null;
  /** A larger target for the pointer; the button in the first cell does the same by keyboard. */
  const onRowClick = (event: MouseEvent) => {
    const isOwn = event.target instanceof Element && event.target.closest('button, a, input') !== null;
    if (!isOwn && canWrite && window.getSelection()?.isCollapsed !== false) onToggle();
  };
  return (
    <>
      <tr
        className={namesOf({
          'ledger-row': true,
          'is-open': isOpen,
          'is-holding': marks.isHolding,
          'is-done': marks.isDone,
          'is-writable': canWrite,
        })}
        data-fact={fact.id}
        onClick={onRowClick}
      >
        {columns.map((column, index) => (
          <td
            key={column.title}
            className={namesOf({ amount: column.align === 'right', 'is-tight': column.isTight === true })}
          >
            {index === 0 && canWrite ? (
              <button type="button" className="ledger-open" aria-expanded={isOpen} onClick={onToggle}>
                {column.cell(fact)}
              </button>
            ) : (
              column.cell(fact)
            )}
            {index === 0 && marks.isHolding && <span className="unseen">{ledgerText.holds}</span>}
            {index === 0 && marks.hasDraft && !isOpen && <span className="ledger-unsaved">{ledgerText.notSaved}</span>}
          </td>
        ))}
        <td className="ledger-actions">
          {!isOpen &&
            actions.map((action) => (
              <Button
                key={action.label}
                label={ledgerText.actionFor(action.label, name)}
                onPress={() => onAction(action)}
              >
                {action.label}
              </Button>
            ))}
        </td>
      </tr>
      {entry !== null && (
        <tr className="ledger-form-row">
          <td colSpan={columns.length + 1}>
            <FactForm
              kind={kind}
              fact={fact}
              name={name}
              entry={entry}
              onSaved={onClosed}
              onClosed={onClosed}
              beforeRemoving={props.beforeRemoving}
            >
              {form}
            </FactForm>
          </td>
        </tr>
      )}
    </>
  );
}
