// The last good copy of one damaged or missing file: what it would change, then putting it back.
import { useEffect, useState } from 'react';
import type { PutBackPreview, SafetyView } from '../../../app/contract/safety-view.ts';
import { ask } from '../../bridge.ts';
import { askDesk, useDesk } from '../../state/desk-store.ts';
import { notify } from '../../state/notice-store.ts';
import { commonText } from '../../text/common.ts';
import { errorSentence } from '../../text/errors.ts';
import { safetyText as text } from '../../text/safety.ts';
import { Button } from '../../ui/button.tsx';
import { Dialog } from '../../ui/dialog.tsx';
import { ChangeList } from './change-list.tsx';

export function TroubleDialog({
  trouble,
  onDone,
  onClose,
}: {
  readonly trouble: SafetyView['troubles'][number];
  readonly onDone: () => void;
  readonly onClose: () => void;
}) {
  const { readOnlyReason } = useDesk();
  const [preview, setPreview] = useState<PutBackPreview | null>(null);
  const [sentence, setSentence] = useState('');
  const { id } = trouble;
  useEffect(() => {
    void ask('safety:preview-trouble', { id }).then((answer) => {
      if (answer.ok) setPreview(answer.value);
      else setSentence(errorSentence(answer.error));
    });
  }, [id]);
  const putBack = async () => {
    if (!(await askDesk('fleet:restore-trouble', { id }))) return;
    notify('done', text.doneOne(preview?.what ?? trouble.fileName));
    onClose();
    onDone();
  };
  return (
    <Dialog
      title={text.lookAt(preview?.what ?? trouble.fileName)}
      onClose={onClose}
      isWide
      footer={
        <>
          <Button onPress={onClose}>{commonText.cancel}</Button>
          <Button
            kind="main"
            isDisabled={preview === null || readOnlyReason !== null}
            whyDisabled={readOnlyReason ?? sentence}
            onPress={() => void putBack()}
          >
            {text.putBackCopy}
          </Button>
        </>
      }
    >
      {sentence !== '' && <p role="alert">{sentence}</p>}
      {preview === null ? sentence === '' && <p>{text.reading}</p> : <ChangeList preview={preview} />}
    </Dialog>
  );
}
