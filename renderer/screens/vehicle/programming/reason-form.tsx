// Asks for a few words before something is done that somebody will want to understand later: a step left out, a contradiction accepted.
import { type KeyboardEvent, useState } from 'react';
import { jobText } from '../../../text/programming.ts';
import { ledgerText } from '../../../text/vehicle.ts';
import { Button } from '../../../ui/button.tsx';
import { Form } from '../../../ui/form.tsx';
import { TextField } from '../../../ui/text-field.tsx';

export type ReasonFormProps = {
  readonly label: string;
  readonly ask: string;
  readonly saveLabel: string;
  /** True when it was saved; else what was typed stays. */
  readonly onSave: (reason: string) => Promise<boolean>;
  readonly onClose: () => void;
};

/** As in the domain: shorter, nobody can see later why it was done. */
const shortestReason = 4;

export function ReasonForm({ label, ask, saveLabel, onSave, onClose }: ReasonFormProps) {
  const [reason, setReason] = useState('');
  const [problem, setProblem] = useState<string | undefined>(undefined);
  const save = async () => {
    if (reason.trim().length < shortestReason) setProblem(jobText.leftOutNeedsReason);
    else if (await onSave(reason.trim())) onClose();
  };
  const onKeyDown = (event: KeyboardEvent) => {
    if (event.key !== 'Escape') return;
    event.preventDefault();
    onClose();
  };
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: a key for the whole form; its button does the same.
    <div className="entry-form" onKeyDown={onKeyDown}>
      <Form label={label} onSubmit={() => void save()}>
        <TextField
          label={ask}
          value={reason}
          onChange={(next) => {
            setReason(next);
            setProblem(undefined);
          }}
          problem={problem}
          inputRef={(input) => {
            if (input !== null && reason === '') input.focus();
          }}
          isRequired
          isWide
        />
        <div className="entry-foot">
          <Button kind="main" type="submit">
            {saveLabel}
          </Button>
          <Button onPress={onClose} shortcut="Esc">
            {ledgerText.putBack}
          </Button>
        </div>
      </Form>
    </div>
  );
}
