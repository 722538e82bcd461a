// A report of a fault, to be read and then copied by the person. It goes nowhere by itself.
import './about-dialog.css';
import { useEffect, useRef, useState } from 'react';
import { ask } from '../bridge.ts';
import { notify } from '../state/notice-store.ts';
import { aboutText } from '../text/about.ts';
import { commonText } from '../text/common.ts';
import { errorSentence } from '../text/errors.ts';
import { Button } from '../ui/button.tsx';
import { Dialog } from '../ui/dialog.tsx';

export function ReportDialog({ onClose }: { readonly onClose: () => void }) {
  const field = useRef<HTMLTextAreaElement>(null);
  const [text, setText] = useState('');
  useEffect(() => {
    void ask('program:report', {}).then((answer) =>
      setText(answer.ok ? answer.value.text : errorSentence(answer.error)),
    );
  }, []);
  const copy = () => {
    // The old way needs no permission of the page, and the program gives it none.
    field.current?.select();
    const isCopied = document.execCommand('copy');
    notify(isCopied ? 'done' : 'problem', isCopied ? aboutText.copied : aboutText.notCopied);
  };
  return (
    <Dialog
      title={aboutText.report}
      onClose={onClose}
      isWide
      footer={
        <>
          <Button onPress={onClose}>{commonText.close}</Button>
          <Button kind="main" onPress={copy}>
            {aboutText.copy}
          </Button>
        </>
      }
    >
      <p>{aboutText.reportSentence}</p>
      <textarea
        ref={field}
        className="fault-report"
        aria-label={aboutText.reportField}
        readOnly
        rows={18}
        value={text === '' ? aboutText.reading : text}
      />
    </Dialog>
  );
}
