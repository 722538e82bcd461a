// Takes the mark of a sheet somebody holds, and says which sheet it is and whether it is still the current one.
import { useState } from 'react';
import type { FoundSheet } from '../../../app/contract/sheet-channels.ts';
import { readMark } from '../../../app/domain/sheets/sheet-mark.ts';
import { ask } from '../../bridge.ts';
import { errorSentence } from '../../text/errors.ts';
import { sheetJobText } from '../../text/sheet-job.ts';
import { Button } from '../../ui/button.tsx';
import { Form } from '../../ui/form.tsx';
import { TextField } from '../../ui/text-field.tsx';

type Answer = { readonly problem: string; readonly sentence: string; readonly found: readonly FoundSheet[] };
const nothing: Answer = { problem: '', sentence: '', found: [] };

async function lookUp(typed: string): Promise<Answer> {
  // A slip of the pen is told at once, before anything is asked.
  const read = readMark(typed);
  if (!read.ok) return { ...nothing, problem: read.sentence };
  const answer = await ask('sheet:find-mark', { mark: read.mark });
  if (!answer.ok) return { ...nothing, problem: errorSentence(answer.error) };
  const { found, problem } = answer.value;
  return { problem, found, sentence: found.length === 0 && problem === '' ? sheetJobText.notFound(read.mark) : '' };
}

export function MarkLookup({ onShow }: { readonly onShow: (found: FoundSheet) => void }) {
  const [typed, setTyped] = useState('');
  const [answer, setAnswer] = useState<Answer>(nothing);
  return (
    <section className="mark-lookup" aria-label={sheetJobText.markLabel}>
      <Form label={sheetJobText.markLabel} onSubmit={() => void lookUp(typed).then(setAnswer)} className="mark-form">
        <TextField
          label={sheetJobText.markLabel}
          value={typed}
          code
          placeholder={sheetJobText.markTip}
          problem={answer.problem}
          onChange={(value) => {
            setTyped(value);
            setAnswer(nothing);
          }}
        />
        <Button type="submit">{sheetJobText.find}</Button>
      </Form>
      <div role="status">
        {answer.sentence !== '' && <p className="quiet">{answer.sentence}</p>}
        {answer.found.map((found) => (
          <div key={found.printedAt} className={`found-sheet is-${found.standing}`}>
            <p className="found-sheet-name">{sheetJobText.found(found)}</p>
            <p className="found-sheet-standing">{sheetJobText.standing(found)}</p>
            <p className="quiet">{sheetJobText.foundPrinted(found)}</p>
            {found.standing !== 'gone' && (
              <Button kind="quiet" onPress={() => onShow(found)}>
                {sheetJobText.seeIt}
              </Button>
            )}
          </div>
        ))}
      </div>
    </section>
  );
}
