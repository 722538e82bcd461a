// Saving the whole fleet as one file, and opening such a file as a fleet of its own.
import { useEffect, useState } from 'react';
import type { ChannelInput, ChannelOutput } from '../../../app/contract/channels.ts';
import { ask } from '../../bridge.ts';
import { notify } from '../../state/notice-store.ts';
import { beginOnOtherFleet } from '../../state/other-fleet.ts';
import { archiveText as text } from '../../text/archive.ts';
import { errorSentence } from '../../text/errors.ts';
import { Button } from '../../ui/button.tsx';
import { CheckField } from '../../ui/check-field.tsx';
import { SectionHead } from '../../ui/section-head.tsx';

async function write(wish: ChannelInput<'archive:write'>): Promise<void> {
  const answer = await ask('archive:write', wish);
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
  const [withAttachments, setWithAttachments] = useState(true);
  const [size, setSize] = useState<ChannelOutput<'archive:size'> | null>(null);
  useEffect(() => {
    void ask('archive:size', {}).then((answer) => answer.ok && setSize(answer.value));
  }, []);
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
      {size !== null && size.attachments > 0 && (
        <CheckField
          label={text.withAttachments(size.attachments)}
          hint={text.withAttachmentsHint(size.bytes)}
          value={withAttachments}
          onChange={setWithAttachments}
        />
      )}
      <CheckField label={text.withKeys} hint={text.withKeysHint} value={withKeys} onChange={setWithKeys} />
      <p>
        <Button isDisabled={isBusy} onPress={() => void during(write({ withKeys, withAttachments }))}>
          {text.write}
        </Button>{' '}
        <Button isDisabled={isBusy} tip={text.openHint} onPress={() => void during(open())}>
          {text.open}
        </Button>
      </p>
    </section>
  );
}
