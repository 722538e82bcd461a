// Saving the whole fleet as one file, and opening such a file as a fleet of its own.
import { useState } from 'react';
import { ask } from '../../bridge.ts';
import { notify } from '../../state/notice-store.ts';
import { beginOnOtherFleet } from '../../state/other-fleet.ts';
import { archiveText as text } from '../../text/archive.ts';
import { errorSentence } from '../../text/errors.ts';
import { Button } from '../../ui/button.tsx';
import { CheckField } from '../../ui/check-field.tsx';
import { SectionHead } from '../../ui/section-head.tsx';

async function write(withKeys: boolean): Promise<void> {
  const answer = await ask('archive:write', { withKeys });
  if (!answer.ok) return notify('problem', errorSentence(answer.error));
  if (answer.value === null) return;
  const { fileName, vehicles, missing } = answer.value;
  notify('done', text.written(fileName, vehicles));
  if (missing.length > 0) notify('problem', text.missing(missing));
}

async function open(): Promise<void> {
  const answer = await ask('archive:open', {});
  if (!answer.ok) return notify('problem', errorSentence(answer.error));
  if (answer.value.isOpened) beginOnOtherFleet(answer.value.desk);
}

export function ArchiveSection() {
  const [withKeys, setWithKeys] = useState(false);
  const [isBusy, setIsBusy] = useState(false);
  const during = async (act: Promise<void>) => {
    setIsBusy(true);
    await act;
    setIsBusy(false);
  };
  return (
    <section className="setup-section" aria-labelledby="setup-archive">
      <SectionHead id="setup-archive" title={text.title} />
      <p className="setup-hint">{text.hint}</p>
      <CheckField label={text.withKeys} hint={text.withKeysHint} value={withKeys} onChange={setWithKeys} />
      <p>
        <Button isDisabled={isBusy} onPress={() => void during(write(withKeys))}>
          {text.write}
        </Button>{' '}
        <Button isDisabled={isBusy} tip={text.openHint} onPress={() => void during(open())}>
          {text.open}
        </Button>
      </p>
    </section>
  );
}
