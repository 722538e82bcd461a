// The form of one fact of a list: holds its draft, saves it as one change, removes it with the way back in the message.
import { type ReactNode, useState } from 'react';
import { undo } from '../../../state/desk-store.ts';
import { notify } from '../../../state/notice-store.ts';
import { type Editing, useEditDraft } from '../../../state/use-edit-draft.ts';
import { vehicleStore } from '../../../state/vehicle-store.ts';
import { errorSentence } from '../../../text/errors.ts';
import { sayWholeDaysIn } from '../../../text/say-day.ts';
import { ledgerText } from '../../../text/vehicle.ts';
import { Button } from '../../../ui/button.tsx';
import { useVehicle, type VehicleScreenState } from '../page/vehicle-context.ts';
import { EntryForm } from './entry-form.tsx';
import type { FactKind, Identified } from './fact-kind.ts';
import type { OpenEntry } from './open-entries.ts';

export function draftKey(vehicleId: string, list: string, factId: string): string {
  return `${vehicleId}/${list}/${factId}`;
}

/** Removes a fact, and offers to take that back: by undo while nothing else was saved since, else by writing the fact anew. */
export async function removeFact<Fact extends Identified, Value extends Identified>(
  state: VehicleScreenState,
  kind: FactKind<Fact, Value>,
  fact: Fact,
  name: string,
): Promise<boolean> {
  const answer = await state.change({ kind: 'remove', list: kind.list, id: fact.id });
  if (!answer.ok) {
    const sentences = answer.error.problems.map((problem) => problem.sentence);
    notify('problem', sentences.length > 0 ? sayWholeDaysIn(sentences.join(' ')) : errorSentence(answer.error));
    return false;
  }
  const { revision } = answer.value;
  notify('done', ledgerText.removed(name), {
    label: ledgerText.undo,
    onPress: () => {
      const open = vehicleStore.read();
      const isLast = open.state === 'here' && open.id === state.id && open.view.revision === revision;
      if (isLast) void undo();
      else
        void state.change(kind.toChange(fact)).then((again) => {
          if (!again.ok) notify('problem', errorSentence(again.error));
        });
    },
  });
  return true;
}

/** What a question before removing is answered with. */
export type RemoveAnswers = { readonly onRemove: () => void; readonly onKeep: () => void };

export type FactFormProps<Fact extends Identified, Value extends Identified> = {
  readonly kind: FactKind<Fact, Value>;
  readonly fact: Fact;
  /** What the fact is called in messages and for a screen reader. */
  readonly name: string;
  readonly entry: OpenEntry;
  readonly onSaved: () => void;
  readonly onClosed: () => void;
  /** What has to be agreed to before it is removed, drawn over the page; null where nothing has. */
  readonly beforeRemoving?: ((fact: Fact, answers: RemoveAnswers) => ReactNode) | undefined;
  readonly children: (edit: Editing<Value>, fact: Fact) => ReactNode;
};

export function FactForm<Fact extends Identified, Value extends Identified>(props: FactFormProps<Fact, Value>) {
  const { kind, fact, name, entry, onSaved, onClosed, children } = props;
  const state = useVehicle();
  const edit = useEditDraft<Fact, Value>(draftKey(state.id, kind.list, fact.id), kind.toValue(fact), {
    schema: kind.schema,
    save: (finished) => state.change(kind.toChange(finished)),
    ...(kind.finish ? { finish: kind.finish } : {}),
  });
  const [isAsked, setIsAsked] = useState(false);
  const remove = async () => {
    setIsAsked(false);
    if (!(await removeFact(state, kind, fact, name))) return;
    edit.putBack();
    onClosed();
  };
  const question =
    props.beforeRemoving?.(fact, { onRemove: () => void remove(), onKeep: () => setIsAsked(false) }) ?? null;
  return (
    <>
      <EntryForm
        label={entry.isNew ? ledgerText.newEntry(name) : ledgerText.entry(name)}
        edit={edit}
        saveLabel={entry.isNew ? ledgerText.saveNew : ledgerText.save}
        onSaved={onSaved}
        onPutBack={onClosed}
        focusOn={entry.focusOn}
        asked={entry.asked}
        more={
          !entry.isNew && state.canRemove(kind.list) ? (
            <Button kind="quiet" onPress={() => (question === null ? void remove() : setIsAsked(true))}>
              {ledgerText.remove}
            </Button>
          ) : undefined
        }
      >
        {children(edit, fact)}
      </EntryForm>
      {isAsked && question}
    </>
  );
}
