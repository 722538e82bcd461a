// Writes down one chase: when, how, which day was promised now, what was said. Closes once it is saved; a refusal keeps what was typed.
import { type KeyboardEvent, useState } from 'react';
import type { WaitingLineView } from '../../../app/contract/waiting-view.ts';
import { type AskWay, askWaySchema } from '../../../app/domain/codes/request-facts.ts';
import type { Day } from '../../../app/domain/shared/day.ts';
import { notify } from '../../state/notice-store.ts';
import { recordChase } from '../../state/record-chase.ts';
import { commonText } from '../../text/common.ts';
import { errorSentence } from '../../text/errors.ts';
import { sayDaysIn } from '../../text/say-day.ts';
import { waitingText as text } from '../../text/waiting.ts';
import { Button } from '../../ui/button.tsx';
import { DayField } from '../../ui/day-field.tsx';
import { Dialog } from '../../ui/dialog.tsx';
import { Form } from '../../ui/form.tsx';
import { SelectField } from '../../ui/select-field.tsx';
import { TextField } from '../../ui/text-field.tsx';
import { WholeProblems } from '../../ui/whole-problems.tsx';

type Problem = { readonly field: string; readonly sentence: string };

const ways = askWaySchema.options.map((value) => ({ value, label: text.ways[value] }));
const fields = ['chasedOn', 'how', 'promisedOn', 'note'];

export function ChaseDialog({
  line,
  today,
  personId,
  onClose,
}: {
  readonly line: WaitingLineView;
  readonly today: Day;
  readonly personId: string;
  readonly onClose: () => void;
}) {
  const [chasedOn, setChasedOn] = useState<Day | null>(today);
  const [how, setHow] = useState<AskWay>('phone');
  const [promisedOn, setPromisedOn] = useState<Day | null>(null);
  const [note, setNote] = useState('');
  const [problems, setProblems] = useState<readonly Problem[]>([]);
  const [isSaving, setIsSaving] = useState(false);
  const at = (field: string) => {
    const found = problems.find((problem) => problem.field === field);
    return found && sayDaysIn(found.sentence, today);
  };
  const save = async () => {
    if (isSaving) return;
    if (chasedOn === null) {
      setProblems([{ field: 'chasedOn', sentence: commonText.required }]);
      return;
    }
    setIsSaving(true);
    const answer = await recordChase(line, { chasedOn, by: personId, how, promisedOn, note: note.trim() });
    setIsSaving(false);
    if (answer.ok) {
      notify('done', text.recorded(line));
      onClose();
      return;
    }
    const { error } = answer;
    const whole = { field: '', sentence: error.code === 'not-found' ? text.gone : errorSentence(error) };
    setProblems(error.problems.length > 0 ? error.problems : [whole]);
  };
  const onKeyDown = (event: KeyboardEvent<HTMLDivElement>) => {
    if (event.key !== 'Enter' || event.defaultPrevented || event.nativeEvent.isComposing) return;
    // The buttons stand outside the form, so Enter has to be told what it does.
    event.preventDefault();
    const form = event.currentTarget.querySelector('form');
    // A day typed as a shorthand is taken by this same Enter; it must be in the form before that is saved.
    requestAnimationFrame(() => form?.requestSubmit());
  };
  return (
    <Dialog
      title={text.dialog(line)}
      onClose={onClose}
      footer={
        <>
          <Button onPress={onClose}>{commonText.cancel}</Button>
          <Button kind="main" isDisabled={isSaving} shortcut="Enter" onPress={() => void save()}>
            {text.record}
          </Button>
        </>
      }
    >
      <p className="chase-about">{text.dialogAbout(line, today)}</p>
      {/* biome-ignore lint/a11y/noStaticElementInteractions: Enter anywhere in the form saves; the button does the same. */}
      <div onKeyDown={onKeyDown}>
        <Form label={text.dialog(line)} onSubmit={() => void save()} className="field-grid chase-form">
          <DayField
            label={text.chasedOn}
            value={chasedOn}
            onChange={setChasedOn}
            problem={at('chasedOn')}
            today={today}
            isRequired
          />
          <SelectField label={text.how} value={how} onChange={setHow} options={ways} problem={at('how')} />
          <DayField
            label={text.newPromise}
            hint={text.newPromiseHint}
            value={promisedOn}
            onChange={setPromisedOn}
            problem={at('promisedOn')}
            today={today}
          />
          <TextField label={text.note} value={note} onChange={setNote} problem={at('note')} isWide />
        </Form>
      </div>
      <WholeProblems
        sentences={problems
          .filter(({ field }) => !fields.includes(field))
          .map(({ sentence }) => sayDaysIn(sentence, today))}
      />
    </Dialog>
  );
}
