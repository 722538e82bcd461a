// A section of the record that is set as a whole: shown as facts, corrected in place after "Correct" or a press on the facts.
import { type ReactNode, useRef } from 'react';
import type { z } from 'zod';
import type { Result } from '../../../../app/domain/shared/result.ts';
import type { SetChange } from '../../../../app/domain/vehicle/change.ts';
import type { ChangeProblem } from '../../../../app/domain/vehicle/change-problem.ts';
import type { Typed } from '../../../state/edit-draft.ts';
import { type Editing, useDraftKeys, useEditDraft } from '../../../state/use-edit-draft.ts';
import { ledgerText } from '../../../text/vehicle.ts';
import { Button } from '../../../ui/button.tsx';
import { useVehicle } from '../page/vehicle-context.ts';
import { EntryForm } from './entry-form.tsx';
import { closeEntry, openEntry, useOpenEntry } from './open-entries.ts';

export type SectionFormProps<Fact extends object, Value extends object> = {
  readonly part: SetChange['section'];
  readonly label: string;
  readonly schema: z.ZodType<Fact>;
  readonly base: Value;
  readonly toChange: (fact: Fact) => SetChange;
  readonly finish?: (value: Value) => Result<unknown, readonly ChangeProblem[]>;
  readonly saveLabel?: string;
  readonly correctLabel?: string;
  /** The facts as they are read; `actions` go beside the button that opens the form. */
  readonly shown: ReactNode;
  readonly actions?: ReactNode;
  readonly more?: ReactNode;
  readonly form: (edit: Editing<Value>) => ReactNode;
};

function SectionFields<Fact extends object, Value extends object>(
  props: SectionFormProps<Fact, Value> & { readonly onClose: () => void; readonly place: string },
) {
  const { label, schema, base, toChange, finish, form, onClose, place } = props;
  const state = useVehicle();
  const entry = useOpenEntry(place);
  const edit = useEditDraft<Fact, Value>(place, base, {
    schema,
    save: (fact) => state.change(toChange(fact)),
    ...(finish ? { finish } : {}),
  });
  return (
    <EntryForm
      label={label}
      edit={edit}
      {...(props.saveLabel ? { saveLabel: props.saveLabel } : {})}
      onSaved={onClose}
      onPutBack={onClose}
      focusOn={entry?.focusOn ?? null}
      asked={entry?.asked ?? 0}
      more={props.more}
    >
      {form(edit)}
    </EntryForm>
  );
}

export function SectionForm<Fact extends object, Value extends object = Typed<Fact>>(
  props: SectionFormProps<Fact, Value>,
) {
  const { part, label, shown, actions, correctLabel } = props;
  const state = useVehicle();
  const place = `${state.id}/${part}`;
  const entry = useOpenEntry(place);
  const hasDraft = useDraftKeys().has(place);
  const root = useRef<HTMLDivElement>(null);
  const canSet = state.canSet(part);
  const close = () => {
    closeEntry(place);
    requestAnimationFrame(() => root.current?.querySelector<HTMLElement>('.section-correct button')?.focus());
  };
  return (
    <div ref={root} className="section-form">
      {entry !== null && canSet ? (
        <SectionFields {...props} place={place} onClose={close} />
      ) : (
        <>
          {shown}
          {(canSet || actions) && (
            <div className="section-buttons">
              {canSet && (
                <span className="section-correct">
                  <Button
                    label={`${correctLabel ?? ledgerText.correct}: ${label}`}
                    onPress={() => openEntry(place, part)}
                  >
                    {correctLabel ?? ledgerText.correct}
                  </Button>
                </span>
              )}
              {canSet && actions}
              {hasDraft && <span className="ledger-unsaved">{ledgerText.notSaved}</span>}
            </div>
          )}
        </>
      )}
    </div>
  );
}
