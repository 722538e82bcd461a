// A list of facts as compact rows. One row opens to its form in place; the commonest next facts are buttons on the row.
import './ledger.css';
import { type ReactNode, useRef } from 'react';
import { newIdentifier } from '../../../state/new-identifier.ts';
import { type Editing, seedDraft, useDraftKeys } from '../../../state/use-edit-draft.ts';
import { ledgerText } from '../../../text/vehicle.ts';
import { Button } from '../../../ui/button.tsx';
import { EmptyState } from '../../../ui/empty-state.tsx';
import { holdingIn, type SectionKey } from '../page/sections.ts';
import { useVehicle } from '../page/vehicle-context.ts';
import { VehicleSection } from '../page/vehicle-section.tsx';
import { draftKey, FactForm, type RemoveAnswers } from './fact-form.tsx';
import { type FactKind, type Identified, type Kept, withoutStamp } from './fact-kind.ts';
import { type LedgerColumn, LedgerRow, type QuickAction } from './ledger-row.tsx';
import { closeEntry, openEntry, useOpenEntry } from './open-entries.ts';

export type LedgerProps<Fact extends Identified, Value extends Identified> = {
  readonly section: SectionKey;
  readonly title: string;
  readonly kind: FactKind<Fact, Value>;
  readonly facts: readonly Kept<Fact>[];
  readonly columns: readonly LedgerColumn<Fact>[];
  readonly nameOf: (fact: Fact) => string;
  readonly addLabel: string;
  readonly makeNew: (id: string) => Fact;
  /** True where rows may be opened and acted upon by who may not add or remove any. */
  readonly canOpen?: boolean;
  readonly emptySentence: string;
  readonly quickActions?: (fact: Fact) => readonly QuickAction<Fact>[];
  readonly isDone?: (fact: Fact) => boolean;
  readonly form: (edit: Editing<Value>, fact: Fact) => ReactNode;
  /** A dialog to be agreed to before a fact is removed; null where none is needed. */
  readonly beforeRemoving?: (fact: Fact, answers: RemoveAnswers) => ReactNode;
  readonly aside?: ReactNode;
  /** Right under the head: a caution. */
  readonly children?: ReactNode;
  /** Right above the rows: what they say together. */
  readonly reading?: ReactNode;
};

export function Ledger<Fact extends Identified, Value extends Identified>(props: LedgerProps<Fact, Value>) {
  const { section, title, kind, facts, columns, nameOf, addLabel, makeNew, emptySentence, form, aside, children } =
    props;
  const state = useVehicle();
  const place = `${state.id}/${kind.list}`;
  const entry = useOpenEntry(place);
  const draftKeys = useDraftKeys();
  const holding = holdingIn(state.view, kind.list);
  const root = useRef<HTMLDivElement>(null);
  const canAdd = state.canPut(kind.list);
  const canWrite = canAdd || props.canOpen === true;
  /** To the first of these that is there once the change is drawn: the row may have gone, or moved. */
  const focusLater = (...selectors: readonly string[]) =>
    requestAnimationFrame(() => {
      const found = selectors.map((selector) => root.current?.querySelector<HTMLElement>(selector));
      found.find((element) => element)?.focus();
    });
  const addButton = '.ledger-add button';
  const rowOf = (id: string) => `[data-fact="${id}"]`;
  const closeRow = (id: string) => {
    closeEntry(place);
    focusLater(`${rowOf(id)} .ledger-open`, addButton);
  };
  const closeNew = () => {
    closeEntry(place);
    focusLater(addButton);
  };
  const act = async (fact: Fact, action: QuickAction<Fact>) => {
    const next = action.apply(fact);
    const answer = await state.change(kind.toChange(next));
    if (answer.ok && action.thenFocus === undefined) {
      focusLater(`${rowOf(fact.id)} .ledger-actions button`, `${rowOf(fact.id)} .ledger-open`);
      return;
    }
    // Refused: what was meant becomes the draft of the row, with the sentences at its fields.
    if (!answer.ok) seedDraft(draftKey(state.id, kind.list, fact.id), kind.toValue(next), answer.error);
    const refusedField = answer.ok ? undefined : answer.error.problems[0]?.field;
    openEntry(place, fact.id, { focusOn: (answer.ok ? action.thenFocus : refusedField) ?? null });
  };
  const newFact = entry?.isNew && !facts.some((fact) => fact.id === entry.id) ? makeNew(entry.id) : null;
  return (
    <VehicleSection
      section={section}
      title={title}
      count={facts.length}
      aside={aside}
      action={
        canAdd ? (
          <span className="ledger-add">
            <Button onPress={() => openEntry(place, newIdentifier(), { isNew: true })}>{addLabel}</Button>
          </span>
        ) : undefined
      }
      rootRef={root}
    >
      {children}
      {newFact !== null && entry !== null && canAdd && (
        <div className="ledger-new">
          <FactForm
            key={newFact.id}
            kind={kind}
            fact={newFact}
            name={addLabel}
            entry={entry}
            onSaved={closeNew}
            onClosed={closeNew}
          >
            {form}
          </FactForm>
        </div>
      )}
      {props.reading}
      {facts.length === 0 && newFact === null && <EmptyState sentence={emptySentence} />}
      {facts.length > 0 && (
        <table className="ledger">
          <thead>
            <tr>
              {columns.map((column) => (
                <th key={column.title} scope="col" className={column.align === 'right' ? 'amount' : undefined}>
                  {column.isTitleUnseen ? <span className="unseen">{column.title}</span> : column.title}
                </th>
              ))}
              <th scope="col" className="ledger-actions">
                <span className="unseen">{ledgerText.next}</span>
              </th>
            </tr>
          </thead>
          <tbody>
            {facts.map((kept) => {
              const fact = withoutStamp<Fact>(kept);
              const isOpen = entry?.id === fact.id && canWrite;
              return (
                <LedgerRow
                  key={fact.id}
                  kind={kind}
                  fact={fact}
                  name={nameOf(fact)}
                  columns={columns}
                  actions={canWrite ? (props.quickActions?.(fact) ?? []) : []}
                  entry={isOpen ? entry : null}
                  canWrite={canWrite}
                  marks={{
                    isHolding: holding.has(fact.id),
                    isDone: props.isDone?.(fact) ?? false,
                    hasDraft: draftKeys.has(draftKey(state.id, kind.list, fact.id)),
                  }}
                  onToggle={() => (isOpen ? closeEntry(place) : openEntry(place, fact.id))}
                  onAction={(action) => void act(fact, action)}
                  onClosed={() => closeRow(fact.id)}
                  beforeRemoving={props.beforeRemoving}
                  form={form}
                />
              );
            })}
          </tbody>
        </table>
      )}
    </VehicleSection>
  );
}
