// One backup from inside: what putting all of it back would do, vehicle by vehicle; from there into one vehicle alone.
import { useEffect, useState } from 'react';
import type { BackupPreview, PutBackPreview, SafetyView } from '../../../app/contract/safety-view.ts';
import { ask } from '../../bridge.ts';
import { useDesk } from '../../state/desk-store.ts';
import { commonText } from '../../text/common.ts';
import { errorSentence } from '../../text/errors.ts';
import { showMoment } from '../../text/instant.ts';
import { safetyText as text } from '../../text/safety.ts';
import { Button } from '../../ui/button.tsx';
import { Dialog } from '../../ui/dialog.tsx';
import { ChangeList } from './change-list.tsx';
import { type DonePutBack, putBackAll, putBackVehicle } from './put-back.ts';

type One = { readonly id: string; readonly preview: PutBackPreview };

function VehicleList({ view, onLook }: { readonly view: BackupPreview; readonly onLook: (id: string) => void }) {
  const touched = view.vehicles.filter(({ effect }) => effect !== 'same');
  if (touched.length === 0) return null;
  return (
    <table className="safety-table">
      <thead>
        <tr>
          <th scope="col">{text.vehicle}</th>
          <th scope="col">{text.effect}</th>
          <th scope="col">
            <span className="unseen">{text.act}</span>
          </th>
        </tr>
      </thead>
      <tbody>
        {touched.map(({ id, name, effect }) => (
          <tr key={id}>
            <th scope="row">{name}</th>
            <td>{text.effects[effect]}</td>
            <td className="safety-actions">
              <Button kind="quiet" label={text.lookAtOne(name)} onPress={() => onLook(id)}>
                {text.lookOne}
              </Button>
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function DamagedList({ damaged }: { readonly damaged: BackupPreview['damaged'] }) {
  if (damaged.length === 0) return null;
  return (
    <table className="safety-table">
      <thead>
        <tr>
          <th scope="col">{text.damaged}</th>
          <th scope="col">{text.damagedWhy}</th>
          <th scope="col">{text.damagedThen}</th>
        </tr>
      </thead>
      <tbody>
        {damaged.map(({ path, name, sentence, isThereNow }) => (
          <tr key={path}>
            <th scope="row">{name}</th>
            <td>{sentence}</td>
            <td>{text.damagedStays(isThereNow)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

export function BackupDialog({
  backup,
  onDone,
  onClose,
}: {
  readonly backup: SafetyView['backups'][number];
  readonly onDone: (done: DonePutBack) => void;
  readonly onClose: () => void;
}) {
  const { readOnlyReason } = useDesk();
  const [view, setView] = useState<BackupPreview | null>(null);
  const [one, setOne] = useState<One | null>(null);
  const [sentence, setSentence] = useState('');
  const [isWorking, setIsWorking] = useState(false);
  const backupId = backup.id;
  useEffect(() => {
    void ask('safety:preview-backup', { backupId }).then((answer) => {
      if (answer.ok) setView(answer.value);
      else setSentence(errorSentence(answer.error));
    });
  }, [backupId]);
  const lookAt = async (vehicleId: string) => {
    const answer = await ask('safety:preview-vehicle', { backupId, vehicleId });
    if (answer.ok) setOne({ id: vehicleId, preview: answer.value });
    setSentence(answer.ok ? '' : errorSentence(answer.error));
  };
  const isNothing = view?.settings.length === 0 && view.vehicles.every(({ effect }) => effect === 'same');
  const damaged = view?.damaged ?? [];
  const putBack = async () => {
    if (isWorking) return;
    setIsWorking(true);
    const done =
      one === null
        ? await putBackAll(
            backupId,
            damaged.map(({ path }) => path),
            showMoment(backup.madeAt),
          )
        : await putBackVehicle(backupId, one.id, one.preview.what);
    setIsWorking(false);
    if (done === null) return;
    onClose();
    onDone(done);
  };
  return (
    <Dialog
      title={one === null ? text.of(backup) : `${text.of(backup)}: ${one.preview.what}`}
      onClose={onClose}
      isWide
      footer={
        <>
          <Button onPress={one === null ? onClose : () => setOne(null)}>
            {one === null ? commonText.cancel : text.of(backup)}
          </Button>
          <Button
            kind="main"
            isDisabled={view === null || isWorking || isNothing === true || readOnlyReason !== null}
            whyDisabled={readOnlyReason ?? (isNothing === true ? text.nothingOfAll : sentence)}
            onPress={() => void putBack()}
          >
            {one !== null
              ? text.putBackOne
              : damaged.length === 0
                ? text.putBackAll
                : text.putBackWhole(damaged.length)}
          </Button>
        </>
      }
    >
      {sentence !== '' && <p role="alert">{sentence}</p>}
      {one !== null ? (
        <ChangeList preview={one.preview} />
      ) : view === null ? (
        sentence === '' && <p role="status">{text.checking}</p>
      ) : (
        <>
          <p>{damaged.length === 0 ? text.checked : text.checkedSome(damaged.length)}</p>
          <DamagedList damaged={damaged} />
          <p>{isNothing ? text.nothingOfAll : text.counts(view)}</p>
          {!isNothing && <p>{text.settings(view.settings)}</p>}
          <VehicleList view={view} onLook={(id) => void lookAt(id)} />
          {!isNothing && <p className="quiet">{`${text.keys} ${text.before}`}</p>}
        </>
      )}
    </Dialog>
  );
}
