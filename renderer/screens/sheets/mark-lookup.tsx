// Takes the mark of a sheet somebody holds, and says which sheet it is and whether it is still the current one.
import { useState } from 'react';
import type { FoundSheet } from '../../../app/contract/sheet-channels.ts';
import { lookUpMark, type MarkAnswer, noMarkAnswer } from '../../state/look-up-mark.ts';
import { sheetJobText } from '../../text/sheet-job.ts';
import { Button } from '../../ui/button.tsx';
import { Form } from '../../ui/form.tsx';
import { TextField } from '../../ui/text-field.tsx';

export function MarkLookup({ onShow }: { readonly onShow: (found: FoundSheet) => void }) {
  const [typed, setTyped] = useState('');
  const [answer, setAnswer] = useState<MarkAnswer>(noMarkAnswer);
  return (
    <section className="mark-lookup" aria-label={sheetJobText.markLabel}>
      <Form
        label={sheetJobText.markLabel}
        onSubmit={() => void lookUpMark(typed).then(setAnswer)}
        className="mark-form"
      >
        <TextField
          label={sheetJobText.markLabel}
          value={typed}
          code
          placeholder={sheetJobText.markTip}
          problem={answer.problem}
          onChange={(value) => {
            setTyped(value);
            setAnswer(noMarkAnswer);
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
