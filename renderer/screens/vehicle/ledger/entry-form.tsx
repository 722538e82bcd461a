// The frame of every form on this screen: fields, what stands against the whole, Save and Put back. Enter saves, Esc puts back.
import { type KeyboardEvent, type ReactNode, useEffect, useRef } from 'react';
import type { Editing } from '../../../state/use-edit-draft.ts';
import { ledgerText } from '../../../text/vehicle.ts';
import { Button } from '../../../ui/button.tsx';
import { Form } from '../../../ui/form.tsx';
import { WholeProblems } from '../../../ui/whole-problems.tsx';
import { focusField, focusFirstProblem } from './field-place.tsx';

export type EntryFormProps = {
  readonly label: string;
  readonly edit: Pick<Editing<object>, 'wholeProblems' | 'isSaving' | 'save' | 'putBack'>;
  readonly saveLabel?: string;
  /** Called once it is saved, and once it is put back. */
  readonly onSaved: () => void;
  readonly onPutBack: () => void;
  readonly focusOn: string | null;
  /** Changes each time somebody asks to be taken here. */
  readonly asked: number;
  readonly children: ReactNode;
  /** Beside Save and Put back, at the far end: Remove. */
  readonly more?: ReactNode;
};

export function EntryForm(props: EntryFormProps) {
  const { label, edit, saveLabel, onSaved, onPutBack, focusOn, asked, children, more } = props;
  const form = useRef<HTMLDivElement>(null);
  // biome-ignore lint/correctness/useExhaustiveDependencies: asking again takes the person there again, also to the same field.
  useEffect(() => focusField(form.current, focusOn), [focusOn, asked]);
  const save = async () => {
    if (await edit.save()) onSaved();
    // The problems are drawn by then.
    else requestAnimationFrame(() => focusFirstProblem(form.current));
  };
  const putBack = () => {
    edit.putBack();
    onPutBack();
  };
  const onKeyDown = (event: KeyboardEvent) => {
    if (event.defaultPrevented) return;
    if (event.key === 'Escape') {
      event.preventDefault();
      putBack();
    } else if (event.key === 'Enter' && (event.ctrlKey || event.target instanceof HTMLSelectElement)) {
      // A list does not hand Enter on to its form by itself.
      event.preventDefault();
      void save();
    }
  };
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: keys for the whole form; every one of its buttons does the same.
    <div ref={form} className="entry-form" onKeyDown={onKeyDown}>
      <Form label={label} onSubmit={() => void save()}>
        {children}
        <WholeProblems sentences={edit.wholeProblems} />
        <div className="entry-foot">
          <Button kind="main" type="submit" isDisabled={edit.isSaving} shortcut="Enter">
            {saveLabel ?? ledgerText.save}
          </Button>
          <Button onPress={putBack} shortcut="Esc">
            {ledgerText.putBack}
          </Button>
          {more !== undefined && <div className="entry-more">{more}</div>}
        </div>
      </Form>
    </div>
  );
}
