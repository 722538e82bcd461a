// Safety copies: files that could not be used, the backups, and the second folder. Nothing is put back from here without a look first.
import './safety.css';
import { useCallback, useEffect, useState } from 'react';
import type { SafetyView } from '../../../app/contract/safety-view.ts';
import { ask, on } from '../../bridge.ts';
import { takeDesk, useDesk } from '../../state/desk-store.ts';
import { notify } from '../../state/notice-store.ts';
import { errorSentence } from '../../text/errors.ts';
import { safetyText as text } from '../../text/safety.ts';
import { Button } from '../../ui/button.tsx';
import { EmptyState } from '../../ui/empty-state.tsx';
import { ScreenPurpose } from '../../ui/screen-purpose.tsx';
import { BackupDialog } from './backup-dialog.tsx';
import { BackupTable } from './backup-table.tsx';
import type { DonePutBack } from './put-back.ts';
import { takeBack } from './put-back.ts';
import { SecondFolder } from './second-folder.tsx';
import { TroubleDialog } from './trouble-dialog.tsx';
import { TroubleTable } from './trouble-table.tsx';

function Sections({ view, readAgain }: { readonly view: SafetyView; readonly readAgain: () => void }) {
  const { readOnlyReason } = useDesk();
  const [backupId, setBackupId] = useState<string | null>(null);
  const [troubleId, setTroubleId] = useState<string | null>(null);
  const [done, setDone] = useState<DonePutBack | null>(null);
  const backup = view.backups.find(({ id }) => id === backupId);
  const trouble = view.troubles.find(({ id }) => id === troubleId);
  const isDone = (what: DonePutBack | null) => {
    setDone(what);
    readAgain();
  };
  const backUp = async () => {
    const answer = await ask('fleet:back-up', {});
    if (!answer.ok) {
      notify('problem', errorSentence(answer.error));
      return;
    }
    takeDesk(answer.value);
    notify('done', view.second?.isThere === false ? `${text.backedUp} ${text.notInSecond}` : text.backedUp);
    readAgain();
  };
  return (
    <>
      {done !== null && (
        <p className="safety-done">
          {text.canTakeBack(done.what)}{' '}
          <Button
            onPress={() =>
              void takeBack(done).then((isBack) => {
                if (isBack) isDone(null);
              })
            }
          >
            {text.takeBack}
          </Button>
        </p>
      )}
      <TroubleTable view={view} onLook={setTroubleId} onSettled={readAgain} isReadOnly={readOnlyReason !== null} />
      <BackupTable
        view={view}
        onLook={setBackupId}
        action={
          <Button isDisabled={readOnlyReason !== null} whyDisabled={readOnlyReason ?? ''} onPress={() => void backUp()}>
            {text.backUpNow}
          </Button>
        }
      />
      <SecondFolder view={view} readOnlyReason={readOnlyReason} onChanged={readAgain} />
      {backup && <BackupDialog backup={backup} onDone={isDone} onClose={() => setBackupId(null)} />}
      {trouble && <TroubleDialog trouble={trouble} onDone={readAgain} onClose={() => setTroubleId(null)} />}
    </>
  );
}

export function SafetyScreen() {
  const isAllowed = useDesk().person.role === 'manager';
  const [view, setView] = useState<SafetyView | null>(null);
  const [sentence, setSentence] = useState('');
  const read = useCallback(async () => {
    const answer = await ask('safety:read', {});
    if (answer.ok) setView(answer.value);
    setSentence(answer.ok ? answer.value.sentence : errorSentence(answer.error));
  }, []);
  useEffect(() => {
    if (!isAllowed) return;
    void read();
    return on('lot:all-changed', () => void read());
  }, [isAllowed, read]);
  return (
    <div className="safety-screen">
      <h1>{text.title}</h1>
      <ScreenPurpose screen="safety" />
      {!isAllowed ? (
        <EmptyState sentence={text.onlyManagers} />
      ) : sentence !== '' ? (
        <div role="alert">
          <EmptyState sentence={sentence} action={<Button onPress={() => void read()}>{text.tryAgain}</Button>} />
        </div>
      ) : view === null ? (
        <p className="quiet">{text.reading}</p>
      ) : (
        <Sections view={view} readAgain={() => void read()} />
      )}
    </div>
  );
}
